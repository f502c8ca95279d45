"""Which notches meet where a garment is sewn together, and which way the seam runs on either piece.

Stripes that are to meet in a seam are held there: at a notch that both edges carry.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

from littlefold.lay.adapter import frame
from littlefold.pattern.seam import pairing
from littlefold.pattern.trace import surroundings

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import DraftSeam
    from littlefold.geometry import Vector
    from littlefold.pattern.model import Pattern
    from littlefold.pattern.run import Leg
    from littlefold.pattern.seam import Pairing

# Notches this far apart along a seam [mm] still meet: the pattern merges marks nearer than 2 mm to each other.
MEET = 2.0

NO_NOTCH = -1


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a seam: an edge, the number of its notch from 0, and the way from the seam's beginning to its end.

    `way` is told in the frame of the piece for the lay, grain along x [mm]; `left` tells whether the piece lies to the
    left as one goes that way; `notch` is -1 where there is none.
    """

    piece: str
    edge: str
    notch: int
    way: Vector
    left: bool


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two edges that are sewn together, and their notches that meet; or, with `hindrance`, why none do."""

    first: Side
    second: Side
    hindrance: str = ""


def meetings(pattern: Pattern, cloth: str = "main") -> tuple[Meeting, ...]:
    """All seams between pieces of one cloth, in the order in which the recipe sews them.

    A seam of several edges, such as two armholes and a sleeve, gives one meeting for each two edges of which notches
    meet: those nearest to the middle of the seam.
    """
    here = {piece.name for piece in pattern.pieces if piece.cloth == cloth}
    around = surroundings(pattern.draft)
    found: list[Meeting] = []
    for seam in around.seams:
        if all(ref.piece in here for ref in (*seam.first, *seam.second)):
            found += _of_seam(pattern, seam, pairing(seam, around))
    return tuple(found)


def _of_seam(pattern: Pattern, seam: DraftSeam, pair: Pairing) -> list[Meeting]:
    first, second = pair.first.legs[0], pair.second.legs[0]
    hindrance = _hindrance(seam, pair)
    if hindrance:
        return [_meeting(pattern, (first, NO_NOTCH), (second, NO_NOTCH), hindrance)]
    scale = pair.second.length / pair.first.length if seam.ease else 1.0
    found = [
        _meeting(pattern, (one, marks[0]), (other, marks[1]))
        for one, other in product(pair.first.legs, pair.second.legs)
        if (marks := _nearest(pattern, one, other, scale, pair.first.length / 2)) is not None
    ]
    nothing = "no notches meet"
    return found or [_meeting(pattern, (first, NO_NOTCH), (second, NO_NOTCH), nothing)]


def _hindrance(seam: DraftSeam, pair: Pairing) -> str:
    if seam.gather:
        return "gathered"
    halved = (pair.first_times, pair.second_times) != (1, 1)
    return "a half sewn to a whole piece" if halved else ""


def _nearest(
    pattern: Pattern, first: Leg, second: Leg, scale: float, middle: float
) -> tuple[int, int] | None:
    """The numbers of the two notches that meet nearest to the middle of the seam."""
    both = product(_marks(pattern, first, scale), _marks(pattern, second, 1.0))
    met = [
        (abs(place - middle * scale), one, other)
        for (one, place), (other, there) in both
        if abs(place - there) <= MEET
    ]
    return min(met)[1:] if met else None


def _marks(pattern: Pattern, leg: Leg, scale: float) -> Iterator[tuple[int, float]]:
    """The notches on an edge by number, with their places along the seam [mm]."""
    for number, notch in enumerate(pattern.piece(leg.enters.piece).notches):
        if notch.edge == leg.enters.edge:
            yield number, leg.on_run(notch.at) * scale


def _meeting(
    pattern: Pattern, first: tuple[Leg, int], second: tuple[Leg, int], hindrance: str = ""
) -> Meeting:
    return Meeting(_side(pattern, *first), _side(pattern, *second), hindrance)


def _side(pattern: Pattern, leg: Leg, notch: int) -> Side:
    piece = pattern.piece(leg.enters.piece)
    path = piece.edge(leg.enters.edge).path
    way = path.end - path.start if leg.enters.at_start else path.start - path.end
    on_cloth = frame(piece)
    left = leg.enters.at_start != on_cloth.flips  # edges run counter-clockwise round a piece
    return Side(piece.name, leg.enters.edge, notch, on_cloth.apply_vector(way), left)
