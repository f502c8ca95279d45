"""A recipe is somebody else's text: whatever it asks for, an answer comes within seconds and in bounded words."""

from __future__ import annotations

import time

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.recipe.parse import parse

BASE = """title "X"
drawing s
point A at the fold
point B right of A by 20 cm
point C below B by 30 cm
point D below A by 30 cm
point E right of A by 5 cm
point F below E by 30 cm
line side from B to C
outline o edges A-D, D-C as hem, side, B-A as waist
"""
EDGES = "edges A-D fold, D-C hem, side seam, B-A seam\n"
CHILD, _ = complete(Measurements.of({"stature": 1040.0}))


def chain(line: str, count: int, first: str) -> str:
    """A line again and again, each taking what the one before has made."""
    return "".join(line.format(before=first if i == 0 else f"p{i - 1}", new=f"p{i}") for i in range(count))


GOALS = "".join(f"find x{i} between 1 cm and 9 cm so that length of l{i} = 5 cm\n" for i in range(6))
WIDE = "".join(f"point P{i} right of A by {i} mm\n" for i in range(1000))

# What is written below the base, and the code of a problem that says why it was not all drawn.
HOSTILE = {
    "a million pleats": (
        "pleats in o along E-F as p depth 1 mm count 1000000 apart 1 cm leftward",
        "fold-count",
    ),
    "more pleats than fit a number": (
        f"pleats in o along E-F as p depth 1 mm count {'9' * 300} leftward",
        None,
    ),
    "pleats in pleats": (
        chain("pleats in {before} along E-F as {new} depth 1 mm count 30 apart 2.1 mm leftward\n", 200, "o"),
        "too-much-to-draw",
    ),
    "gathers in gathers": (
        chain("gathers in {before} across waist as {new} by ratio 1.01\n", 1500, "o"),
        "too-much-to-draw",
    ),
    "a hundred thousand holes": (
        f"piece q from s cut 1\n{EDGES}" + "inside buttonholes 50 along A-B\n" * 2000,
        "too-much-inside",
    ),
    "sheets redrawn without end": (chain("redraw {before} as {new}\n", 3000, "s"), "too-much-to-draw"),
    "a wide sheet redrawn": (WIDE + chain("redraw {before} as {new}\n", 500, "s"), "too-much-to-draw"),
    "sheets laid on each other": (
        chain("drawing {new}\nlay {before}\nlay {before} as z\n", 25, "s"),
        "too-much-to-draw",
    ),
    "runs of runs": (
        "run p = side then B-A\n".replace("B-A", "side")
        + chain("run {new} = {before} then {before}\n", 40, "p"),
        "run-too-long",
    ),
    "searches within searches": (GOALS, "too-many-searches"),
    "hundreds of searches": (
        "".join(f"find x{i} between 1 cm and 9 cm so that length of A-Q = 1 m\n" for i in range(300)),
        "too-many-searches",
    ),
    "a curve through hundreds of points": (
        "curve c through " + ", ".join(["A", "B", "C", "D"] * 200) + "\npoint Z where c meets c",
        "too-many-points",
    ),
    "thousands of pieces": (
        "".join(f"piece q{i} from s cut 50\n{EDGES}" for i in range(1900)),
        "too-many-pieces",
    ),
    "thousands of names that are not there": (
        "".join(f"point P{i} below Q{i} by 1 mm\n" for i in range(3900)),
        "name-not-known",
    ),
    "a name of a page": (f"point P below {'z' * 3000} by 1 cm\n" * 60, "name-not-known"),
    "amounts that double": (
        "amount a0 = 1 cm\n" + "".join(f"amount a{i} = a{i - 1} + a{i - 1}\n" for i in range(1, 3900)),
        "number-out-of-bounds",
    ),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_an_answer_comes_within_seconds(name: str) -> None:
    text, code = HOSTILE[name]
    begun = time.process_time()
    draft = evaluate(parse(BASE + text, "theirs"), CHILD)
    assert time.process_time() - begun < 8  # the goal is two; the machine may be shared
    assert draft.problems
    assert code is None or code in {problem.code for problem in draft.problems}
    assert max(len(problem.message) for problem in draft.problems) < 3000
    assert {"s.A", "s.F"} <= set(draft.points)  # what can be drawn is drawn
    assert len(draft.points) < 20_000
