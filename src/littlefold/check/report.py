"""How a check speaks: what, where, both numbers, and what to do."""

from __future__ import annotations

from dataclasses import replace
from math import degrees
from typing import TYPE_CHECKING, Final

from littlefold.problem import Measured, Number, Place, Problem, Saying, Severity, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.pattern.model import Piece

NOT_LEGAL_ADVICE: Final = say(
    "This is no legal advice: the rules of the place where it is worn or sold decide."
)


def cm(mm: float) -> Measured:
    """A length for a message, to a tenth of a millimetre, as `21.25 cm`."""
    return Measured(mm, "mm")


def on_tape(mm: float) -> Measured:
    """A measurement of the child, or a limit reckoned from it: no finer than a tape shows it, as `21.3 cm`."""
    return Measured(mm, "tape")


def estimate(mm: float) -> Measured:
    """A measurement that nobody took: to a millimetre or an eighth of an inch, as on the instruction sheet."""
    return Measured(mm, "estimate")


def angle_words(radians: float) -> Measured:
    """An angle for a message, as `87.5 degrees`."""
    return Measured(degrees(radians), "degrees")


def part(value: float) -> Measured:
    """A part of a whole for a message, as `40%`."""
    return Measured(value, "share")


def times(value: float) -> Measured:
    """How many times as much, for a message, as `1.50`."""
    return Measured(value, "ratio")


def own_words(text: str) -> Saying:
    """Words of the recipe's own, said as they are in any language."""
    return say("{words}", words=text) if text else Saying("")


def together(sayings: Sequence[Saying]) -> Saying:
    """Several sayings, one after the other with commas between them."""
    places = {f"part_{number}": saying for number, saying in enumerate(sayings)}
    return say(", ".join(f"{{{name}}}" for name in places), **places)


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
    what: Saying,
    cure: Saying,
    *,
    place: Place | None = None,
    numbers: tuple[Number, ...] = (),
    severity: Severity = Severity.ERROR,
    rule: str = "",
) -> Problem:
    """A problem whose message says what is wrong and then what to do."""
    said = tuple(one for one in (what, cure) if one.pattern)
    message = " ".join(map(str, said))
    return Problem(code, message, severity, place or Place(), numbers, rule, str(cure), said)
