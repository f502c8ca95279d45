"""What was typed beside the measurements, read and judged."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from littlefold.body.plausible import examine
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.tape import read_length, say_length
from littlefold.problem import Problem, Severity
from littlefold.store import Measured

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.store import Card
    from littlefold.web.preferences import Units


Readings = tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """What was typed, and the day it is for; None where that is no day, or still to come."""

    typed: dict[str, str]
    day: date | None
    complaint: str = ""


@dataclass(frozen=True, slots=True)
class Judged:
    """What was typed, read and looked at.

    Attributes:
        day: The day of measuring; None where it is not understood.
        typed: As it was typed, by measurement.
        readings: Pairs of name and length [mm] of what could be read.
        said: Each of them in words, in both units.
        refused: Sentences about what could not be read, by measurement.
        found: What looks wrong among the readings.
        complaint: What is wrong with the day; empty where nothing is.
    """

    day: date | None
    typed: dict[str, str]
    readings: tuple[tuple[str, float], ...]
    said: dict[str, str]
    refused: dict[str, str]
    found: tuple[Problem, ...]
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


def read_sheet(fields: Mapping[str, str], today: date) -> Sheet:
    """What stands in the fields of a form or a link."""
    typed = {name: fields[name].strip() for name in NAMES if fields.get(name, "").strip()}
    written = fields.get("day", "").strip()
    try:
        day = date.fromisoformat(written) if written else today
    except ValueError:
        return Sheet(typed, None, f"“{written[:40]}” is not a day. Write it like {today.isoformat()}.")
    if day > today:
        return Sheet(typed, None, f"{day} is still to come. Look at the day of measuring.")
    return Sheet(typed, day)


def judge(card: Card, sheet: Sheet, units: Units, before: Readings = ()) -> Judged:
    """Reads what was typed, and looks at it beside the age and the other readings.

    Args:
        card: The card that it is for.
        sheet: What was typed.
        units: What a bare number means.
        before: Readings of an earlier set, which stand where nothing was typed.
    """
    lengths = {name: _length(text, units) for name, text in sheet.typed.items()}
    refused = {name: found.message for name, found in lengths.items() if isinstance(found, Problem)}
    taken = tuple((name, found) for name, found in lengths.items() if not isinstance(found, Problem))
    kept = tuple((name, mm) for name, mm in before if name not in lengths) if taken else ()
    readings = (*taken, *kept)
    said = {name: _both(mm, units) for name, mm in taken}
    body = card.body(Measured(sheet.day or date.min, readings))
    found = examine(body, units) if readings else ()
    return Judged(sheet.day, sheet.typed, readings, said, refused, found, sheet.complaint)


def _length(text: str, units: Units) -> float | Problem:
    mm = read_length(text, units)
    if not isinstance(mm, Problem) and mm <= 0:
        return Problem("measurement-zero", "A measurement is more than nothing.")
    return mm


def _both(mm: float, units: Units) -> str:
    """A length in the maker's units, and beside it in the other."""
    other: Units = "cm" if units == "in" else "in"
    return f"{say_length(mm, units)} ({say_length(mm, other)})"
