"""Fuzzed recipe texts: read, looked through, laid out, and every tenth drafted; no traceback, no hang."""

from __future__ import annotations

import sys
import time

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace
from littlefold.pipeline import on_the_shelf
from tests.recipe.fuzz import texts
from tests.recipe.test_fuzz import LONGEST, handled

DRAFTED = 10


def report(count: int, seed: int = 2) -> None:
    """Prints how many texts were read and how long the slowest took."""
    body, _ = complete(Measurements.of({"stature": 1040.0}))
    slowest, read, started = 0.0, 0, time.process_time()
    for number, text in enumerate(texts(count, seed)):
        begun = time.process_time()
        recipe = handled(text)
        if number % DRAFTED == 0:
            trace(evaluate(recipe, body, {}, shelf=on_the_shelf))
        slowest = max(slowest, time.process_time() - begun)
        read += bool(recipe.written)
        if number % 10_000 == 9_999:
            print(f"  {number + 1} texts", file=sys.stderr, flush=True)
    if slowest > LONGEST:
        raise SystemExit(f"A text took {slowest:.1f} s; at most {LONGEST:g} s may pass.")
    whole = time.process_time() - started
    print(
        f"\nfuzz: {count} texts, {read} with lines that can be read, {count // DRAFTED} drafted: no exception"
    )
    print(f"slowest {slowest:.2f} s of the processor, {1000 * whole / count:.2f} ms a text")


if __name__ == "__main__":
    report(int(sys.argv[1]) if len(sys.argv) > 1 else 100_000)
