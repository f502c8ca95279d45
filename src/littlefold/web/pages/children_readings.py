"""What was typed beside the measurements, read and judged."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Final

from littlefold.body.plausible import examine
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.tape import read_length, say_length
from littlefold.problem import Problem, Severity
from littlefold.store import Measured, measuring_fault

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from littlefold.store import Card, OwnMeasurement
    from littlefold.web.preferences import Units


_OWN: Final = "own-"


@dataclass(frozen=True, slots=True)
class Sheet:
    """What was typed, and the day it is for; None where that is no day, or cannot be."""

    typed: dict[str, str]
    day: date | None
    complaint: str = ""


@dataclass(frozen=True, slots=True)
class Judged:
    """What was typed, read and looked at.

    Attributes:
        day: The day of measuring; None where it is not understood.
        typed: As it was typed, by field.
        readings: Pairs of name and length [mm] of what could be read, and of what stays as it was.
        said: What could be read in words, in both units, by field.
        refused: Sentences about what could not be read, by field.
        found: What looks wrong among the readings.
        own: What those of the readings mean that are recipes' own.
        complaint: What is wrong with the day; empty where nothing is.
    """

    day: date | None
    typed: dict[str, str]
    readings: tuple[tuple[str, float], ...]
    said: dict[str, str]
    refused: dict[str, str]
    found: tuple[Problem, ...]
    own: tuple[OwnMeasurement, ...] = ()
    complaint: str = ""

    @property
    def doubts(self) -> bool:
        """Whether some reading is so strange that it is kept only if it is said to be right."""
        return any(one.severity is not Severity.NOTE for one in self.found)

    @property
    def doubtful(self) -> set[str]:
        """The measurements that what was found is about."""
        return {number.name for one in self.found for number in one.numbers if number.name in REGISTER}

    @property
    def complaints(self) -> tuple[str, ...]:
        """Why the set cannot be kept as it is."""
        told = [self.complaint] if self.complaint else []
        if self.refused:
            told.append("Some readings are not understood. Each says beside it what to write.")
        if not self.typed:
            told.append("There is no reading yet. Fill in at least one.")
        if self.doubts and not told:
            told.append("Nothing was kept yet. Look at what is doubtful, or say that it is right.")
        return tuple(told)


def field_of(name: str) -> str:
    """The field for a measurement; a recipe's own may be called as a field of the form is, so it gets a hyphen."""
    return name if name in REGISTER else f"{_OWN}{name}"


def read_sheet(card: Card, own: Iterable[str], fields: Mapping[str, str], today: date) -> Sheet:
    """What stands in the fields of a form or a link.

    Args:
        card: Of the child that is measured.
        own: The names of recipes' own measurements that are asked for too.
        fields: As they were sent.
        today: The day it is.
    """
    asked = map(field_of, (*NAMES, *own))
    typed = {field: fields[field].strip() for field in asked if fields.get(field, "").strip()}
    written = fields.get("day", "").strip()
    try:
        day = date.fromisoformat(written) if written else today
    except ValueError:
        return Sheet(typed, None, f"“{written[:40]}” is not a day. Write it like {today.isoformat()}.")
    fault = measuring_fault(card, day, today)
    return Sheet(typed, day) if fault is None else Sheet(typed, None, fault.message)


def judge(
    card: Card, sheet: Sheet, units: Units, own: Mapping[str, OwnMeasurement], before: Measured | None = None
) -> Judged:
    """Reads what was typed, and looks at it beside the age and the other readings.

    Args:
        card: The card that it is for.
        sheet: What was typed.
        units: What a bare number means.
        own: The recipes' own measurements that are asked for, by name.
        before: An earlier set, which stands where nothing was typed.
    """
    lengths = {field: _length(text, units) for field, text in sheet.typed.items()}
    refused = {field: found.message for field, found in lengths.items() if isinstance(found, Problem)}
    taken = {field: found for field, found in lengths.items() if not isinstance(found, Problem)}
    typed = {field.removeprefix(_OWN) for field in lengths}
    kept = [pair for pair in (before.readings if before else ()) if pair[0] not in typed] if taken else []
    readings = (*((field.removeprefix(_OWN), mm) for field, mm in taken.items()), *kept)
    meanings = {one.name: one for one in (before.own if before else ())}
    meanings |= {name: one for name, one in own.items() if name in typed}
    said = {field: _both(mm, units) for field, mm in taken.items()}
    body = card.body(Measured(sheet.day or date.min, readings))
    found = examine(body, units) if readings else ()
    described = tuple(meanings[name] for name, _ in readings if name in meanings)
    return Judged(sheet.day, sheet.typed, readings, said, refused, found, described, sheet.complaint)


def _length(text: str, units: Units) -> float | Problem:
    mm = read_length(text, units)
    if not isinstance(mm, Problem) and mm <= 0:
        return Problem("measurement-zero", "A measurement is more than nothing.")
    return mm


def _both(mm: float, units: Units) -> str:
    """A length in the maker's units, and beside it in the other."""
    other: Units = "cm" if units == "in" else "in"
    return f"{say_length(mm, units)} ({say_length(mm, other)})"
