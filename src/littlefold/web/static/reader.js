// A recipe to be read: its lines coloured, and lit together with what they draw.

import "./draft-drawing.js";
import { stretches } from "./highlight.js";
import { linked } from "./linked.js";

const drawing = document.querySelector("draft-drawing");
const lines = document.getElementById("lines");
const link = linked(drawing, JSON.parse(document.getElementById("told").textContent), show);

for (const line of lines.children) {
  const spans = stretches(line.textContent).map(([kind, text]) => {
    const span = document.createElement("span");
    span.className = kind;
    span.textContent = text;
    return span;
  });
  line.replaceChildren(...spans);
}

function show(number) {
  for (const lit of lines.querySelectorAll(".lit")) lit.classList.remove("lit");
  const line = lines.querySelector(`[data-line="${number}"]`);
  line?.classList.add("lit");
  line?.scrollIntoView({ block: "nearest" });
}

function choose(number) {
  show(number);
  link.light(number);
}

lines.addEventListener("pointerover", ({ target }) => {
  const line = target.closest("li")?.dataset.line;
  if (line) choose(Number(line));
});
lines.addEventListener("keydown", (event) => {
  const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!way) return;
  event.preventDefault();
  const now = Number(lines.querySelector(".lit")?.dataset.line ?? 0);
  choose(Math.min(Math.max(now + way, 1), lines.children.length));
});
