// How the slips lie: pinned beside the drawing with a thread to the place where each acts, or, where the paper is narrow,
// in a row under it, each with a number that is pinned to its place.

import { BESIDE, pinned } from "./pins.js";

const WIDE = 1080; // px of paper from which slips have their full width
const NARROW = 600; // px of paper below which they lie in a row
const FOLDED = 70; // px of the lower right corner, where the findings lie folded up
const APART = 30; // px between two pinned numbers
const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {HTMLElement} slips  @param {HTMLElement} drawing
 * @param {HTMLElement} findings  the slip in the lower right corner
 * @param {(name: string) => [number, number] | undefined} anchor  where a choice acts on the sheet that is seen (mm)
 */
export function pinning(slips, drawing, findings, anchor) {
  const all = [...slips.querySelectorAll(".slip")];
  const threads = document.createElementNS(SVG, "svg");
  threads.classList.add("threads");
  threads.setAttribute("aria-hidden", "true");
  const heads = document.createElement("div");
  heads.className = "heads";
  slips.before(threads, heads);

  const way = () => (drawing.clientWidth >= WIDE ? "wide" : drawing.clientWidth >= NARROW ? "close" : "row");

  function lay() {
    const now = way();
    slips.classList.toggle("pinned", now !== "row");
    slips.classList.toggle("close", now === "close");
    slips.classList.toggle("row", now === "row");
    threads.replaceChildren();
    heads.replaceChildren();
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
    drawing.style.minHeight = `${needed(found)}px`;
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
    const taken = [];
    for (const slip of all) {
      slip.style.translate = "";
      const at = placeOf(slip);
      if (!at) continue;
      while (taken.some((one) => Math.hypot(one.x - at.x, one.y - at.y) < APART)) at.x += APART;
      taken.push(at);
      heads.append(head(slip, at));
    }
    light(nearest());
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
    const place = anchor(slip.dataset.slip);
    return place ? drawing.seenAt(...place) : null;
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
    slip.querySelector(".along, input:checked, input")?.focus({ preventScroll: true });
    light(slip.dataset.slip);
  });
  findings.addEventListener("toggle", lay);
  slips.addEventListener("scroll", () => slips.classList.contains("row") && light(nearest()), { passive: true });
  for (const event of ["focusin", "pointerover"]) {
    slips.addEventListener(event, ({ target }) => light(target.closest(".slip")?.dataset.slip));
  }

  /** Paper left free round the drawing: beside it for the slips where they are pinned, a little everywhere. */
  function bare() {
    const now = way();
    const beside = now === "wide" ? Math.min(325, drawing.clientWidth / 4) : now === "close" ? 196 : 16;
    const above = now === "row" ? 14 : 8;
    return { left: beside, right: beside, top: above, bottom: 8 };
  }

  return { lay, bare };
}

/** The height at which the slips find room on two sides, the list of findings folded up. */
function needed(slips) {
  const whole = slips.reduce((sum, slip) => sum + slip.height + 14, 28);
  const tallest = Math.max(0, ...slips.map((slip) => slip.height));
  return Math.round((whole + FOLDED + tallest) / 2);
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
