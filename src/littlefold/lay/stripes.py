"""Stripes and checks: which point of each piece meets the repeat, so that neighbours meet notch to notch.

A piece on the cloth can be moved along and across, and no more: one notch of it can be put where a stripe is wanted.
So the seams are taken in turn, those first that run furthest along the grain, as side seams do: a seam that joins a
piece that is not held yet to one that is, holds it too.  A seam between two pieces that are held already meets by luck or
not at all, and that is told.  What is folded or unfolded has its middle on the middle of a lengthwise stripe and cannot
be moved across.

Stripes are taken to be even, alike to both sides of their middle, as they must be on folded cloth: so it is the same
whether a stripe is met from the one side or from the other.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import remainder
from typing import TYPE_CHECKING, Literal

from littlefold.geometry import Point
from littlefold.lay.asked import matched
from littlefold.lay.chalk import lower_edge
from littlefold.lay.spoken import tape, units_of
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from littlefold.geometry import Vector
    from littlefold.lay.cloth import Repeat
    from littlefold.lay.lay import Lay
    from littlefold.lay.meeting import Meeting, Side
    from littlefold.lay.piece import LayPiece

    Axis = Literal["x", "y"]

# Stripes this far apart in a seam [mm] meet as well as anyone can sew; common practice, no source.
AS_SEWN = 1.0

# A piece of which the maker wants no notch matched.
FREE = "not to be matched"


@dataclass(frozen=True, slots=True)
class Met:
    """What becomes of the stripes in a seam.

    Attributes:
        first: The one edge, as piece and edge.
        second: The edge sewn to it.
        along: How far apart crosswise stripes are at the notch [mm]; None where there are none, or nothing is held.
        across: The same of lengthwise stripes.
        hindrance: Why the seam is not matched at all; empty where it is.
    """

    first: tuple[str, str]
    second: tuple[str, str]
    along: float | None
    across: float | None
    hindrance: str = ""


def paired(
    pieces: Sequence[LayPiece],
    meetings: Sequence[Meeting],
    repeat: Repeat | None,
    chosen: Sequence[tuple[str, int]] = (),
) -> tuple[LayPiece, ...] | Problem:
    """The pieces with the points that are to meet the stripes, so that as many seams as can be meet notch to notch.

    Args:
        pieces: As they will be cut, enlarged already where that was chosen.
        meetings: Their seams.
        repeat: None where there is nothing to match: then only what was chosen is changed.
        chosen: By piece, the notch from 1 that was chosen by hand; 0 for no notch at all.
    """
    told = matched(pieces, chosen)
    if isinstance(told, Problem) or repeat is None:
        return told
    by_name = {piece.name: piece for piece in told}
    held = {name: by_name[name].match for name, _ in chosen}
    seams = _in_turn([one for one in meetings if not _hindrance(one, by_name)])
    along = {name: point.x for name, point in held.items() if point is not None}
    across = {name: point.y for name, point in held.items() if point is not None}
    middles = {piece.name: 0.0 for piece in told if piece.on_fold}
    xs = _held(by_name, seams, "x", repeat.along, along)
    ys = _held(by_name, seams, "y", repeat.across, middles | across)
    return tuple(_at(piece, xs, ys) for piece in told)


def _at(piece: LayPiece, xs: Mapping[str, float], ys: Mapping[str, float]) -> LayPiece:
    """The piece with its matching point moved to where it is held; one that is free stays free."""
    if piece.match is None:
        return piece
    x, y = xs.get(piece.name, piece.match.x), ys.get(piece.name, piece.match.y)
    return replace(piece, match=Point(x, y))


def _in_turn(seams: Sequence[Meeting]) -> list[Meeting]:
    """The seams between different pieces, those first that run furthest along the grain: there stripes are seen most."""
    between = [one for one in seams if one.first.piece != one.second.piece]
    return sorted(between, key=lambda one: -min(abs(one.first.way.x), abs(one.second.way.x)))


def _held(
    pieces: Mapping[str, LayPiece],
    seams: Sequence[Meeting],
    axis: Axis,
    repeat: float,
    known: Mapping[str, float],
) -> dict[str, float]:
    """Of each piece the place, in its own frame along one axis, that meets the middle of a stripe [mm].

    `seams` are taken in turn; of them always the first that reaches a piece with a known place.
    """
    places, left = dict(known), list(seams) if repeat > 0 else []
    while left:
        one = next((seam for seam in left if _is_known(seam, places)), left[0])
        left.remove(one)
        first, second = one.first, one.second
        if second.piece in places:
            first, second = second, first
        places.setdefault(first.piece, _notch(pieces, first, axis))
        off = remainder(_notch(pieces, first, axis) - places[first.piece], repeat)
        places.setdefault(second.piece, _notch(pieces, second, axis) - _turn(one, axis) * off)
    return places


def _is_known(seam: Meeting, places: Mapping[str, float]) -> bool:
    return seam.first.piece in places or seam.second.piece in places


def _turn(seam: Meeting, axis: Axis) -> int:
    """1 where both pieces count the same way as one goes along the seam, -1 where one counts back."""
    return 1 if _part(seam.first.way, axis) * _part(seam.second.way, axis) >= 0 else -1


def _part(way: Vector, axis: Axis) -> float:
    return way.x if axis == "x" else way.y


def _notch(pieces: Mapping[str, LayPiece], side: Side, axis: Axis) -> float:
    foot = pieces[side.piece].notches[side.notch][0]
    return foot.x if axis == "x" else foot.y


def _hindrance(seam: Meeting, pieces: Mapping[str, LayPiece]) -> str:
    if seam.hindrance:
        return seam.hindrance
    sides = [pieces[seam.first.piece], pieces[seam.second.piece]]
    if any(piece.bias or piece.crossgrain for piece in sides):
        return "cut on the bias"
    return FREE if any(piece.match is None for piece in sides) else ""


def stripes_met(lay: Lay, meetings: Sequence[Meeting]) -> tuple[Met, ...]:
    """What becomes of the stripes in each seam of a lay; nothing where the cloth has none.

    Of a piece that is cut together with its twin nothing is told: it has no place of its own.
    """
    repeat = lay.cloth.repeat
    pieces = {piece.name: piece for piece in lay.pieces}
    laid = [one for one in meetings if {one.first.piece, one.second.piece} <= pieces.keys()]
    return () if repeat is None else tuple(_met(one, pieces, repeat) for one in laid)


def _met(seam: Meeting, pieces: Mapping[str, LayPiece], repeat: Repeat) -> Met:
    first, second = (seam.first.piece, seam.first.edge), (seam.second.piece, seam.second.edge)
    hindrance = _hindrance(seam, pieces)
    if hindrance:
        return Met(first, second, None, None, hindrance)
    along = _off(seam, pieces, "x", repeat.along) if repeat.along > 0 else None
    across = _off(seam, pieces, "y", repeat.across) if repeat.across > 0 else None
    return Met(first, second, along, across)


def _off(seam: Meeting, pieces: Mapping[str, LayPiece], axis: Axis, repeat: float) -> float:
    """How far apart the stripes are where the two notches meet [mm]."""
    from_stripe = [
        _notch(pieces, side, axis) - _part_of(pieces[side.piece], axis) for side in (seam.first, seam.second)
    ]
    return abs(remainder(from_stripe[0] - _turn(seam, axis) * from_stripe[1], repeat))


def _part_of(piece: LayPiece, axis: Axis) -> float:
    assert piece.match is not None, "only pieces that are held are asked"  # noqa: S101 - our own mistake
    return piece.match.x if axis == "x" else piece.match.y


def told(lay: Lay, met: Sequence[Met]) -> tuple[str, ...]:
    """The same in sentences: how to put the cloth, in which seams the stripes meet, in which they cannot and why."""
    if lay.cloth.repeat is None:
        return ()
    crosswise = _kind(lay, "Crosswise", [(one, one.along) for one in met])
    lengthwise = _kind(lay, "Lengthwise", [(one, one.across) for one in met])
    left = [f"{_named(lay, one)} ({one.hindrance})" for one in met if one.hindrance]
    not_matched = (f"Not matched: {'; '.join(left)}.",) if left else ()
    return (_cloth(lay), *crosswise, *lengthwise, *not_matched)


def _cloth(lay: Lay) -> str:
    repeat = lay.cloth.repeat
    assert repeat is not None, "asked only where there are stripes"  # noqa: S101 - our own mistake
    words = []
    if repeat.along > 0:
        words.append("the cut end along the middle of a crosswise stripe")
    if repeat.across > 0:
        words.append(f"{lower_edge(lay)} along the middle of a lengthwise stripe")
    return (
        f"Stripes: put {' and '.join(words)}. The stripes must be even, alike to both sides of their middle."
    )


def _kind(lay: Lay, kind: str, offs: Sequence[tuple[Met, float | None]]) -> Iterator[str]:
    """Of one kind of stripes: the seams in which they meet, and each in which they cannot."""
    well = [_named(lay, one) for one, off in offs if off is not None and off <= AS_SEWN]
    if well:
        yield f"{kind} stripes meet notch to notch: {'; '.join(well)}."
    for one, off in offs:
        if off is not None and off > AS_SEWN:
            apart = tape(off, units_of(lay.cloth))
            yield f"{kind} stripes cannot meet as well, {apart} apart at the notch: {_named(lay, one)}; {_why(lay, one, kind)}."


def _why(lay: Lay, met: Met, kind: str) -> str:
    both = [lay.piece(name) for name, _ in (met.first, met.second)]
    if kind == "Lengthwise" and all(piece.on_fold for piece in both):
        return "the middle of both pieces lies on the middle of a stripe"
    return "both pieces are held at other seams or notches"


def _left(lay: Lay, met: Sequence[Met]) -> Iterator[str]:
    left = [f"{_named(lay, one)} ({one.hindrance})" for one in met if one.hindrance]
    if left:
        yield f"Not matched: {'; '.join(left)}."


def _named(lay: Lay, met: Met) -> str:
    return " with ".join(
        f"{lay.piece(piece).title or piece}, {edge.replace('_', ' ')}"
        for piece, edge in (met.first, met.second)
    )
