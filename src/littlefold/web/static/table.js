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

const CALM = 180; // ms after the last change before words are fetched

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
const slips = pinning(form.querySelector(".slips"), drawing, findings, (name) => anchors[name]?.[currentSheet()]);

const STAYS = "What you entered stays here.";

const redraw = newest(async (query) => {
  let why = `${SILENT} ${STAYS}`;
  try {
    const answer = await fetch(`/draw/${recipe}.svg?${query}`);
    if (answer.status === NOT_IN) why = `${OVER} Come in again in another window. ${STAYS}`;
    if (!answer.ok) throw new Error(String(answer.status));
    drawing.show(await answer.text());
    drawing.dataset.drawn = query;
    drawing.classList.remove("stale");
  } catch {
    drawing.classList.add("stale");
    told.say(why);
  }
});

const retell = newest(async (query) => {
  const fresh = await answered("told", query);
  if (!fresh) return;
  told.take(fresh);
  form.dataset.told = query;
  slips.lay();
  if (fresh.in_trouble) heal(query);
});

/** Which choices would cure what was found: sought when nothing else is asked for. */
const heal = newest(async (query) => {
  const fresh = await answered("cures", query);
  if (!fresh || query !== queryOf(form)) return;
  told.find(fresh.findings);
  slips.lay();
});

async function answered(what, query) {
  const answer = await fetch(`/table/${recipe}/${what}.json?${query}`).catch(() => null);
  return answer?.ok ? answer.json() : null;
}

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
  const query = queryOf(form);
  settle(query);
  return redraw(query).then(() => drawing.whole());
}

function currentSheet() {
  return form.querySelector(".corners a[aria-current]")?.dataset.sheet ?? "";
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
Object.defineProperty(drawing, "bare", { get: slips.bare });

document.documentElement.classList.add("with-script");
slips.lay();
drawing.whole();
if ([...form.elements].some(isTouched)) changed(); // typed before this script had come
else retell(queryOf(form));

function isTouched(field) {
  if (field.matches("input[type=radio]")) return field.checked !== field.defaultChecked;
  return field.matches("input[name]") && field.value !== field.defaultValue;
}
