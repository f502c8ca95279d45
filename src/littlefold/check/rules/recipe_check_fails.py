"""What the recipe itself asks for holds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, own_words
from littlefold.draft.quantity import UNIT_NAMES
from littlefold.draft.spoken import compared, spoken
from littlefold.problem import Measured, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import Comparison
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "recipe-check-fails"


@rule(
    code=CODE,
    title="The recipe's own checks hold",
    why="Whoever wrote the recipe knew where it goes wrong, and gave the reason.",
    source="the recipe's own line",
)
def recipe_check_fails(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Check lines of the recipe that do not hold for this child; silent where the draft has reported them."""
    if any(problem.code == CODE for problem in pattern.draft.problems):
        return
    for comparison in pattern.draft.comparisons:
        if not comparison.passes:
            yield _problem(comparison)


def _problem(said: Comparison) -> Problem:
    left, right = _spoken(said.left, said.unit), _spoken(said.right, said.unit)
    return found(
        CODE,
        say(
            "The recipe asks that {left_text} {sign} {right_text}; here {left} stands against {right}.",
            left_text=said.left_text,
            sign=said.sign,
            right_text=said.right_text,
            left=left,
            right=right,
        ),
        own_words(said.reason),
        place=said.place,
        numbers=(
            compared(said.left_text, said.left, _DIMENSIONS[said.unit]),
            compared(said.right_text, said.right, _DIMENSIONS[said.unit]),
        ),
        severity=Severity(said.severity),
    )


def _spoken(value: float, unit: str) -> Measured | str:
    return cm(value) if unit == "mm" else spoken(value, _DIMENSIONS[unit])


_DIMENSIONS = {unit: dimension for dimension, unit in UNIT_NAMES.items()}
