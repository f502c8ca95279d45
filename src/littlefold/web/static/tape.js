// The tape laid between two places of the drawing, or along a line or an edge: it takes hold at a point when one is near.

import { drawn, pointsOf } from "./moves.js";

const NEAR = 16; // px from a point at which the tape takes hold of it

/** The nearest named point within reach (mm), or the bare place. */
export function held(points, place, reach) {
  let best = { ...place, name: "" };
  let least = reach;
  for (const [name, at] of points) {
    const away = Math.hypot(at.x - place.x, at.y - place.y);
    if (away <= least) [best, least] = [{ ...at, name }, away];
  }
  return best;
}

/**
 * @param {HTMLElement} drawing  @param {HTMLInputElement} wanted
 * @param {{say: (words: string) => void, length: (mm: number) => string, chosen: () => string}} told
 */
export function taping(drawing, wanted, { say, length, chosen }) {
  let from = null;
  let to = null;
  let edge = ""; // along which the tape lies

  function show() {
    drawing.querySelector(".taped")?.remove();
    if (edge) showAlong();
    if (!from) return;
    const group = drawn("g", { class: "taped" });
    for (const end of to ? [from, to] : [from]) group.append(drawn("circle", { class: "end", cx: end.x, cy: end.y, r: 1 }));
    if (to) {
      group.append(drawn("path", { class: "ribbon", d: `M${from.x} ${from.y}L${to.x} ${to.y}` }));
      const words = drawn("text", { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
      words.textContent = length(Math.hypot(to.x - from.x, to.y - from.y));
      group.append(words);
    }
    drawing.svg.append(group);
  }

  /** The tape bent along a line, as one measures a curve: set on its edge. */
  function showAlong() {
    const path = pathOf(edge);
    if (!path) return;
    const whole = path.getTotalLength();
    const { x, y } = path.getPointAtLength(whole / 2);
    const group = drawn("g", { class: "taped" });
    const words = drawn("text", { x, y });
    words.textContent = length(whole);
    group.append(drawn("path", { class: "ribbon", d: path.getAttribute("d") }), words);
    drawing.svg.append(group);
  }

  function along(name) {
    [from, to, edge] = [null, null, name];
    show();
    say(`Along ${named({ name })}: ${length(pathOf(name).getTotalLength())}`);
  }

  const pathOf = (name) => name && drawing.querySelector(`:is(.line, .stitch)[data-name="${CSS.escape(name)}"]`);

  function take(place) {
    edge = "";
    [from, to] = from && !to ? [from, place] : [place, null];
    show();
    if (to) say(`${named(from)} to ${named(to)}: ${length(Math.hypot(to.x - from.x, to.y - from.y))}`);
    else say(`From ${named(from)} to …`);
  }

  const named = (end) => (end.name ? end.name.split(".").slice(1).join(" ") : "there");

  wanted.addEventListener("change", () => {
    from = to = null;
    edge = "";
    show();
    drawing.classList.toggle("with-tape", wanted.checked);
    say(wanted.checked ? "Touch two places: the tape lies between them. Touch a line or an edge: it lies along it. On the keyboard: N and P choose, T takes hold." : "");
  });
  drawing.addEventListener("touched", (event) => {
    if (!wanted.checked) return;
    event.stopImmediatePropagation();
    const place = held(pointsOf(drawing), event.detail.place, NEAR * drawing.view.perPixel);
    const line = event.detail.named?.dataset.name;
    if (!place.name && (!from || to) && pathOf(line)) along(line);
    else take(place);
  });
  drawing.addEventListener("keydown", ({ key }) => {
    if (key !== "t" || !wanted.checked) return;
    const at = pointsOf(drawing).get(chosen());
    if (at) take({ ...at, name: chosen() });
    else if (pathOf(chosen())) along(chosen());
  });
  drawing.addEventListener("drawn", () => {
    if (from?.name) from = again(from);
    if (to?.name) to = again(to);
    show();
  });
  const again = (end) => ({ ...(pointsOf(drawing).get(end.name) ?? end), name: end.name });
}
