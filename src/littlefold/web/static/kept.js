// What is typed and not yet sent stands in its field again when the page is loaded again; it goes with the tab.

/** The fields of a form as pairs of name and text. */
export function typedIn(form) {
  return [...new FormData(form)].filter(([, value]) => typeof value === "string");
}

/** Puts pairs back into the fields of a form; what is not among them is unticked, and hidden fields are left alone. */
export function putBack(form, pairs) {
  for (const field of form.elements) {
    if (!field.name || field.type === "hidden" || field.type === "file") continue;
    const texts = pairs.filter(([name]) => name === field.name).map(([, text]) => text);
    if (field.type === "checkbox" || field.type === "radio") field.checked = texts.includes(field.value);
    else if (texts.length) [field.value] = texts;
  }
}

function keep(form) {
  const place = `typed ${location.pathname}${location.search} ${form.getAttribute("action")}`;
  const before = sessionStorage.getItem(place);
  if (before) {
    putBack(form, JSON.parse(before));
    form.closest("details")?.setAttribute("open", "");
  }
  form.addEventListener("input", () => sessionStorage.setItem(place, JSON.stringify(typedIn(form))));
  form.addEventListener("submit", () => sessionStorage.removeItem(place));
}

if (globalThis.document) document.querySelectorAll("form[data-keep]").forEach(keep);
