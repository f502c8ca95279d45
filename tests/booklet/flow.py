"""A shipped recipe drafted and traced for the tests of this folder."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements, Origin
from littlefold.check import Circumstances, check
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_text

if TYPE_CHECKING:
    from littlefold.body.tape import TapeMark
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe

STATURE = 1040.0


@lru_cache
def shipped(name: str, tape: TapeMark | None = None) -> tuple[Pattern, tuple[Problem, ...]]:
    """The pattern and the findings of a shipped recipe for a child of 104 cm with a chest of 56 cm."""
    return of_text(shipped_text(name) or "", tape)


def of_text(text: str, tape: TapeMark | None = None) -> tuple[Pattern, tuple[Problem, ...]]:
    """The pattern and the findings of a recipe's text."""
    given = Measurements.of({"stature": STATURE, "chest": 560.0}, origin=Origin.GIVEN, nickname="Runa")
    child, _ = complete(given)
    draft = evaluate(parse(text, "test"), child, tape=tape, shelf=_shelf)
    pattern = trace(draft)
    return pattern, (*draft.problems, *pattern.problems, *check(pattern, Circumstances()))


def _shelf(name: str) -> Recipe | None:
    text = shipped_text(name)
    return None if text is None else parse(text, name)
