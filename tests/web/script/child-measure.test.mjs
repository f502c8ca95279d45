// Readings are looked at while they are typed; a workroom that does not answer, or no longer to this visitor, is told.
import assert from "node:assert/strict";
import { before, beforeEach, test } from "node:test";

import { OVER, SILENT } from "../../../src/littlefold/web/static/answers.js";

const FOUND = { said: {}, refused: {}, doubtful: [], found: [{ severity: "warning", heading: "Chest", message: "Measure again." }] };

/** As much of an element as the module asks for. */
class Element {
  children = [];
  dataset = {};
  set textContent(text) { this.children = [text]; }
  get textContent() { return this.children.map((one) => one.textContent ?? one).join(""); }
  append(...more) { this.children.push(...more); }
  replaceChildren(...more) {
    this.children = more;
    this.changed?.();
  }
}

const doubts = new Element();
const form = Object.assign(new Element(), { typed: "chest=54", elements: { namedItem: () => null } });
form.dataset = { judge: "/child/measure/judged.json", judged: "chest=54" };
form.querySelector = () => null;
form.querySelectorAll = () => [];
form.addEventListener = (_, heard) => { form.heard = heard; };

before(async () => {
  globalThis.FormData = class { *[Symbol.iterator]() { yield* new URLSearchParams(form.typed); } };
  globalThis.history = { replaceState() {} };
  globalThis.location = { pathname: "/child/measure", search: "?chest=54" };
  globalThis.document = {
    querySelector: () => form,
    getElementById: (id) => (id === "doubts" ? doubts : null),
    createElement: () => new Element(),
  };
  await import("../../../src/littlefold/web/static/child-measure.js");
});

beforeEach(() => doubts.replaceChildren());

/** What stands among the doubts once a reading was typed and the workroom answered so. */
async function told(answer, typed) {
  globalThis.fetch = answer;
  const changed = new Promise((resolve) => { doubts.changed = resolve; });
  form.typed = typed;
  form.heard();
  await changed;
  return doubts;
}

test("a workroom that does not answer is told, and what it says later stands instead", async () => {
  assert.equal((await told(async () => { throw new TypeError("no way"); }, "chest=55")).textContent, SILENT);
  const answers = async () => ({ ok: true, status: 200, json: async () => FOUND });
  assert.equal((await told(answers, "chest=56")).textContent, "Chest. Measure again.");
});

test("an answer that is none is told", async () => {
  assert.equal((await told(async () => ({ ok: false, status: 500 }), "chest=57")).textContent, SILENT);
});

test("whose time is over is shown the door", async () => {
  const page = await told(async () => ({ ok: false, status: 401 }), "chest=58");
  assert.ok(page.textContent.startsWith(OVER));
  assert.ok(page.children[0].children.some((one) => one.href?.startsWith("/door?to=")));
});
