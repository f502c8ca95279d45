"""Days that cannot be on a card: measured before the birth, or still to come."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.problem import Problem

if TYPE_CHECKING:
    from datetime import date

    from littlefold.store.card import Card


def measuring_fault(card: Card, day: date, today: date) -> Problem | None:
    """Why a child cannot have been measured on a day; None where it can."""
    if day > today:
        return Problem("measured-ahead", f"{day} is still to come. Look at the day of measuring.")
    if card.born is not None and day < card.born:
        message = f"{card.name} was born on {card.born}, after {day}. Look at both days."
        return Problem("measured-before-birth", message)
    return None


def birth_fault(born: date, today: date, card: Card | None = None) -> Problem | None:
    """Why a child cannot have been born on a day; None where it can.

    Args:
        born: The day.
        today: The day it is.
        card: The child's card, where there is one already.
    """
    if born > today:
        return Problem("birth-date-ahead", f"Born {born} is still to come. Look at the year.")
    first = min((one.day for one in card.measured), default=None) if card else None
    if card is not None and first is not None and first < born:
        return Problem(
            "measured-before-birth",
            f"{card.name} was measured on {first}, before {born}. Look at the year.",
        )
    return None
