// What the form says, as the part of a link after the question mark.

import { nudge, plain, readLength, sayLength } from "./say.js";

/** @param {HTMLFormElement} form */
export function queryOf(form) {
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form)) {
    if (name !== "bare-numbers" && value.trim()) fields.set(name, withUnit(form, name, value.trim()));
  }
  return fields.toString();
}

function withUnit(form, name, text) {
  const field = form.elements.namedItem(name);
  const bare = /^\d+([.,]\d+)?$|^\d*\s*\d+\/\d+$/.test(text);
  return bare && field?.classList?.contains("length") ? `${text} ${form.dataset.units}` : text;
}

/** Sliders and arrow keys write into the fields beside them; `changed` is told after every change. */
export function joinSliders(form, changed) {
  for (const slider of form.querySelectorAll("input.along")) {
    const field = document.getElementById(slider.dataset.for);
    slider.hidden = false;
    slider.addEventListener("input", () => {
      field.value = said(form, field, Number(slider.value));
      changed(field);
    });
    field.addEventListener("input", () => {
      const value = valueOf(form, field);
      if (value !== null) slider.value = value;
    });
  }
  form.addEventListener("keydown", (event) => step(form, event, changed));
}

/** Sets a choice as if the maker had: its field or its option. */
export function apply(form, choice, value) {
  const field = form.elements.namedItem(choice);
  if (!field) return false;
  const input = field instanceof RadioNodeList ? [...field].find((one) => one.value === value) : field;
  if (!input) return false;
  if (input.type === "radio") input.checked = true;
  else input.value = value;
  input.dispatchEvent(new Event("input", { bubbles: true }));
  return true;
}

function said(form, field, value) {
  if (field.classList.contains("length")) return sayLength(value, form.dataset.units);
  return plain(value, 2);
}

/** The value of a field in its own measure (mm for lengths); null where it is empty or not understood. */
export function valueOf(form, field) {
  if (!field.value.trim()) return null;
  if (field.classList.contains("length")) return readLength(field.value, form.dataset.units);
  const value = Number(field.value.replace("°", ""));
  return Number.isFinite(value) ? value : null;
}

function step(form, event, changed) {
  const field = event.target;
  if (!field.matches?.("input.length, input.number") || !["ArrowUp", "ArrowDown"].includes(event.key)) return;
  event.preventDefault();
  const way = event.key === "ArrowUp" ? 1 : -1;
  const now = valueOf(form, field) ?? Number(field.dataset.mm);
  const next = field.classList.contains("length")
    ? nudge(now, way, form.dataset.units)
    : now + way * Number(field.dataset.step);
  field.value = said(form, field, next);
  field.dispatchEvent(new Event("input", { bubbles: true }));
  changed(field);
}
