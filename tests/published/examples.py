"""What the tests of published examples share: drafting a text, and numbers in the unit of their source."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.pipeline import on_the_shelf
from littlefold.recipe.parse import parse

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

INCH = 25.4


def drafted(text: str, measures: dict[str, float] | None = None, **choices: float | str) -> Draft:
    """The draft of a recipe text; measures in cm."""
    body = Measurements.of({name: value * 10 for name, value in (measures or {}).items()})
    whole, _ = complete(body if body.readings else Measurements.of({"stature": 1040.0}))
    return evaluate(parse(text), whole, choices, shelf=on_the_shelf)


def shipped(name: str, stature: float = 900.0, **choices: float | str) -> Draft:
    recipe = on_the_shelf(name)
    assert recipe is not None
    body, _ = complete(Measurements.of({"stature": stature}))
    return evaluate(recipe, body, choices, shelf=on_the_shelf)


def amount(draft: Draft, name: str) -> float:
    """An amount in mm."""
    value = next(one.value for one in draft.amounts if one.name == name)
    assert isinstance(value, float)
    return value


def inches(draft: Draft, name: str) -> float:
    return amount(draft, name) / INCH


def centimetres(draft: Draft, name: str) -> float:
    return amount(draft, name) / 10


def place(draft: Draft, name: str) -> tuple[float, float]:
    point = draft.points[name].at
    return (point.x / INCH, point.y / INCH)


def codes(draft: Draft) -> list[str]:
    return [problem.code for problem in draft.problems]
