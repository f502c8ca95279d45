// A recipe cut into stretches of one kind, for the layer under the text.  It knows how words look, not what they mean.

const KINDS = [
  ["comment", /#[^\n]*/y],
  ["words", /"(?:\\.|[^"\\\n])*"?/y],
  ["number", /\d+(?:\.\d+)?(?:[ ]?\/[ ]?\d+)?(?:[ ]?(?:cm|mm|in|degrees|months|y)\b|[ ]?%)?/y],
  ["name", /[^\W\d][\w-]*(?:\.[^\W\d]\w*)*/uy],
  ["space", /\s+/y],
  ["sign", /[^\s\w"#]/y],
];

/** @returns {[string, string][]}  kind and text; together the texts are the whole */
export function stretches(text) {
  const found = [];
  let at = 0;
  let isFirst = true; // the first word of a line says what is done,
  let goesOn = false; // unless the line before ended in a comma
  while (at < text.length) {
    const [kind, taken] = next(text, at);
    found.push([kind === "name" && isFirst ? "act" : kind, taken]);
    if (kind === "space") isFirst = isFirst || (taken.includes("\n") && !goesOn);
    else isFirst = false;
    if (kind !== "space" && kind !== "comment") goesOn = taken === ",";
    at += taken.length;
  }
  return found;
}

function next(text, at) {
  for (const [kind, look] of KINDS) {
    look.lastIndex = at;
    const taken = look.exec(text)?.[0];
    if (taken) return [kind, taken];
  }
  return ["sign", text[at]];
}

/** The line and column (from 1) of a place in a text. */
export function lineAt(text, at) {
  const before = text.slice(0, at).split("\n");
  return { line: before.length, column: before.at(-1).length + 1 };
}

/** The place in a text of a line and column (from 1). */
export function placeOf(text, line, column) {
  const lines = text.split("\n");
  const before = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
  return before + Math.min(column - 1, (lines[line - 1] ?? "").length);
}
