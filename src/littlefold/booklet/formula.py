"""Formulas with the child's numbers put in: `chest / 4 + 1/2 in = 53.5 cm / 4 + 1/2 in = 14.6 cm`."""

from __future__ import annotations

import re
from dataclasses import replace
from math import degrees
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import Amount, Draft, Step
    from littlefold.draft.sentence import Speech

# A letter of a name in any script, or a sign that stands on one; a formula has nothing else beyond Latin.
_LETTER = r"(?:\w|[^\x00-\u02ff\s])"
_NAME = re.compile(rf"(?!\d){_LETTER}(?:\.?{_LETTER})*")
# Between formula and result; a formula that is a length itself needs neither.
EQUALS = " = "
# A distance that the tape moved by more than this is said twice [mm].
MOVED = 0.05


def step_formula(step: Step, speech: Speech, on_tape: str) -> str:
    """The formula of a step worked out; empty where the step measures nothing or the distance is a plain length.

    Args:
        step: The step.
        speech: How lengths are said.
        on_tape: What is said where the tape rounds: a sentence with {formula} and {length}.
    """
    if step.value is None or step.exact is None or not step.terms:
        return ""
    exactly = replace(speech, mark=None)
    values = {name: said_value(said.value, _UNITS[said.sort], exactly) for name, said in step.terms}
    formula = worked_out(step.formula, values, exactly.length(step.exact))
    if abs(step.value - step.exact) <= MOVED:
        return formula
    return on_tape.format(formula=formula, length=speech.length(step.value))


_UNITS = {"length": "mm", "angle": "radians", "number": "ratio", "name": "", "word": ""}


def amount_formula(amount: Amount, draft: Draft, speech: Speech) -> str:
    """The formula of an amount with numbers put in, without its result; empty where it was given."""
    exactly = replace(speech, mark=None)
    values = {other.name: said_value(other.value, other.unit, exactly) for other in draft.amounts}
    values |= {f"length of {name}": exactly.length(line.path.length()) for name, line in draft.lines.items()}
    return EQUALS.join(_steps_of(amount.formula, values)) if amount.formula else ""


def worked_out(formula: str, values: Mapping[str, str], result: str) -> str:
    """A formula, the same with its names replaced, and the result; what is said twice is said once."""
    return EQUALS.join(dict.fromkeys((*_steps_of(formula, values), result)))


def _steps_of(formula: str, values: Mapping[str, str]) -> tuple[str, ...]:
    whole = re.sub(rf"length of {_NAME.pattern}", lambda found: values.get(found[0], found[0]), formula)
    filled = _NAME.sub(lambda found: values.get(found[0], found[0]), whole)
    return tuple(dict.fromkeys((spoken(formula), spoken(filled))))


def spoken(formula: str) -> str:
    """A formula as it is read aloud: names without underscores, proper signs for times and less."""
    return formula.replace("_", " ").replace(" * ", " \u00d7 ").replace(" - ", " \u2212 ")


def said_value(value: float | str, unit: str, speech: Speech) -> str:
    """A named value in words: a length, an angle, a number or an option."""
    if isinstance(value, str):
        return value.replace("_", " ")
    if unit == "mm":
        return speech.length(value)
    if unit == "radians":
        return speech.spelled(f"{degrees(value):.4g}°")
    return speech.spelled(f"{value:.4g}")
