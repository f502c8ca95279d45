// The drafting table: what is moved on the tape or a slip is drawn anew, the newest wish winning.

import "./draft-drawing.js";
import { NOT_IN, OVER, SILENT } from "./answers.js";
import { newest, whenCalm } from "./newest.js";
import { remembering } from "./moves.js";
import { pinning } from "./pinning.js";
import { sayLength } from "./say.js";
import { taping } from "./tape.js";
import { apply, joinSliders, queryOf } from "./wish.js";
import { telling } from "./telling.js";

const ALL = "all-pieces"; // the sheet with all pieces beside each other
const BUSY = 429; // the workroom seeks enough cures already
const AGAIN = 2000; // ms until it is asked again
const CALM = 120; // ms after the last change before what was found is asked for

const form = document.getElementById("wish");
const keep = document.getElementById("keep");
const drawing = form.querySelector("draft-drawing");
const anchors = JSON.parse(document.getElementById("anchors").textContent);
const recipe = encodeURIComponent(form.dataset.recipe);
const say = (mm) => sayLength(mm, form.dataset.units);
const taped = { say: (words) => told.say(words), length: say, chosen: () => told.chosen() };
taping(drawing, document.getElementById("with-tape"), taped);
const told = telling(form, drawing, { turnTo });
remembering(drawing, document.getElementById("what-moves"), say);
const findings = form.querySelector(".findings-slip");
const slips = pinning(form.querySelector(".slips"), drawing, findings, {
  here: (name) => anchors[name]?.[currentSheet()],
  elsewhere,
  turnTo,
});

const STAYS = "What you entered stays here.";

/** The drawing alone, as often as something moves; what was found of an older one stands on, faded. */
const redraw = newest(async (query) => {
  const fresh = await answered(`/draw/${recipe}/moving.svg?${query}`, "text");
  if (!fresh || form.dataset.told) return; // what is told has come before, and is of the newest
  show(query, fresh, drawing.querySelector(".findings"));
});

/** The drawing and all that is said of it, as soon as nothing moves. */
const retell = newest(async (query) => {
  const fresh = await answered(`/table/${recipe}/told.json?${query}`, "json");
  if (!fresh || query !== queryOf(form)) return;
  show(query, fresh.drawing);
  told.take(fresh);
  form.dataset.told = query;
  form.classList.remove("moving");
  slips.lay();
  if (fresh.in_trouble) heal(query);
});

function show(query, fresh, kept) {
  drawing.show(fresh, kept);
  drawing.dataset.drawn = query;
  drawing.classList.remove("stale");
}

/** Which choices would cure what was found: sought when nothing else is asked for. */
const heal = newest(async (query) => {
  const answer = await fetch(`/table/${recipe}/cures.json?${query}`).catch(() => null);
  if (answer?.status === BUSY) setTimeout(() => query === queryOf(form) && heal(query), AGAIN);
  const fresh = answer?.ok && (await answer.json());
  if (!fresh || query !== queryOf(form)) return;
  told.find(fresh.findings);
  slips.lay();
});

/** What the workroom answers, as text or as JSON; null where it does not, which is said. */
async function answered(link, kind) {
  const answer = await fetch(link).catch(() => null);
  const fresh = answer?.ok ? await answer[kind]().catch(() => null) : null;
  if (fresh) return fresh;
  drawing.classList.add("stale");
  told.say(answer?.status === NOT_IN ? `${OVER} Come in again in another window. ${STAYS}` : `${SILENT} ${STAYS}`);
  return null;
}

function rest() {
  const query = queryOf(form);
  history.replaceState(null, "", `?${query}`);
  return retell(query);
}

const settle = whenCalm(rest, CALM);

function changed() {
  delete form.dataset.told;
  form.classList.add("moving");
  const query = queryOf(form);
  carry(query); // at once: a link may be clicked before all is at rest
  redraw(query);
  settle();
}

/** Links to the same draft elsewhere, and the card it may be kept on, say what is on the table now. */
function carry(query) {
  for (const link of document.querySelectorAll("a[data-carry]")) link.href = `${link.dataset.carry}?${query}`;
  keep.elements.namedItem("query").value = query;
  keep.elements.namedItem("name").value = form.elements.namedItem("for-name").value;
}

function turnTo(sheet) {
  if (currentSheet() === sheet) return Promise.resolve();
  form.elements.namedItem("on-sheet").value = sheet;
  for (const link of form.querySelectorAll(".corners a")) {
    if (link.dataset.sheet === sheet) link.setAttribute("aria-current", "true");
    else link.removeAttribute("aria-current");
  }
  showTab();
  delete form.dataset.told;
  carry(queryOf(form));
  return rest().then(() => drawing.whole());
}

/** Brings the tab of the sheet that is seen into the row; the page stays where it is. */
function showTab() {
  const tab = form.querySelector(".corners a[aria-current]");
  if (tab) tab.parentElement.scrollLeft = tab.offsetLeft - (tab.parentElement.clientWidth - tab.offsetWidth) / 2;
}

function currentSheet() {
  return form.querySelector(".corners a[aria-current]")?.dataset.sheet ?? "";
}

/** The first sheet on which a choice acts that does not act on the one that is seen; none where all pieces are. */
function elsewhere(name) {
  const places = anchors[name] ?? {};
  if (currentSheet() === ALL || currentSheet() in places) return "";
  return [...form.querySelectorAll(".corners a")].map((one) => one.dataset.sheet).find((sheet) => sheet in places) ?? "";
}

/** Looks at the whole of what is on a fold, or at what is drawn of it. */
function unfold() {
  drawing.isUnfolded = unfolded.checked;
  drawing.whole();
}

function isPlain(event) {
  return !(event.ctrlKey || event.metaKey || event.shiftKey);
}

joinSliders(form, changed);
form.addEventListener("input", ({ target }) => target.name && changed());
form.addEventListener("submit", (event) => {
  event.preventDefault();
  changed();
});
form.addEventListener("click", (event) => {
  const corner = event.target.closest(".corners a[data-sheet]");
  const cure = event.target.closest("a[data-choice]");
  if (!(corner || cure) || !isPlain(event)) return;
  event.preventDefault();
  if (corner) turnTo(corner.dataset.sheet);
  else if (apply(form, cure.dataset.choice, cure.dataset.value)) told.say(`${cure.textContent}: done.`);
});
keep.addEventListener("submit", () => carry(queryOf(form)));
drawing.addEventListener("seen", slips.lay);
const unfolded = document.getElementById("show-unfolded");
unfolded.addEventListener("change", unfold);
Object.defineProperty(drawing, "bare", { get: slips.bare });

document.documentElement.classList.add("with-script");
showTab();
slips.lay();
unfold();
if ([...form.elements].some(isTouched)) changed(); // typed before this script had come
else retell(queryOf(form));

function isTouched(field) {
  if (field.matches("input[type=radio]")) return field.checked !== field.defaultChecked;
  return field.matches("input[name]") && field.value !== field.defaultValue;
}
