import assert from "node:assert/strict";
import { test } from "node:test";

import { fit, placeAt, pushed, seenAt, viewBox, zoomed } from "../../../src/littlefold/web/static/view.js";

const ROOM = { width: 800, height: 600 };
const BARE = { left: 200, right: 100, top: 10, bottom: 20 };
const BOX = { x: -20, y: -400, width: 250, height: 430 };
const near = (one, other) => assert.ok(Math.abs(one - other) < 1e-6, `${one} is not ${other}`);

test("the whole drawing lies within the edges that stay bare", () => {
  const view = fit(BOX, ROOM, BARE);
  const from = seenAt(view, ROOM, BOX.x, BOX.y);
  const to = seenAt(view, ROOM, BOX.x + BOX.width, BOX.y + BOX.height);
  assert.ok(from.x >= 200 - 1e-6 && to.x <= 700 + 1e-6);
  assert.ok(from.y >= 10 - 1e-6 && to.y <= 580 + 1e-6);
  near(to.y - from.y, 570); // it fills the height that there is
});

test("a place and where it is seen lead to each other", () => {
  const view = { x: 12, y: -7, perPixel: 0.3 };
  const seen = seenAt(view, ROOM, 33, 44);
  const place = placeAt(view, ROOM, seen.x, seen.y);
  near(place.x, 33);
  near(place.y, 44);
});

test("what is under the pointer stays there when the paper comes nearer", () => {
  const view = fit(BOX, ROOM, BARE);
  const pointer = { x: 123, y: 456 };
  const before = placeAt(view, ROOM, pointer.x, pointer.y);
  for (const factor of [0.5, 0.9, 1.7]) {
    const after = placeAt(zoomed(view, factor, pointer, ROOM), ROOM, pointer.x, pointer.y);
    near(after.x, before.x);
    near(after.y, before.y);
  }
});

test("the paper follows the hand", () => {
  const view = fit(BOX, ROOM, BARE);
  const before = seenAt(view, ROOM, 0, 0);
  const after = seenAt(pushed(view, 30, -12), ROOM, 0, 0);
  near(after.x - before.x, 30);
  near(after.y - before.y, -12);
});

test("nothing is so near or so far that it is lost", () => {
  let view = fit(BOX, ROOM, BARE);
  for (let k = 0; k < 200; k++) view = zoomed(view, 0.5, { x: 0, y: 0 }, ROOM);
  assert.ok(view.perPixel >= 0.02);
  for (let k = 0; k < 400; k++) view = zoomed(view, 2, { x: 0, y: 0 }, ROOM);
  assert.ok(view.perPixel <= 20);
});

test("the view box has the shape of the room", () => {
  const [, , width, height] = viewBox(fit(BOX, ROOM, BARE), ROOM);
  near(width / height, 800 / 600);
});
