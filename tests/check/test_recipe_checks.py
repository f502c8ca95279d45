"""A check line of the recipe's own speaks of what it compares in its own units."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.pipeline import Wish, fulfil
from littlefold.recipe.parse import parse


@pytest.mark.parametrize(
    ("line", "words", "numbers"),
    [
        (
            "check 20 degrees <= 15 degrees",
            "here 20 degrees stands against 15 degrees",
            [(20, "degrees"), (15, "degrees")],
        ),
        (
            "check 1 y >= 18 months",
            "here 12 months stands against 18 months",
            [(12, "months"), (18, "months")],
        ),
        ("check chest / waist < 1", "here 1.1 stands against 1", [(1.1, "ratio"), (1, "ratio")]),
        ("check chest <= 50 cm", "here 55 cm stands against 50 cm", [(550, "mm"), (500, "mm")]),
    ],
)
def test_units_of_a_check(line: str, words: str, numbers: list[tuple[float, str]]) -> None:
    body = Measurements.of({"chest": 550.0, "waist": 500.0})
    problems = fulfil(Wish(parse(f"measure chest, waist\n{line}"), body, Circumstances())).problems
    (problem,) = [one for one in problems if one.code == "recipe-check-fails"]
    assert words in problem.message
    assert [(number.value, number.unit) for number in problem.numbers] == [
        (pytest.approx(value), unit) for value, unit in numbers
    ]
