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
    this.band = element("div", "band");
    for (const one of [this.layer, this.numbers, this.band]) one.setAttribute("aria-hidden", "true");
    this.prepend(this.band, this.numbers, this.layer);
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
    this.band.hidden = !this.lit;
    this.band.style.translate = `0 ${this.#topOf(this.lit) - scrollTop}px`;
  }

  /** Marks a line; one that is out of sight is brought into it. */
  light(line, { intoSight = false } = {}) {
    this.lit = line;
    const top = this.#topOf(line);
    const isSeen = top >= this.area.scrollTop && top + this.#lineHeight <= this.area.scrollTop + this.area.clientHeight;
    if (line && intoSight && !isSeen) this.area.scrollTop = Math.max(0, top - this.area.clientHeight / 3);
    this.follow();
  }

  /** The line at a height of the screen. */
  lineUnder(clientY) {
    const from = this.area.getBoundingClientRect().top - this.area.scrollTop + this.#padding;
    const line = Math.floor((clientY - from) / this.#lineHeight) + 1;
    return line >= 1 && line <= this.numbers.childElementCount ? line : 0;
  }

  get #lineHeight() {
    return parseFloat(getComputedStyle(this.area).lineHeight);
  }

  get #padding() {
    return parseFloat(getComputedStyle(this.area).paddingTop);
  }

  #topOf(line) {
    return this.#padding + ((line || 1) - 1) * this.#lineHeight;
  }

  goTo(line, column) {
    const at = placeOf(this.area.value, line, column);
    this.area.focus();
    this.area.setSelectionRange(at, at);
    this.area.scrollTop = Math.max(0, (line - 6) * this.#lineHeight);
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
const link = linked(drawing, JSON.parse(document.getElementById("told").textContent), (line) => editor.light(line, { intoSight: true }));
const opened = editor.area.value;
const kept = `unsaved ${location.pathname}`;
let saving = false;

const read = newest(async ({ text, sheet }) => {
  const isOlder = () => text !== editor.area.value || sheet !== desk.dataset.sheet; // what is wished now is read next
  const answer = await fetch("/check", { method: "POST", body: new URLSearchParams({ text, sheet }) }).catch(() => null);
  const told = answer?.ok ? await answer.json().catch(() => null) : null;
  if (isOlder()) return;
  if (!told) {
    const why = answer?.status === 503 ? "This recipe takes too long to draw." : "The workroom does not answer.";
    return tell([{ severity: "error", message: `${why} Your text stays here.` }]);
  }
  drawing.show(told.drawing);
  desk.dataset.sheet = told.sheet;
  editor.colour(told.messages);
  tell(told.messages);
  corner(told);
  link.take(told.lines);
  desk.dataset.read = String(text.length);
});
const readNow = () => read({ text: editor.area.value, sheet: desk.dataset.sheet });
const readLater = whenCalm(readNow, CALM);

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

/** Writes over the whole text, as if it were typed, so that it can be taken back. */
function write(text) {
  editor.area.select();
  if (!document.execCommand("insertText", false, text)) editor.area.value = text;
}

function choose(line) {
  editor.light(line);
  link.light(line);
}

editor.area.addEventListener("input", () => {
  sessionStorage.setItem(kept, editor.area.value);
  readLater();
});
for (const event of ["selectionchange", "keyup", "click"]) editor.area.addEventListener(event, () => choose(editor.line));
editor.area.addEventListener("pointermove", ({ clientY, buttons }) => buttons || choose(editor.lineUnder(clientY)));
editor.area.addEventListener("pointerleave", () => choose(document.activeElement === editor.area ? editor.line : 0));
for (const button of desk.querySelectorAll("button[data-command]")) {
  button.hidden = false;
  button.addEventListener("click", () => {
    editor.area.focus();
    document.execCommand(button.dataset.command);
  });
}
corners.addEventListener("click", ({ target }) => {
  const sheet = target.closest("button")?.dataset.sheet;
  if (!sheet) return;
  desk.dataset.sheet = sheet; // so that what is typed before the answer comes does not turn it back
  readNow().then(() => drawing.whole());
});
messages.addEventListener("click", (event) => {
  const { line, column } = event.target.closest("a")?.dataset ?? {};
  if (!line) return;
  event.preventDefault();
  editor.goTo(Number(line), Number(column));
});
desk.addEventListener("submit", () => {
  saving = true;
  sessionStorage.removeItem(kept);
});
addEventListener("beforeunload", (event) => {
  if (!saving && editor.area.value !== opened) event.preventDefault();
});
editor.colour(
  [...messages.querySelectorAll("a")].map((one) => ({ line: Number(one.dataset.line), severity: one.parentElement.className })),
);
const unsaved = sessionStorage.getItem(kept);
if (unsaved !== null && unsaved !== opened) write(unsaved); // the page was loaded anew
