"""(a) From a recipe's text to a checked pattern: median per garment, and the share of each stage.

Times are those of the processor, so that other work on the machine does not count.  A parse is cold when its text is
read for the first time; on the table of a maker it is remembered, since a slider moves but the text stays.
"""

from __future__ import annotations

import statistics
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.body.register import REGISTER
from littlefold.check import Circumstances, check
from littlefold.draft.evaluate import evaluate
from littlefold.draft.suits import stature_range
from littlefold.pattern.trace import trace
from littlefold.pipeline import on_the_shelf
from littlefold.recipe.analyse import analyse
from littlefold.recipe.parse import parse, read_statement
from littlefold.recipe.shelf import shipped_names, shipped_text

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")

ROUNDS = 9
GOAL = 5.0
STAGES = ("complete", "evaluate", "trace", "check")


@dataclass(frozen=True)
class Row:
    """Milliseconds of one garment."""

    name: str
    cold_parse: float
    analyse: float
    stages: dict[str, float]

    @property
    def per_garment(self) -> float:
        """What every further garment of the recipe costs: all but reading the text."""
        return sum(self.stages.values())


def timed(do: Callable[[], T]) -> tuple[float, T]:
    """Milliseconds of the processor, and what came of it."""
    started = time.process_time()
    value = do()
    return 1000 * (time.process_time() - started), value


def once(name: str, stature: float) -> Row:
    """One garment, for a child that has not been drafted for before."""
    recipe = on_the_shelf(name)
    child = Measurements.of({"stature": stature})
    filling, (body, _) = timed(lambda: complete(child))
    drawing, draft = timed(lambda: evaluate(recipe, body, {}, shelf=on_the_shelf))
    tracing, pattern = timed(lambda: trace(draft))
    checking, _ = timed(lambda: check(pattern, Circumstances()))
    stages = dict(zip(STAGES, (filling, drawing, tracing, checking), strict=True))
    return Row(name, 0.0, 0.0, stages)


def cold_parse(name: str) -> tuple[float, float]:
    """Reading a text for the first time, and looking it through for slips."""
    text = shipped_text(name) or ""
    read_statement.cache_clear()
    reading, recipe = timed(lambda: parse(text, name))
    return reading, timed(lambda: analyse(recipe, tuple(REGISTER)))[0]


def median_row(name: str) -> Row:
    """The median of several children, each a little taller than the one before; the first warms up."""
    low, high = stature_range(on_the_shelf(name))
    once(name, (low + high) / 2)
    rows = [once(name, low + (high - low) * (k + 0.5) / ROUNDS) for k in range(ROUNDS)]
    cold = [cold_parse(name) for _ in range(3)]
    stages = {stage: statistics.median(row.stages[stage] for row in rows) for stage in STAGES}
    return Row(name, statistics.median(c[0] for c in cold), statistics.median(c[1] for c in cold), stages)


def report() -> list[Row]:
    """Prints the table and returns it."""
    print(
        f"\n(a) recipe to checked pattern, ms of the processor, median of {ROUNDS}; goal {GOAL:g} ms per garment"
    )
    print("| recipe | " + " | ".join(STAGES) + " | per garment | reading the text once | slips once |")
    print("|---" * (len(STAGES) + 4) + "|")
    rows = [median_row(name) for name in shipped_names()]
    for row in rows:
        cells = [f"{row.stages[s]:.1f} ({row.stages[s] / row.per_garment:.0%})" for s in STAGES]
        whole = [f"**{row.per_garment:.1f}**", f"{row.cold_parse:.1f}", f"{row.analyse:.1f}"]
        print(f"| `{row.name}` | " + " | ".join(cells + whole) + " |", flush=True)
    middle = statistics.median(row.per_garment for row in rows)
    print(f"median of all garments {middle:.1f} ms: {middle / GOAL:.1f} times the goal")
    return rows


if __name__ == "__main__":
    report()
