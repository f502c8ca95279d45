import assert from "node:assert/strict";
import { test } from "node:test";

import { APART_NUMBERS, freest, pinned } from "../../../src/littlefold/web/static/pins.js";

const ROOM = { width: 1250, height: 550, taken: { left: 90, right: 60 } };
const DRAWN = { left: 450, right: 800, top: 10, bottom: 540 };
const slip = (name, x, y, height = 100) => ({ name, width: 260, height, at: x === null ? null : { x, y } });

function overlaps(slips, places) {
  const boxes = slips.map((one) => ({ ...places.get(one.name), w: one.width, h: one.height }));
  return boxes.some((one, k) =>
    boxes.slice(k + 1).some((other) => one.x < other.x + other.w && other.x < one.x + one.w && one.y < other.y + other.h && other.y < one.y + one.h),
  );
}

test("a slip hangs beside the drawing, on the side and at the height of its place", () => {
  const places = pinned([slip("ease", 780, 200), slip("neck", 460, 300)], DRAWN, ROOM);
  assert.ok(places.get("ease").x > 800);
  assert.equal(places.get("ease").y, 150);
  assert.ok(places.get("neck").x + 260 < 450);
  assert.equal(places.get("neck").y, 250);
});

test("slips never lie on each other while there is room", () => {
  for (const count of [1, 2, 3, 4, 5, 6, 7]) {
    const slips = Array.from({ length: count }, (_, k) => slip(`s${k}`, 790, 530));
    const places = pinned(slips, DRAWN, ROOM);
    assert.equal(places.size, count);
    assert.ok(!overlaps(slips, places), `${count} slips`);
    for (const one of slips) assert.ok(places.get(one.name).y >= 0);
  }
});

test("a slip without a place goes where room is", () => {
  const slips = [slip("a", 790, 100), slip("b", 790, 300), slip("c", null)];
  assert.ok(pinned(slips, DRAWN, ROOM).get("c").x < 450);
});

test("the corner that the findings take stays free", () => {
  const places = pinned([slip("hem", 790, 545)], DRAWN, ROOM);
  assert.ok(places.get("hem").y + 100 <= 550 - 60);
});

test("slips that act on nothing here hang in one column where they find room", () => {
  const two = pinned([slip("closing", null), slip("legs", null)], DRAWN, ROOM);
  for (const name of ["closing", "legs"]) assert.ok(two.get(name).x + 260 < 450, name);
  const many = Array.from({ length: 6 }, (_, k) => slip(`s${k}`, null));
  assert.ok([...pinned(many, DRAWN, ROOM).values()].some((place) => place.x > 800));
});

test("a number is pinned off the letters and the numbers that are there, and within the paper", () => {
  const room = { width: 360, height: 400 };
  for (const [place, numbers] of [[{ x: 180, y: 200 }, 3], [{ x: 358, y: 2 }, 1], [{ x: 0, y: 400 }, 1]]) {
    const taken = [{ ...place, clear: 17 }, { x: place.x + 14, y: place.y - 14, clear: 24 }];
    for (let k = 0; k < numbers; k++) {
      const at = freest(place, taken, room);
      for (const one of taken) assert.ok(Math.hypot(one.x - at.x, one.y - at.y) >= one.clear - 1e-9, JSON.stringify({ place, k, at }));
      assert.ok(at.x >= 14 && at.x <= 346 && at.y >= 14 && at.y <= 386);
      taken.push({ ...at, clear: APART_NUMBERS });
    }
  }
});
