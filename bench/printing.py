"""(c) The joined-page PDF of a garment of two pieces."""

from __future__ import annotations

import statistics
import time
from datetime import date

from littlefold.body.measurements import Measurements
from littlefold.booklet.bundle import bundle
from littlefold.check import Circumstances
from littlefold.draft.sentence import Speech
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.sheet.paper import read_paper

GOAL, ROUNDS = 150.0, 7
DAY = date(2026, 1, 1)


def report() -> None:
    """Prints the median wall time of making the pages, the pattern being there."""
    recipe = on_the_shelf("trousers")
    outcome = fulfil(Wish(recipe, Measurements.of({"stature": 1040.0}), Circumstances()))
    made = bundle(outcome.pattern, outcome.problems, Speech(), read_paper("a4"), DAY)
    sheet = next(sheet for sheet in made if sheet.name == "pages.pdf")
    sheet.make()
    found = []
    for _ in range(ROUNDS):
        started = time.perf_counter()
        size = len(sheet.make())
        found.append(1000 * (time.perf_counter() - started))
    middle = statistics.median(found)
    print(f"\n(c) joined A4 pages of trousers, two pieces; goal {GOAL:g} ms")
    print(f"median {middle:.0f} ms, {size / 1000:.0f} kB: {middle / GOAL:.2f} times the goal")


if __name__ == "__main__":
    report()
