// What is told beside the drawing: the element under the pointer, the findings, the back of the sheet.

/**
 * @param {HTMLFormElement} form
 * @param {HTMLElement} drawing
 * @param {{turnTo: (sheet: string) => Promise<void>}} table
 */
export function telling(form, drawing, { turnTo }) {
  const slip = document.getElementById("told");
  let elements = {};
  let held = "";

  function say(words) {
    slip.replaceChildren(...(words ? [paragraph(words)] : []));
  }

  function tell(name) {
    const known = elements[name];
    mark(name);
    if (!known) return say("");
    slip.replaceChildren(...sentences(known));
  }

  function mark(name) {
    for (const lit of drawing.querySelectorAll(".lit")) lit.classList.remove("lit");
    if (!name) return;
    for (const one of drawing.querySelectorAll(`[data-name="${CSS.escape(name)}"]`)) one.classList.add("lit");
  }

  /** The next element of this sheet in the order of drafting. */
  function next(way) {
    const here = [...new Set([...drawing.querySelectorAll(".line, .point")].map((one) => one.dataset.name))];
    here.sort((one, other) => (elements[one]?.step ?? 1e6) - (elements[other]?.step ?? 1e6));
    const at = here.indexOf(held);
    held = here[(at + way + here.length) % here.length] ?? "";
    tell(held);
  }

  function light(number) {
    for (const lit of drawing.querySelectorAll(".lit")) lit.classList.remove("lit");
    const pin = drawing.querySelector(`[data-finding="${number}"]`);
    pin?.classList.add("lit");
    drawing.querySelector(`[data-name="finding-${number}"]`)?.classList.add("lit");
    for (const one of document.querySelectorAll("#findings li")) {
      one.classList.toggle("lit", one.querySelector(".number")?.textContent === String(number));
    }
  }

  drawing.addEventListener("pointerover", ({ target }) => {
    const name = target.closest("[data-name]")?.dataset.name;
    if (name && !held) tell(name);
  });
  drawing.addEventListener("pointerleave", () => held || tell(""));
  drawing.addEventListener("touched", ({ detail }) => {
    const number = detail.named?.dataset.finding;
    if (number) return light(number);
    held = detail.named?.dataset.name ?? "";
    tell(held);
  });
  drawing.addEventListener("drawn", () => mark(held));
  drawing.addEventListener("keydown", ({ key }) => {
    if (key === "n") next(1);
    if (key === "p") next(-1);
    if (key === "Escape") tell((held = ""));
  });
  form.addEventListener("click", async ({ target }) => {
    const button = target.closest("button[data-finding]");
    if (!button) return;
    await turnTo(button.dataset.sheet);
    light(button.dataset.finding);
  });

  /** Takes in what the server tells of the draft on the table. */
  function take(fresh) {
    elements = fresh.elements;
    find(fresh.findings);
    put("back-words", fresh.back);
    for (const [name, reading] of Object.entries(fresh.readings)) show(name, reading, fresh.refused[name]);
    for (const field of form.querySelectorAll(".slip input[name]")) complain(field, fresh.refused[field.name]);
    if (held) tell(held);
  }

  /** Lists what was found, keeping the one that is lit. */
  function find(html) {
    const lit = document.querySelector("#findings li.lit .number")?.textContent;
    put("findings", html);
    const count = form.querySelector(".findings-slip .count");
    count.textContent = document.querySelectorAll("#findings li").length;
    count.className = `count ${document.querySelector("#findings li")?.classList[0] ?? ""}`; // the gravest comes first
    if (lit) light(lit);
  }

  function show(name, reading, refused) {
    const mark = form.querySelector(`[data-reading="${CSS.escape(name)}"]`);
    const field = mark.querySelector("input");
    field.placeholder = reading.said;
    field.dataset.mm = reading.mm;
    complain(field, refused);
    mark.querySelector(".origin").textContent = refused ?? reading.origin;
    mark.classList.toggle("given", reading.origin === "measured");
    mark.classList.toggle("guessed", reading.origin !== "measured");
    const slider = mark.querySelector(".along");
    if (!field.value) slider.value = reading.mm;
  }

  return { say, take, find, chosen: () => held };
}

function complain(field, refused) {
  if (refused) field.setAttribute("aria-invalid", "true");
  else field.removeAttribute("aria-invalid");
  field.title = refused ?? "";
}

/** The server's own HTML, in which every name is escaped. */
function put(id, html) {
  const fresh = new DOMParser().parseFromString(html, "text/html");
  document.getElementById(id).replaceChildren(...fresh.body.childNodes);
}

function sentences(known) {
  const head = document.createElement("b");
  head.textContent = known.length ? `${known.name}, ${known.length}` : known.name;
  const edge = known.edge !== known.sentence && known.edge;
  const lines = [known.sentence, known.formula, ...(known.workings ?? []), edge, known.source && `After ${known.source}`];
  return [head, ...lines.filter(Boolean).map(paragraph)];
}

function paragraph(words) {
  const line = document.createElement("p");
  line.textContent = words;
  return line;
}
