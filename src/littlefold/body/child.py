"""A child's file: `{"name", "born", "sex", "measurements": {"chest": "56 cm"}}`, read at the door."""

from __future__ import annotations

import difflib
import json
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING, Final, Literal

from pydantic import BaseModel, ConfigDict, Field, JsonValue, ValidationError

from littlefold.body.measurements import Measurements, Reading
from littlefold.body.register import NAMES
from littlefold.body.stature import DAYS_IN_MONTH
from littlefold.body.tape import read_length
from littlefold.problem import Place, Problem

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

_NEAR: Final = 0.5  # likeness from which a name is suggested
_SHUFFLED: Final = 0.1
_LONGEST_SHOWN: Final = 40  # characters of a wrong name that a message repeats


class _ChildFile(BaseModel):
    """The shape of the file; what else stands in it is refused by name."""

    model_config = ConfigDict(extra="forbid", strict=True)

    name: str = Field(default="", max_length=200)
    born: str | None = None
    sex: Literal["girl", "boy"] | None = None
    measurements: dict[str, JsonValue] = Field(default_factory=dict, max_length=200)


def child_from_json(
    text: str, today: date, own: Collection[str] = ()
) -> tuple[Measurements | None, tuple[Problem, ...]]:
    """The child that a file describes, and everything in it that is not understood.

    No child comes back when the file as a whole cannot be read; a bad reading is left out and reported.

    Args:
        text: The file's content.
        today: The day of measuring, from which the age is counted.
        own: The names of the recipe's own measurements, which may stand in it too.
    """
    try:
        entries = json.loads(text)
    except (json.JSONDecodeError, RecursionError) as fault:
        return None, (_not_json(fault),)
    try:
        file = _ChildFile.model_validate(entries)
    except ValidationError as fault:
        return None, tuple(_misshapen(error) for error in fault.errors())
    return _child(file, today, own)


def age_in_months(born: date, day: date) -> float:
    """The age on that day in WHO's months of 30.4375 days."""
    return (day - born).days / DAYS_IN_MONTH


def read_reading(name: str, text: str, own: Collection[str] = ()) -> Reading | Problem:
    """One tape reading as it was written beside its name, which is in the register or among a recipe's own."""
    if name not in NAMES and name not in own:
        return unknown_measurement(name)
    mm = read_length(text)
    if isinstance(mm, Problem):
        return replace(mm, message=f"{name}: {mm.message}")
    if mm <= 0:
        return Problem("measurement-zero", f"{name} is {text}. A measurement is more than nothing.")
    return Reading(mm)


def unknown_measurement(name: str) -> Problem:
    """The problem of a name that the register does not hold, with the nearest one."""
    written = name.lower().replace(" ", "_").replace("-", "_")
    near = max(NAMES, key=lambda known: _likeness(written, known))
    is_near = _likeness(written, near) >= _NEAR
    guess = f"Did you mean “{near}”?" if is_near else f"The names are: {', '.join(NAMES)}."
    return Problem("measurement-unknown", f"There is no measurement “{name[:_LONGEST_SHOWN]}”. {guess}")


def _likeness(written: str, known: str) -> float:
    """From 0 to 1; letters that only changed places count for more than other letters."""
    shuffled = sorted(written) == sorted(known)
    return difflib.SequenceMatcher(None, written, known).ratio() + (_SHUFFLED if shuffled else 0.0)


def _child(file: _ChildFile, today: date, own: Collection[str]) -> tuple[Measurements, tuple[Problem, ...]]:
    age, problems = _age(file.born, today)
    readings = {name: _reading(name, value, own) for name, value in file.measurements.items()}
    kept = tuple((name, found) for name, found in readings.items() if isinstance(found, Reading))
    refused = tuple(found for found in readings.values() if isinstance(found, Problem))
    return Measurements(kept, age, file.sex, file.name), (*problems, *refused)


def _reading(name: str, value: JsonValue, own: Collection[str]) -> Reading | Problem:
    if isinstance(value, str):
        return read_reading(name, value, own)
    if isinstance(value, int | float) and not isinstance(value, bool):
        return read_reading(name, f"{value:g}", own)
    return Problem("measurement-misshapen", f'{name} is {json.dumps(value)}. Write a length like "56 cm".')


def _age(born: str | None, today: date) -> tuple[float | None, tuple[Problem, ...]]:
    if born is None:
        return None, ()
    try:
        age = age_in_months(date.fromisoformat(born), today)
    except ValueError:
        return None, (Problem("birth-date-unreadable", f"“{born}” is not a date. Write it like 2024-03-31."),)
    if age < 0:
        return None, (
            Problem("birth-date-ahead", f"Born {born} is after {today.isoformat()}. Look at the year."),
        )
    return age, ()


def _not_json(fault: json.JSONDecodeError | RecursionError) -> Problem:
    if isinstance(fault, RecursionError):
        return Problem("child-file-unreadable", "The child's file is nested too deeply to be one.")
    return Problem(
        "child-file-unreadable",
        f"The child's file is not JSON: line {fault.lineno}, column {fault.colno}: {fault.msg.lower()}. Look at the comma, "
        "quote or bracket there.",
        place=Place(line=fault.lineno, column=fault.colno),
    )


def _misshapen(error: Mapping[str, object]) -> Problem:
    where = ".".join(str(step) for step in error["loc"]) or "the file"  # type: ignore[attr-defined]
    if where == "the file":
        words = (
            "The child's file holds something else than a card. "
            'Write one like {"name": "Mina", "measurements": {"chest": "56 cm"}}.'
        )
        return Problem("child-file-misshapen", words)
    if error["type"] == "extra_forbidden":
        known = ", ".join(_ChildFile.model_fields)
        return Problem("child-file-misshapen", f"A child's file has no “{where}”. It has: {known}.")
    if where == "sex":
        return Problem(
            "child-file-misshapen", f'sex is {error["input"]!r}. Write "girl" or "boy", or leave it out.'
        )
    return Problem("child-file-misshapen", f"{where}: {_plain(str(error['msg']))}.")


def _plain(message: str) -> str:
    return message[:1].lower() + message[1:].replace(" or instance of _ChildFile", "")
