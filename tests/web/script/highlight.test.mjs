import assert from "node:assert/strict";
import { test } from "node:test";

import { lineAt, placeOf, stretches } from "../../../src/littlefold/web/static/highlight.js";

const kinds = (text) => stretches(text).filter(([kind]) => kind !== "space");

test("together the stretches are the text, whatever it is", () => {
  const texts = ["", "point A", 'title "open', "# all\nrecipe x", "a \"b\\\"c\" # d", "\u202e\u0000<b>", "½ ∑ 😀 ñ_1.x", '"\n"'];
  for (const text of texts) assert.equal(stretches(text).map(([, taken]) => taken).join(""), text);
});

test("what is done, words, numbers with their units and comments look apart", () => {
  assert.deepEqual(kinds('choice ease = 14 cm, 8 cm .. 28 cm "Ease" # wide'), [
    ["act", "choice"], ["name", "ease"], ["sign", "="], ["number", "14 cm"], ["sign", ","], ["number", "8 cm"],
    ["sign", "."], ["sign", "."], ["number", "28 cm"], ["words", '"Ease"'], ["comment", "# wide"],
  ]);
});

test("a number sign within words begins no comment", () => {
  assert.deepEqual(kinds('title "No 5 # blue"').map(([kind]) => kind), ["act", "words"]);
});

test("a line that goes on after a comma does nothing new", () => {
  assert.deepEqual(kinds("measure chest,\n  neck\npoint A").map(([kind]) => kind), ["act", "name", "sign", "name", "act", "name"]);
});

test("places and lines lead to each other", () => {
  const text = "one\ntwo three\n\nfour";
  for (let at = 0; at <= text.length; at++) {
    const { line, column } = lineAt(text, at);
    assert.equal(placeOf(text, line, column), at);
  }
  assert.equal(placeOf(text, 2, 999), 13);
});
