// Lines of a recipe and the elements they draw light each other up.

/** @param {HTMLElement} drawing  @param {Record<string, number>} lines  element to line  @param {(line: number) => void} tell */
export function linked(drawing, lines, tell) {
  let known = lines;
  let lit = 0;

  function light(line) {
    lit = line;
    for (const one of drawing.querySelectorAll(".lit")) one.classList.remove("lit");
    for (const [name, its] of Object.entries(known)) if (its === line) mark(name);
  }

  function mark(name) {
    for (const one of drawing.querySelectorAll(`[data-name="${CSS.escape(name)}"]`)) one.classList.add("lit");
  }

  drawing.addEventListener("pointerover", ({ target }) => {
    const line = known[target.closest("[data-name]")?.dataset.name];
    if (line) {
      light(line);
      tell(line);
    }
  });
  drawing.addEventListener("drawn", () => light(lit));
  return { light, take: (fresh) => ((known = fresh), light(lit)) };
}
