"""(r) From a move of a slider to the painted drawing, in Chromium, for every shipped recipe."""

from __future__ import annotations

import statistics
from pathlib import Path
from typing import TYPE_CHECKING

from bench.served import part, served
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from playwright.sync_api import Page

CHROMIUM = Path("/usr/bin/chromium")
GOAL, GOAL_95 = 33.0, 60.0
MOVES = 60
REST = 40
"""Between two moves [ms]."""

MOVE = """async ([moves, rest]) => {
  const drawing = document.querySelector("draft-drawing");
  const slider = document.querySelector(".tape .along") ?? document.querySelector(".slip .along");
  if (!slider) return [];
  const times = [];
  const step = (Number(slider.max) - Number(slider.min)) / (3 * moves);
  const start = Number(slider.value);
  slider.step = "any";
  const painted = () => new Promise((done) => requestAnimationFrame(() => {
    const after = new MessageChannel();
    after.port1.onmessage = done;
    after.port2.postMessage(0);
  }));
  for (let k = 1; k <= moves; k++) {
    await new Promise((done) => setTimeout(done, rest));
    const drawn = new Promise((done) => drawing.addEventListener("drawn", done, { once: true }));
    const from = performance.now();
    slider.value = start + k * step;
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    await drawn;
    await painted();
    times.push(performance.now() - from);
  }
  return times;
}"""


def times_of(page: Page, address: str, recipe: str, moves: int) -> list[float]:
    """How long each move of the first slider took until it was painted [ms]; none where nothing slides."""
    page.goto(f"{address}/table/{recipe}")
    page.locator(".with-script").wait_for(state="attached")
    page.wait_for_timeout(800)
    found: list[float] = page.evaluate(MOVE, [moves, REST])
    return found


def report(moves: int = MOVES) -> None:
    """Prints median and 95 % of every recipe."""
    if not CHROMIUM.exists():
        print("\n(r) not measured: there is no Chromium")
        return
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where there is a browser

    print(f"\n(r) from a slider's move to the painted drawing; goal {GOAL:g} ms, 95 % within {GOAL_95:g} ms")
    with served() as room, sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=str(CHROMIUM), args=["--no-sandbox", "--disable-gpu", "--disable-quic"]
        )
        page = browser.new_page(viewport={"width": 1280, "height": 800})
        for recipe in shipped_names():
            found = times_of(page, room.address, recipe, moves)
            if not found:
                print(f"{recipe:16} nothing slides")
                continue
            middle, most = statistics.median(found), part(found, 0.95)
            verdict = (
                "" if round(middle) <= GOAL and most <= GOAL_95 else "  missed"
            )  # two frames are 33.3 ms
            print(f"{recipe:16} median {middle:5.0f} ms   95 % {most:5.0f} ms{verdict}")
        browser.close()


if __name__ == "__main__":
    report()
