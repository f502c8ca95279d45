// Readings are looked at while they are typed: what is understood, what is not, and what looks wrong.

import { NOT_IN, SILENT, comeIn } from "./answers.js";
import { newest, whenCalm } from "./newest.js";

const CALM = 120; // ms without a key before the readings are looked at
const form = document.querySelector("form[data-judge]");
const doubts = document.getElementById("doubts");
const confirm = document.getElementById("confirm");

const judge = newest(async (typed) => {
  remember(typed);
  const answer = await fetch(`${form.dataset.judge}?${typed}`).catch(() => null);
  const found = answer?.ok ? await answer.json().catch(() => null) : null;
  if (typed !== query()) return; // typed on meanwhile: that is looked at next
  if (!found) return tellSilence(answer?.status);
  tell(found);
  form.dataset.judged = typed;
});

/** The link of the page says what was typed, so that nothing is lost when it is loaded again. */
function remember(typed) {
  const at = form.elements.namedItem("was")?.value ?? "all";
  history.replaceState(null, "", `/child/measure?${typed}&at=${encodeURIComponent(at)}`);
}

function tell(found) {
  for (const place of form.querySelectorAll("[data-said]")) tellOf(place, found);
  doubts.replaceChildren(...found.found.map(line));
  if (confirm) confirm.hidden = !found.found.some((one) => one.severity !== "note");
}

/** Says that nobody looks at the readings, in the place of what was found before. */
function tellSilence(status) {
  const item = document.createElement("li");
  item.className = "warning";
  if (status === NOT_IN) comeIn(item);
  else item.textContent = SILENT;
  doubts.replaceChildren(item);
}

function tellOf(place, found) {
  const name = place.dataset.said;
  const refused = found.refused[name];
  place.textContent = refused ?? found.said[name] ?? place.dataset.plain;
  form.elements.namedItem(name).setAttribute("aria-invalid", String(Boolean(refused)));
  place.closest("li")?.classList.toggle("doubtful", found.doubtful.includes(name));
}

function line(one) {
  const item = document.createElement("li");
  item.className = one.severity;
  const heading = document.createElement("b");
  heading.textContent = `${one.heading}.`;
  item.append(heading, ` ${one.message}`);
  return item;
}

function query() {
  const fields = [...new FormData(form)].filter(([name, text]) => text && name !== "was" && name !== "at");
  return new URLSearchParams(fields).toString();
}

const calmly = whenCalm(() => judge(query()), CALM);
form.addEventListener("input", calmly);
form.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
if (query() !== form.dataset.judged) calmly(); // what was typed before this script stood ready
