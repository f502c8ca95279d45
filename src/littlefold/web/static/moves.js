// What moves: the lines as they were, dashed, and how far each point went.

const SEEN = 0.05; // mm; less is no movement

/** @returns {Map<string, {x: number, y: number}>}  the named points of a drawing */
export function pointsOf(drawing) {
  const found = new Map();
  for (const point of drawing.querySelectorAll(".point")) {
    found.set(point.dataset.name, { x: Number(point.getAttribute("cx")), y: Number(point.getAttribute("cy")) });
  }
  return found;
}

/** The points that lie elsewhere now, with the way they went in mm. */
export function moved(before, after) {
  const ways = [];
  for (const [name, from] of before) {
    const to = after.get(name);
    const by = to ? Math.hypot(to.x - from.x, to.y - from.y) : 0;
    if (by > SEEN) ways.push({ name, from, to, by });
  }
  return ways;
}

/**
 * Keeps how a drawing was and shows it under how it is.
 * @param {HTMLElement} drawing  @param {HTMLInputElement} wanted  @param {(mm: number) => string} say
 */
export function remembering(drawing, wanted, say) {
  let before = null;

  function keep() {
    const sheet = drawing.svg.querySelector("title")?.textContent;
    const lines = [...drawing.querySelectorAll(".line, .cut")].map((line) => line.getAttribute("d"));
    before = { sheet, lines, points: pointsOf(drawing) };
  }

  function show() {
    drawing.querySelector(".before")?.remove();
    const sheet = drawing.svg.querySelector("title")?.textContent;
    if (!wanted.checked || !before || before.sheet !== sheet) return;
    const group = drawn("g", { class: "before" });
    for (const d of before.lines) group.append(drawn("path", { class: "was", d }));
    const letters = new Set([...drawing.querySelectorAll(".letter")].map((one) => one.dataset.name));
    for (const way of moved(before.points, pointsOf(drawing))) {
      group.append(drawn("path", { class: "went", d: `M${way.from.x} ${way.from.y}L${way.to.x} ${way.to.y}` }));
      if (!letters.has(way.name)) continue;
      const words = drawn("text", { class: "by se", x: way.to.x, y: way.to.y });
      words.textContent = say(way.by);
      group.append(words);
    }
    drawing.svg.append(group);
  }

  wanted.addEventListener("change", () => {
    if (wanted.checked) keep();
    show();
  });
  drawing.addEventListener("drawn", show);
}

export function drawn(tag, attributes) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}
