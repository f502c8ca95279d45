"""The head of a card as it is typed: name, birth date, whose growth curves."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Final

from littlefold.problem import Problem
from littlefold.store import Card, birth_fault

if TYPE_CHECKING:
    from littlefold.body.measurements import Sex

SEXES: Final[dict[str, Sex | None]] = {"": None, "girl": "girl", "boy": "boy"}


def new_card(typed: dict[str, str], today: date) -> Card | Problem:
    """The head of a card as it was typed."""
    day = read_birthday(typed["born"], today)
    if isinstance(day, Problem):
        return day
    return Card(typed["name"].strip(), day, SEXES.get(typed["sex"]))


def read_birthday(text: str, today: date) -> date | Problem | None:
    """A birth date; None where none was typed."""
    if not text.strip():
        return None
    try:
        day = date.fromisoformat(text.strip())
    except ValueError:
        return Problem("day-not-understood", f"“{text[:40]}” is not a day. Write it like 2022-08-14.")
    return birth_fault(day, today) or day
