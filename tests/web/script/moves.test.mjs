import assert from "node:assert/strict";
import { test } from "node:test";

import { moved } from "../../../src/littlefold/web/static/moves.js";
import { held } from "../../../src/littlefold/web/static/tape.js";

const points = (all) => new Map(Object.entries(all).map(([name, [x, y]]) => [name, { x, y }]));

test("only what moved is told, with its way", () => {
  const ways = moved(points({ A: [0, 0], B: [10, 0], C: [5, 5] }), points({ A: [0, 0], B: [13, 4], D: [1, 1] }));
  assert.deepEqual(ways.map((way) => [way.name, way.by]), [["B", 5]]);
});

test("a hair's breadth is no movement", () => {
  assert.deepEqual(moved(points({ A: [0, 0] }), points({ A: [0.02, 0] })), []);
});

test("the tape takes hold of the nearest point within reach", () => {
  const all = points({ A: [0, 0], B: [10, 0] });
  assert.equal(held(all, { x: 8, y: 1 }, 5).name, "B");
  assert.deepEqual(held(all, { x: 8, y: 1 }, 5), { x: 10, y: 0, name: "B" });
  assert.deepEqual(held(all, { x: 5, y: 40 }, 5), { x: 5, y: 40, name: "" });
});
