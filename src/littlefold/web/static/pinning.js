// How the slips lie: pinned beside the drawing with a thread to the place where each acts, or, where the paper is narrow,
// in a row under it, each with a number that is pinned to its place.

import { APART_NUMBERS, BESIDE, EDGE, freest, oneColumn, pinned } from "./pins.js";

const WIDE = 1080; // px of paper from which slips have their full width
const NARROW = 700; // px of paper below which they lie in a row
const LEAST = 30; // px of bare paper where no slip hangs
const FOLDED = 70; // px of the lower right corner, where the findings lie; at least so much
const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {HTMLElement} slips  @param {HTMLElement} drawing
 * @param {HTMLElement} findings  the slip in the lower right corner
 * @param {{here: (name: string) => [number, number, string] | undefined, elsewhere: (name: string) => string,
 *   turnTo: (sheet: string) => Promise<void>}} acts  where a choice acts on the sheet that is seen (mm, and the name of a
 *   point that lies there), and else on which sheet
 */
export function pinning(slips, drawing, findings, acts) {
  const all = [...slips.querySelectorAll(".slip")];
  const threads = document.createElementNS(SVG, "svg");
  threads.classList.add("threads");
  threads.setAttribute("aria-hidden", "true");
  const heads = document.createElement("div");
  heads.className = "heads";
  slips.before(threads, heads);

  const way = () => (drawing.clientWidth >= WIDE ? "wide" : drawing.clientWidth >= NARROW ? "close" : "row");

  /** Gives the slips the size they have where the paper is so wide. */
  function size() {
    const now = way();
    slips.classList.toggle("pinned", now !== "row");
    slips.classList.toggle("close", now === "close");
    slips.classList.toggle("row", now === "row");
    return now;
  }

  function lay() {
    const now = size();
    threads.replaceChildren();
    heads.replaceChildren();
    for (const slip of all) tab(slip);
    if (now === "row") number();
    else pin();
  }

  function pin() {
    const found = all.map((slip) => ({
      slip,
      name: slip.dataset.slip,
      width: slip.offsetWidth,
      height: slip.offsetHeight,
      at: placeOf(slip),
    }));
    const taken = { left: 0, right: way() === "wide" && isCrowded() ? findings.offsetHeight + 14 : 0 };
    drawing.style.minHeight = `${needed(found, taken.right)}px`;
    const places = pinned(found, drawing.drawn(), { ...drawing.room, taken });
    for (const one of found) {
      const place = places.get(one.name);
      one.slip.style.translate = `${Math.round(place.x)}px ${Math.round(place.y)}px`;
      if (one.at) threads.append(thread(one, place));
    }
  }

  /** Whether the slips on the right reach as far as the findings in their corner. */
  function isCrowded() {
    const reach = drawing.drawn().right + BESIDE + Math.max(0, ...all.map((slip) => slip.offsetWidth));
    return reach + 14 > drawing.clientWidth - findings.offsetWidth - 14;
  }

  function number() {
    drawing.style.minHeight = "";
    const taken = drawing.lettered();
    for (const slip of all) {
      slip.style.translate = "";
      const place = placeOf(slip);
      if (!place) continue;
      const at = freest(place, taken, drawing.room);
      taken.push({ ...at, clear: APART_NUMBERS });
      heads.append(head(slip, at));
    }
    light(nearest());
  }

  /** A slip that acts on another sheet shows that sheet's tab, which leads there. */
  function tab(slip) {
    const sheet = acts.elsewhere(slip.dataset.slip);
    let made = slip.querySelector(".to-sheet");
    if (!made && sheet) {
      made = document.createElement("button");
      made.type = "button";
      made.className = "to-sheet";
      slip.append(made);
    }
    if (!made) return;
    made.hidden = !sheet;
    made.dataset.to = sheet;
    made.textContent = sheet.replaceAll("_", " ");
    made.title = `Acts on the sheet ${made.textContent}: turn to it`;
    made.setAttribute("aria-label", made.title);
  }

  function head(slip, at) {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = slip.dataset.number;
    made.dataset.slip = slip.dataset.slip;
    made.setAttribute("aria-label", `To the slip: ${slip.querySelector("label, legend").textContent}`);
    made.style.translate = `${Math.round(at.x)}px ${Math.round(at.y)}px`;
    return made;
  }

  function placeOf(slip) {
    const place = acts.here(slip.dataset.slip);
    if (!place) return null;
    const [x, y, point] = place;
    return drawing.seenPoint(point) ?? drawing.seenAt(x, y);
  }

  /** The slip that lies in the middle of the row. */
  function nearest() {
    const middle = slips.scrollLeft + slips.clientWidth / 2;
    const away = (slip) => Math.abs(slip.offsetLeft + slip.offsetWidth / 2 - middle);
    return all.reduce((best, slip) => (away(slip) < away(best) ? slip : best), all[0])?.dataset.slip;
  }

  function light(name) {
    for (const one of [...threads.children, ...heads.children, ...all]) {
      one.classList.toggle("lit", (one.dataset.thread ?? one.dataset.slip) === name);
    }
  }

  heads.addEventListener("click", ({ target }) => {
    const slip = all.find((one) => one.dataset.slip === target.dataset.slip);
    slip.scrollIntoView({ inline: "center", block: "nearest" });
    takeHold(slip);
    light(slip.dataset.slip);
  });
  slips.addEventListener("click", async ({ target }) => {
    if (!target.matches(".to-sheet")) return;
    const slip = target.closest(".slip");
    await acts.turnTo(target.dataset.to);
    takeHold(slip);
  });
  findings.addEventListener("toggle", lay);
  slips.addEventListener("scroll", () => slips.classList.contains("row") && light(nearest()), { passive: true });
  for (const event of ["focusin", "pointerover"]) {
    slips.addEventListener(event, ({ target }) => light(target.closest(".slip")?.dataset.slip));
  }

  /** Paper left free round the drawing: beside it for the slips where they are pinned, a little everywhere. */
  function bare() {
    const now = size();
    if (now === "row") return { left: 16, right: 16, top: 14, bottom: 8 };
    const beside = EDGE + Math.max(0, ...all.map((slip) => slip.offsetWidth)) + (now === "wide" ? BESIDE : LEAST);
    const sizes = all.map((slip) => ({ at: acts.here(slip.dataset.slip), height: slip.offsetHeight }));
    return { left: all.length ? beside : LEAST, right: oneColumn(sizes, drawing.clientHeight) ? LEAST : beside, top: 8, bottom: 8 };
  }

  return { lay, bare };
}

/** The height at which the slips find room on two sides, with so much of the lower right corner for the findings. */
function needed(slips, corner) {
  const whole = slips.reduce((sum, slip) => sum + slip.height + 14, 28);
  const tallest = Math.max(0, ...slips.map((slip) => slip.height));
  return Math.round((whole + Math.max(corner, FOLDED) + tallest) / 2);
}

/** The keyboard's hold of a slip: its slider, its option or its field. */
function takeHold(slip) {
  const [hold] = [".along", "input:checked", "input"].flatMap((kind) => slip.querySelector(kind) ?? []);
  hold?.focus({ preventScroll: true });
}

function thread(one, place) {
  const isLeft = place.x + one.width / 2 < one.at.x;
  const from = { x: isLeft ? place.x + one.width - 10 : place.x + 10, y: place.y + 10 };
  const line = document.createElementNS(SVG, "path");
  const bend = (from.x + one.at.x) / 2;
  line.setAttribute("d", `M${from.x} ${from.y}Q${bend} ${from.y + 14} ${one.at.x} ${one.at.y}`);
  line.dataset.thread = one.name;
  return line;
}
