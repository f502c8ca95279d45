// <recipe-editor>: a textarea with numbered lines and a coloured layer under its letters; messages as one types.

import "./draft-drawing.js";
import { lineAt, placeOf, stretches } from "./highlight.js";
import { linked } from "./linked.js";
import { newest, whenCalm } from "./newest.js";

const CALM = 250; // ms after the last key before the text is read

class RecipeEditor extends HTMLElement {
  connectedCallback() {
    this.area = this.querySelector("textarea");
    this.layer = element("pre", "layer");
    this.numbers = element("pre", "line-numbers");
    for (const one of [this.layer, this.numbers]) one.setAttribute("aria-hidden", "true");
    this.prepend(this.numbers, this.layer);
    this.classList.add("live");
    this.area.addEventListener("input", () => this.colour());
    this.area.addEventListener("scroll", () => this.follow());
    this.colour();
  }

  colour(messages = this.messages ?? []) {
    this.messages = messages;
    const wrong = new Map(messages.map((one) => [one.line, one.severity]));
    const spans = stretches(this.area.value).map(([kind, text]) => {
      const span = element("span", kind);
      span.textContent = text;
      return span;
    });
    this.layer.replaceChildren(...spans, "\n");
    const count = this.area.value.split("\n").length;
    this.numbers.replaceChildren(
      ...Array.from({ length: count }, (_, k) => {
        const number = element("span", wrong.get(k + 1) ?? "");
        number.textContent = `${k + 1}\n`;
        return number;
      }),
    );
    this.follow();
  }

  follow() {
    const { scrollLeft, scrollTop } = this.area;
    this.layer.style.translate = `${-scrollLeft}px ${-scrollTop}px`;
    this.numbers.style.translate = `0 ${-scrollTop}px`;
  }

  goTo(line, column) {
    const at = placeOf(this.area.value, line, column);
    this.area.focus();
    this.area.setSelectionRange(at, at);
    const height = parseFloat(getComputedStyle(this.area).lineHeight);
    this.area.scrollTop = Math.max(0, (line - 6) * height);
  }

  get line() {
    return lineAt(this.area.value, this.area.selectionStart).line;
  }
}

function element(tag, kind) {
  const made = document.createElement(tag);
  made.className = kind;
  return made;
}

customElements.define("recipe-editor", RecipeEditor);

const desk = document.getElementById("desk");
const editor = desk.querySelector("recipe-editor");
const drawing = desk.querySelector("draft-drawing");
const messages = document.getElementById("messages");
const corners = document.getElementById("corners");
const link = linked(drawing, JSON.parse(document.getElementById("told").textContent), () => {});
const opened = editor.area.value;
let saving = false;

const read = newest(async ({ text, sheet }) => {
  const answer = await fetch("/check", { method: "POST", body: new URLSearchParams({ text, sheet }) }).catch(() => null);
  if (!answer?.ok) {
    const why = answer?.status === 503 ? "This recipe takes too long to draw." : "The workroom does not answer.";
    return tell([{ severity: "error", message: `${why} Your text stays here.` }]);
  }
  const told = await answer.json();
  drawing.show(told.drawing);
  desk.dataset.sheet = told.sheet;
  editor.colour(told.messages);
  tell(told.messages);
  corner(told);
  link.take(told.lines);
  desk.dataset.read = String(text.length);
});
const readLater = whenCalm(() => read({ text: editor.area.value, sheet: desk.dataset.sheet }), CALM);

function tell(told) {
  messages.replaceChildren(
    ...told.map((one) => {
      const line = element("li", one.severity);
      if (one.line) {
        const to = element("a", "");
        to.href = "#text";
        Object.assign(to.dataset, { line: one.line, column: one.column ?? 1 });
        to.textContent = `line ${one.line}`;
        line.append(to, ": ");
      }
      line.append(one.message);
      return line;
    }),
  );
}

function corner(told) {
  corners.replaceChildren(
    ...told.sheets.map((name) => {
      const button = element("button", "");
      button.type = "button";
      button.dataset.sheet = name;
      button.textContent = name.replaceAll("_", " ");
      if (name === told.sheet) button.setAttribute("aria-current", "true");
      return button;
    }),
  );
}

editor.area.addEventListener("input", readLater);
editor.area.addEventListener("selectionchange", () => link.light(editor.line));
editor.area.addEventListener("keyup", () => link.light(editor.line));
editor.area.addEventListener("click", () => link.light(editor.line));
corners.addEventListener("click", ({ target }) => {
  const sheet = target.closest("button")?.dataset.sheet;
  if (sheet) read({ text: editor.area.value, sheet }).then(() => drawing.whole());
});
messages.addEventListener("click", (event) => {
  const { line, column } = event.target.closest("a")?.dataset ?? {};
  if (!line) return;
  event.preventDefault();
  editor.goTo(Number(line), Number(column));
});
desk.addEventListener("submit", () => (saving = true));
addEventListener("beforeunload", (event) => {
  if (!saving && editor.area.value !== opened) event.preventDefault();
});
editor.colour(
  [...messages.querySelectorAll("a")].map((one) => ({ line: Number(one.dataset.line), severity: one.parentElement.className })),
);
