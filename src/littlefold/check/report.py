"""How a check speaks: what, where, both numbers, and what to do."""

from __future__ import annotations

from dataclasses import replace
from math import degrees
from typing import TYPE_CHECKING, Final

from littlefold.problem import Number, Place, Problem, Severity

if TYPE_CHECKING:
    from littlefold.pattern.model import Piece

NOT_LEGAL_ADVICE: Final = "This is no legal advice: the rules of the place where it is worn or sold decide."


def cm(mm: float) -> str:
    """A length for a message, to a tenth of a millimetre, as `21.25 cm`."""
    said = f"{mm / 10:.2f}".rstrip("0").rstrip(".")
    return f"{'0' if said == '-0' else said} cm"


def angle_words(radians: float) -> str:
    """An angle for a message, as `87.5 degrees`."""
    return f"{degrees(radians):.1f} degrees"


def on_piece(piece: Piece, edge: str | None = None, point: str | None = None) -> Place:
    """The place of a piece, or of an edge or point of it, with the line of the recipe that states it."""
    return replace(piece.place, piece=piece.name, edge=edge, point=point or None)


def mm(name: str, value: float) -> Number:
    """A length that a problem compares [mm]."""
    return Number(name, value, "mm")


def turn(name: str, radians: float) -> Number:
    """An angle that a problem compares, given in radians and kept in degrees."""
    return Number(name, degrees(radians), "degrees")


def found(
    code: str,
    what: str,
    cure: str,
    *,
    place: Place | None = None,
    numbers: tuple[Number, ...] = (),
    severity: Severity = Severity.ERROR,
    rule: str = "",
) -> Problem:
    """A problem whose message says what is wrong and then what to do."""
    return Problem(code, f"{what} {cure}".strip(), severity, place or Place(), numbers, rule, cure)
