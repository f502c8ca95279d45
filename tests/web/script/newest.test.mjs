import assert from "node:assert/strict";
import { test } from "node:test";

import { newest, whenCalm } from "../../../src/littlefold/web/static/newest.js";

const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

test("of sixty wishes the first and the last are fulfilled, the last at the end", async () => {
  const done = [];
  const ask = newest(async (wish) => {
    await sleep(20);
    done.push(wish);
  });
  let last;
  for (let wish = 1; wish <= 60; wish++) last = ask(wish);
  await last;
  assert.deepEqual(done, [1, 60]);
});

test("never are two worked on at once", async () => {
  let busy = 0;
  let most = 0;
  const ask = newest(async () => {
    most = Math.max(most, ++busy);
    await sleep(3);
    busy--;
  });
  for (let wish = 0; wish < 20; wish++) {
    ask(wish);
    await sleep(1);
  }
  await ask(20);
  assert.equal(most, 1);
});

test("a wish after all was quiet is fulfilled too", async () => {
  const done = [];
  const ask = newest(async (wish) => done.push(wish));
  await ask("one");
  await ask("two");
  assert.deepEqual(done, ["one", "two"]);
});

test("work that goes wrong stops nothing that is wished for later", async () => {
  const done = [];
  const ask = newest(async (wish) => {
    if (wish === "bad") throw new Error("broken");
    done.push(wish);
  });
  await assert.rejects(ask("bad"), /broken/);
  await ask("good");
  assert.deepEqual(done, ["good"]);
});

test("what waits for calm is done once, with the last words", async () => {
  const done = [];
  const later = whenCalm((word) => done.push(word), 15);
  for (const word of ["a", "b", "c"]) {
    later(word);
    await sleep(4);
  }
  await sleep(40);
  assert.deepEqual(done, ["c"]);
});
