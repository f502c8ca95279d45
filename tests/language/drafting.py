"""What the tests of the language share: drafting a text, and asking what came of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.body.register import NAMES
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech, full_sentence
from littlefold.pipeline import on_the_shelf
from littlefold.recipe.analyse import analyse
from littlefold.recipe.parse import parse

if TYPE_CHECKING:
    from littlefold.body.tape import TapeMark
    from littlefold.draft.model import Draft
    from littlefold.problem import Problem

HEAD = """recipe audit
title "Audit"
suits stature 98 cm to 110 cm
source "own trial"
"""
FRAME = f"""{HEAD}drawing s
point A at the fold
point B right of A by 12 cm
point C below A by 9 cm
point D below B by 9 cm
line top from A to B
"""
"""A rectangle of 12 by 9 cm: its diagonal is 15 cm."""


def draft_of(text: str, tape: TapeMark | None = None, **measures_cm: float) -> Draft:
    """The draft of a text for a child of 104 cm, some of its measurements given in cm."""
    given = {"stature": 1040.0} | {name: value * 10 for name, value in measures_cm.items()}
    child, _ = complete(Measurements.of(given))
    return evaluate(parse(text, "audit"), child, tape=tape, shelf=on_the_shelf)


def told(text: str) -> list[Problem]:
    """All that is told of a text, by reading, by analysis and by drafting, each once."""
    found = (*analyse(parse(text, "audit"), NAMES), *draft_of(text).problems)
    return list(dict.fromkeys(found))


def only(text: str) -> Problem:
    """The one thing that is told of a text."""
    (problem,) = told(text)
    return problem


def at(draft: Draft, name: str) -> tuple[float, float]:
    """Where a point lies [cm], rounded to a thousandth of a millimetre."""
    place = draft.points[name].at
    return (round(place.x / 10, 4) + 0.0, round(place.y / 10, 4) + 0.0)


def amount(draft: Draft, name: str) -> float:
    """An amount: a length in cm, or a number."""
    one = next(one for one in draft.amounts if one.name == name)
    assert isinstance(one.value, float)
    return one.value / 10 if one.unit == "mm" else one.value


def said(draft: Draft, name: str) -> str:
    """The sentence of the step that makes something."""
    step = next(step for step in draft.steps if step.name == name)
    return full_sentence(step, draft, Speech())
