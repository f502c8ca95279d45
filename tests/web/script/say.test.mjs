// The contract: the browser says and reads lengths as the server does.  The cases are the server's own answers.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { nudge, plain, readLength, sayLength } from "../../../src/littlefold/web/static/say.js";

const cases = JSON.parse(readFileSync(process.env.LITTLEFOLD_CASES, "utf8"));

test("lengths are said alike", () => {
  assert.ok(cases.said.length > 500);
  for (const [mm, cm, inches] of cases.said) {
    assert.equal(sayLength(mm, "cm"), cm);
    assert.equal(sayLength(mm, "in"), inches);
  }
});

test("what is read here is what the server reads", () => {
  assert.ok(cases.read.length > 10);
  for (const [text, unit, mm] of cases.read) assert.ok(Math.abs(readLength(text, unit) - mm) < 1e-6, text);
});

test("what is no length is none", () => {
  for (const text of ["", "lots", "cm", "5 furlongs", "-3 cm", "1/2/3"]) assert.equal(readLength(text, "cm"), null);
});

test("an arrow goes to the next mark of the tape", () => {
  assert.equal(nudge(532, 1, "cm"), 535);
  assert.equal(nudge(535, 1, "cm"), 540);
  assert.equal(nudge(532, -1, "cm"), 530);
  assert.equal(nudge(2, -1, "cm"), 0);
  assert.equal(nudge(25.4, 1, "in"), 25.4 * 1.25);
});

test("numbers have no needless noughts", () => {
  assert.equal(plain(1.5, 2), "1.5");
  assert.equal(plain(10, 2), "10");
  assert.equal(plain(-0.001, 2), "0");
});
