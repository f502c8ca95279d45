// The drafting table: what is moved on the tape or a slip is drawn anew, the newest wish winning.

import "./draft-drawing.js";
import { newest, whenCalm } from "./newest.js";
import { remembering } from "./moves.js";
import { pinned } from "./pins.js";
import { sayLength } from "./say.js";
import { taping } from "./tape.js";
import { joinSliders, queryOf } from "./wish.js";
import { telling } from "./telling.js";

const CALM = 180; // ms after the last change before words are fetched
const WIDE = 900; // px of paper from which slips are pinned to it
const TAKEN = { left: 96, right: 62 }; // px of the lower corners where words are told and the closed findings lie
const SVG = "http://www.w3.org/2000/svg";

const form = document.getElementById("wish");
const drawing = form.querySelector("draft-drawing");
const anchors = JSON.parse(document.getElementById("anchors").textContent);
const slips = form.querySelector(".slips");
const recipe = encodeURIComponent(form.dataset.recipe);
const say = (mm) => sayLength(mm, form.dataset.units);
const taped = { say: (words) => told.say(words), length: say, chosen: () => told.chosen() };
taping(drawing, document.getElementById("with-tape"), taped);
const told = telling(form, drawing, { turnTo });
remembering(drawing, document.getElementById("what-moves"), say);

const redraw = newest(async (query) => {
  try {
    const answer = await fetch(`/draw/${recipe}.svg?${query}`);
    if (!answer.ok) throw new Error(String(answer.status));
    drawing.show(await answer.text());
    drawing.dataset.drawn = query;
    drawing.classList.remove("stale");
  } catch {
    drawing.classList.add("stale");
    told.say("The workroom does not answer. Is its window still open? What you entered stays here.");
  }
});

const retell = newest(async (query) => {
  const answer = await fetch(`/table/${recipe}/told.json?${query}`).catch(() => null);
  if (answer?.ok) told.take(await answer.json());
});

const settle = whenCalm((query) => {
  history.replaceState(null, "", `?${query}`);
  carry(query);
  retell(query);
}, CALM);

function changed() {
  const query = queryOf(form);
  redraw(query);
  settle(query);
}

/** Links to the same draft elsewhere say what is on the table now. */
function carry(query) {
  for (const link of document.querySelectorAll("a[data-carry]")) link.href = `${link.dataset.carry}?${query}`;
}

function turnTo(sheet) {
  if (currentSheet() === sheet) return Promise.resolve();
  form.elements.namedItem("on-sheet").value = sheet;
  for (const link of form.querySelectorAll(".corners a")) {
    if (link.dataset.sheet === sheet) link.setAttribute("aria-current", "true");
    else link.removeAttribute("aria-current");
  }
  const query = queryOf(form);
  settle(query);
  return redraw(query).then(() => drawing.whole());
}

function currentSheet() {
  return form.querySelector(".corners a[aria-current]")?.dataset.sheet ?? "";
}

function pin() {
  const isWide = drawing.clientWidth >= WIDE;
  slips.classList.toggle("pinned", isWide);
  threads.replaceChildren();
  if (!isWide) return;
  const found = [...slips.querySelectorAll(".slip")].map((slip) => ({
    slip,
    name: slip.dataset.slip,
    width: slip.offsetWidth,
    height: slip.offsetHeight,
    at: placeOf(slip.dataset.slip),
  }));
  const places = pinned(found, drawing.drawn(), { ...drawing.room, taken: TAKEN });
  for (const one of found) {
    const place = places.get(one.name);
    one.slip.style.translate = `${Math.round(place.x)}px ${Math.round(place.y)}px`;
    if (one.at) threads.append(thread(one, place));
  }
}

function placeOf(name) {
  const place = anchors[name]?.[currentSheet()];
  return place ? drawing.seenAt(...place) : null;
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

const threads = document.createElementNS(SVG, "svg");
threads.classList.add("threads");
threads.setAttribute("aria-hidden", "true");
slips.before(threads);

joinSliders(form, changed);
form.addEventListener("input", ({ target }) => target.name && changed());
form.addEventListener("submit", (event) => {
  event.preventDefault();
  changed();
});
form.querySelector(".corners").addEventListener("click", (event) => {
  const link = event.target.closest("a[data-sheet]");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  turnTo(link.dataset.sheet);
});
for (const event of ["focusin", "pointerover"]) {
  slips.addEventListener(event, ({ target }) => {
    const name = target.closest(".slip")?.dataset.slip;
    for (const line of threads.children) line.classList.toggle("lit", line.dataset.thread === name);
  });
}
drawing.addEventListener("seen", pin);
Object.defineProperty(drawing, "bare", { get: bareEdges });

/** Paper left free round the drawing: beside it for the slips where they are pinned, a little everywhere. */
function bareEdges() {
  const isWide = drawing.clientWidth >= WIDE;
  const beside = isWide ? Math.min(290, drawing.clientWidth / 4) : 12;
  return { left: beside, right: beside, top: 8, bottom: 8 };
}

document.documentElement.classList.add("with-script");
drawing.whole();
if ([...form.elements].some(isTouched)) changed(); // typed before this script had come
else retell(queryOf(form));

function isTouched(field) {
  if (field.matches("input[type=radio]")) return field.checked !== field.defaultChecked;
  return field.matches("input[name]") && field.value !== field.defaultValue;
}
