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
    """Prints the median time of making the pages, the pattern being there."""
    recipe = on_the_shelf("trousers")
    outcome = fulfil(Wish(recipe, Measurements.of({"stature": 1040.0}), Circumstances()))
    made = bundle(outcome.pattern, outcome.problems, Speech(), read_paper("a4"), DAY)
    sheet = next(sheet for sheet in made if sheet.name == "pages.pdf")
    sheet.make()
    waited, worked = [], []
    for _ in range(ROUNDS):
        started, busy = time.perf_counter(), time.process_time()
        size = len(sheet.make())
        waited.append(1000 * (time.perf_counter() - started))
        worked.append(1000 * (time.process_time() - busy))
    middle = statistics.median(worked)
    print(f"\n(c) joined A4 pages of trousers, two pieces; goal {GOAL:g} ms")
    print(
        f"median {middle:.0f} ms of the processor, {size / 1000:.0f} kB: {middle / GOAL:.2f} times the goal"
    )
    print(f"(waited for {statistics.median(waited):.0f} ms, other work on the machine counted in)")


if __name__ == "__main__":
    report()
