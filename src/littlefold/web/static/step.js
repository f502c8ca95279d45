// The step player: one step after the other as a hand draws them, each at its own link.

import { NOT_IN, SILENT, comeIn } from "./answers.js";

const board = document.getElementById("board");
const part = (id) => document.getElementById(id);
const of = Number(board.dataset.of);
const recipe = encodeURIComponent(board.dataset.recipe);
const READ = 55; // ms to read a letter
const LOOK = 1400; // ms to look at what was drawn
const known = new Map();
let number = Number(board.dataset.number);
let isPlaying = false;
let timer = 0;

const link = (step) => `/steps/${recipe}/${step}?${board.dataset.query}`;

async function fetched(step) {
  if (!known.has(step)) {
    const answer = await fetch(link(step).replace("?", ".json?"));
    if (!answer.ok) throw new Error(String(answer.status));
    known.set(step, await answer.json());
  }
  return known.get(step);
}

async function go(wanted) {
  const step = Math.min(Math.max(wanted, 1), of);
  number = step;
  part("scrub").value = step;
  let told;
  try {
    told = await fetched(step);
  } catch ({ message }) {
    if (number !== step) return; // another step was asked for meanwhile
    pause();
    if (message === String(NOT_IN)) comeIn(part("sentence"), link(step));
    else part("sentence").textContent = SILENT;
    return;
  }
  if (number !== step) return;
  show(told);
  history.replaceState(null, "", link(step));
  if (step < of) fetched(step + 1).catch(() => known.delete(step + 1));
}

function show(told) {
  const fresh = new DOMParser().parseFromString(told.picture, "image/svg+xml").documentElement;
  for (const path of fresh.querySelectorAll("path.new")) path.setAttribute("pathLength", "1");
  const picture = part("picture");
  picture.replaceChildren(document.importNode(fresh, true));
  picture.classList.add("drawing-in");
  for (const id of ["number", "sheet", "sentence", "formula", "remark"]) part(id).textContent = told[id];
  board.dataset.number = told.number;
  document.title = document.title.replace(/Step \d+/, `Step ${told.number}`);
  aim("back", told.number - 1);
  aim("on", told.number + 1);
}

function aim(id, step) {
  const isThere = step >= 1 && step <= of;
  part(id).href = link(Math.min(Math.max(step, 1), of));
  if (isThere) part(id).removeAttribute("aria-disabled");
  else part(id).setAttribute("aria-disabled", "true");
}

function play() {
  isPlaying = true;
  part("play").textContent = "Pause";
  drawOn(number === of ? 1 : number);
}

async function drawOn(step) {
  await go(step);
  if (!isPlaying || number !== step) return; // stopped while the step was on its way
  if (step >= of) return pause();
  clearTimeout(timer); // of an earlier start that waited for the same step
  timer = setTimeout(() => drawOn(step + 1), LOOK + READ * part("sentence").textContent.length);
}

function pause() {
  isPlaying = false;
  clearTimeout(timer);
  part("play").textContent = "Draw on";
}

function walk(step) {
  pause();
  go(step);
}

const keys = {
  ArrowRight: () => walk(number + 1),
  ArrowLeft: () => walk(number - 1),
  PageDown: () => walk(number + 1),
  PageUp: () => walk(number - 1),
  Home: () => walk(1),
  End: () => walk(of),
  " ": () => (isPlaying ? pause() : play()),
  f: () => fill(),
};

function fill() {
  if (document.fullscreenElement) document.exitFullscreen();
  else board.requestFullscreen();
}

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || !(event.key in keys)) return;
  if (event.target === part("scrub") || (event.key === " " && event.target.closest("button, a"))) return;
  event.preventDefault();
  keys[event.key]();
});
for (const [id, way] of [["back", -1], ["on", 1]]) {
  part(id).addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    walk(number + way);
  });
}
// A finger that is drawn across the picture turns to the next step, as one turns a page.
const SWIPE = 60; // px
let finger = null;
part("picture").addEventListener("pointerdown", ({ isPrimary, pointerType, clientX, clientY }) => {
  finger = isPrimary && pointerType === "touch" ? { clientX, clientY } : null;
});
part("picture").addEventListener("pointerup", ({ clientX, clientY }) => {
  if (!finger) return;
  const across = clientX - finger.clientX;
  if (Math.abs(across) > SWIPE && Math.abs(clientY - finger.clientY) < Math.abs(across)) walk(number - Math.sign(across));
  finger = null;
});

part("play").addEventListener("click", () => (isPlaying ? pause() : play()));
part("scrub").addEventListener("input", () => walk(Number(part("scrub").value)));
part("wall").addEventListener("click", fill);
for (const hidden of board.querySelectorAll(".walk [hidden]")) hidden.hidden = false;
if (!document.fullscreenEnabled) part("wall").hidden = true;
