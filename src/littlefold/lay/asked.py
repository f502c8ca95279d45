"""What a maker may ask of single pieces: a little tilt, a notch that meets the stripes, a place that is kept.

Tilt: on parts that are not seen, both of a pair alike, at most 3 mm over the length of the piece (Vilumsone-Nemes,
*Industrial Cutting of Textile Materials*, p. 216).
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from math import atan2, degrees
from typing import TYPE_CHECKING

from littlefold.geometry import Point
from littlefold.lay.lay import Placement
from littlefold.lay.nofit import PLAIN
from littlefold.lay.ways import DOUBLE, Way
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.lay.piece import LayPiece

MOST_TILT = 3.0
"""How far off the grain a piece may end at most [mm] (source above)."""

FOLDED_BELOW = (
    Way.FOLDED,
    Way.PARTLY,
    Way.TWO_FOLDS,
    Way.TWO_PARTLY,
    Way.TUBE,
    Way.FOUR_LAYERS,
)
"""The ways in which a half can be held on the lower fold."""

FOUR = 4

Chosen = tuple[str, int | str]
"""A piece with its notch that is to meet the stripes, counted from 1, 0 for none; or with its edge, in the seam of which
stripes are to meet before others."""

_NOTCH_OR_EDGE = re.compile(r"\d{1,9}|[a-z]\w*", re.ASCII)


@dataclass(frozen=True, slots=True)
class Wished:
    """A piece that is to lie as drawn, with the tail of its grain arrow at a place on the spread [mm]."""

    piece: str
    at: Point


def tilted(pieces: Sequence[LayPiece], most: float) -> tuple[LayPiece, ...] | Problem:
    """The pieces, each of which may end so far off its grain [mm]; bias pieces keep to theirs."""
    if not 0 <= most <= MOST_TILT:
        return Problem(
            "tilt-too-large",
            f"A piece may be tilted by {MOST_TILT:g} mm over its length at most; more is seen when it is worn.",
            numbers=(Number("tilt", most), Number("most", MOST_TILT)),
        )
    return tuple(piece if piece.bias else replace(piece, tilt=_tilt(piece, most)) for piece in pieces)


def _tilt(piece: LayPiece, most: float) -> float:
    left, _, right, _ = piece.whole.bounds
    return degrees(atan2(most, right - left))


def read_chosen(text: str) -> Chosen | None:
    """A choice such as `front=2`, `front=0` or `front=side`, names with spaces too; None where it is none of them."""
    name, _, said = (part.strip().lower().replace(" ", "_") for part in text.partition("="))
    if not name or not _NOTCH_OR_EDGE.fullmatch(said):
        return None
    return name, int(said) if said.isdigit() else said


def matched(pieces: Sequence[LayPiece], notches: Sequence[tuple[str, int]]) -> tuple[LayPiece, ...] | Problem:
    """The pieces with the notch of each that is to meet the stripes, by its number from 1; 0 for no notch at all.

    Give two pieces that are sewn together the notches that meet in the seam: all matching points lie at the same
    place of the repeat, so the stripes meet there notch to notch.
    """
    known = {piece.name: piece for piece in pieces}
    for name, number in notches:
        piece = known.get(name)
        if piece is None:
            return no_such_piece(name, pieces)
        if not 0 <= number <= len(piece.notches):
            return Problem(
                "notch-unknown",
                f'"{name}" has {len(piece.notches)} notches; there is no notch {number}.',
                place=Place(piece=name),
            )
        known[name] = replace(piece, match=piece.matching(number - 1) if number else None)
    return tuple(known.values())


def pinned(pieces: Sequence[LayPiece], way: Way, wishes: Sequence[Wished]) -> tuple[Placement, ...] | Problem:
    """The wishes as placements; a half is held on the fold where the way has one."""
    by_name = {piece.name: piece for piece in pieces}
    for wish in wishes:
        if wish.piece not in by_name:
            return no_such_piece(wish.piece, pieces)
    return tuple(_held(by_name[wish.piece], way, wish) for wish in wishes)


def _held(piece: LayPiece, way: Way, wish: Wished) -> Placement:
    half = piece.on_fold and way in FOLDED_BELOW
    tail = piece.arrow[0]
    at = Point(wish.at.x - tail.x, 0.0 if half else wish.at.y - tail.y)
    layers = 1 if way in (Way.OPEN, Way.SCRAPS) else FOUR if way is Way.FOUR_LAYERS else DOUBLE
    return Placement(piece.name, half, layers, 0.0, PLAIN, at)


def no_such_piece(name: str, pieces: Sequence[LayPiece]) -> Problem:
    """That something was asked of a piece that is not cut from this cloth."""
    return Problem("piece-unknown", f'There is no piece "{name}". There are: {", ".join(_names(pieces))}.')


def _names(pieces: Sequence[LayPiece]) -> Iterator[str]:
    return (piece.name for piece in pieces)
