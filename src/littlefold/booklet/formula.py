"""Formulas with the child's numbers put in: `chest / 4 + 1/2 in = 53.5 cm / 4 + 1.27 cm = 14.65 cm`.

Where the numbers stand, a length that the recipe has in inches or in centimetres is said in the maker's units: there
is one ruler on the table.
"""

from __future__ import annotations

import re
from dataclasses import replace
from math import degrees
from typing import TYPE_CHECKING

from littlefold.body.tape import read_length

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import Amount, Draft, Step
    from littlefold.draft.sentence import Speech

# A letter of a name in any script, or a sign that stands on one; a formula has nothing else beyond Latin.
_LETTER = r"(?:\w|[^\x00-\u02ff\s])"
_NAME = re.compile(rf"(?!\d){_LETTER}(?:\.?{_LETTER})*")
_OWNED = re.compile(r"\.(?=[^\W\d])")  # the dot of front.neckline, not that of 0.5
_LENGTH = r"(?<![\w./])(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)\s*"
# Lengths that are not on the maker's ruler, by the units of the maker.
_FOREIGN = {"cm": re.compile(_LENGTH + r"in\b"), "in": re.compile(_LENGTH + r"(?:mm|cm|m)\b")}
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
    formula = worked_out(step.formula, values, exactly.length(step.exact), exactly)
    if abs(step.value - step.exact) <= MOVED:
        return formula
    return on_tape.format(formula=formula, length=speech.length(step.value))


_UNITS = {"length": "mm", "angle": "radians", "number": "ratio", "name": "", "word": ""}


def amount_formula(amount: Amount, draft: Draft, speech: Speech) -> str:
    """The formula of an amount with numbers put in, without its result; empty where it was given.

    The formula of a search is its goal, both sides of it: `length of cap = length of armhole + 1 cm`.
    """
    if not amount.formula:
        return ""
    exactly = replace(speech, mark=None)
    values = {other.name: said_value(other.value, other.unit, exactly) for other in draft.amounts}
    sheet, _, _ = amount.name.rpartition(".")
    for name, line in draft.lines.items():
        said = exactly.length(line.path.length())
        values |= {f"length of {name}": said, f"length of {name.removeprefix(sheet + '.')}": said}
    return EQUALS.join(_steps_of(amount.formula, values, exactly))


def worked_out(formula: str, values: Mapping[str, str], result: str, speech: Speech) -> str:
    """A formula, the same with its names replaced, and the result; what is said twice is said once."""
    return EQUALS.join(dict.fromkeys((*_steps_of(formula, values, speech), result)))


def _steps_of(formula: str, values: Mapping[str, str], speech: Speech) -> tuple[str, ...]:
    ours = _FOREIGN[speech.units].sub(lambda found: _in_our_units(found[0], speech), formula)
    whole = re.sub(
        rf"length of {_NAME.pattern}(?:-{_NAME.pattern})*", lambda found: values.get(found[0], found[0]), ours
    )
    filled = _NAME.sub(lambda found: values.get(found[0], found[0]), whole)
    return tuple(dict.fromkeys((*spoken(formula).split(EQUALS), *spoken(filled).split(EQUALS))))


def _in_our_units(length: str, speech: Speech) -> str:
    mm = read_length(length)
    return speech.length(mm) if isinstance(mm, float) else length


def spoken(formula: str) -> str:
    """A formula as it is read aloud: names without dots and underscores, proper signs for times and less."""
    return _OWNED.sub(" ", formula).replace("_", " ").replace(" * ", " \u00d7 ").replace(" - ", " \u2212 ")


def said_value(value: float | str, unit: str, speech: Speech) -> str:
    """A named value in words: a length, an angle, a number or an option."""
    if isinstance(value, str):
        return value.replace("_", " ")
    if unit == "mm":
        return speech.length(value)
    if unit == "radians":
        return speech.spelled(f"{degrees(value):.4g}°")
    return speech.spelled(f"{value:.4g}")
