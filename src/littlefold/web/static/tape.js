// The tape laid between two places of the drawing: it takes hold at a point when one is near.

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

  function show() {
    drawing.querySelector(".taped")?.remove();
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

  function take(place) {
    [from, to] = from && !to ? [from, place] : [place, null];
    show();
    if (to) say(`${named(from)} to ${named(to)}: ${length(Math.hypot(to.x - from.x, to.y - from.y))}`);
    else say(`From ${named(from)} to …`);
  }

  const named = (end) => (end.name ? end.name.split(".").slice(1).join(" ") : "there");

  wanted.addEventListener("change", () => {
    from = to = null;
    show();
    drawing.classList.toggle("with-tape", wanted.checked);
    say(wanted.checked ? "Touch two places: the tape lies between them. On the keyboard: N and P choose, T takes hold." : "");
  });
  drawing.addEventListener("touched", (event) => {
    if (!wanted.checked) return;
    event.stopImmediatePropagation();
    take(held(pointsOf(drawing), event.detail.place, NEAR * drawing.view.perPixel));
  });
  drawing.addEventListener("keydown", ({ key }) => {
    const at = pointsOf(drawing).get(chosen());
    if (key === "t" && wanted.checked && at) take({ ...at, name: chosen() });
  });
  drawing.addEventListener("drawn", () => {
    if (from?.name) from = again(from);
    if (to?.name) to = again(to);
    show();
  });
  const again = (end) => ({ ...(pointsOf(drawing).get(end.name) ?? end), name: end.name });
}
