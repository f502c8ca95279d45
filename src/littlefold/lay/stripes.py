"""Stripes and checks: which point of each piece meets the repeat, so that neighbours meet notch to notch.

A piece on the cloth can be moved along and across, and no more: one notch of it can be put where a stripe is wanted.
So the seams are taken in turn, those first that run furthest along the grain, as side seams do: a seam that joins a
piece that is not held yet to one that is, holds it too.  A seam between two pieces that are held already meets by luck or
not at all, and that is told.  What is folded or unfolded has its middle on the middle of a lengthwise stripe and cannot
be moved across.

Even stripes are alike to both sides of their middle: so it is the same whether one is met from the one side or from the
other, and in a seam that slants they make a mirror image.  Uneven ones are put so that they go on over the seam in the order
in which they lie on the cloth (`one_way.py` tells what that asks of each piece); common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import remainder
from typing import TYPE_CHECKING, Literal

from littlefold.geometry import Point
from littlefold.lay.asked import matched, no_such_piece
from littlefold.problem import Place, Problem

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from littlefold.geometry import Vector
    from littlefold.lay.asked import Chosen
    from littlefold.lay.cloth import Repeat
    from littlefold.lay.lay import Lay
    from littlefold.lay.meeting import Meeting, Side
    from littlefold.lay.piece import LayPiece

    Axis = Literal["x", "y"]

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
    chosen: Sequence[Chosen] = (),
) -> tuple[LayPiece, ...] | Problem:
    """The pieces with the points that are to meet the stripes, so that as many seams as can be meet notch to notch.

    Args:
        pieces: As they will be cut, enlarged already where that was chosen.
        meetings: Their seams.
        repeat: None where there is nothing to match: then only the notches that were chosen are changed.
        chosen: By piece, the notch or the edge that was chosen by hand.
    """
    notches = [(name, notch) for name, notch in chosen if isinstance(notch, int)]
    told = matched(pieces, notches)
    if isinstance(told, Problem):
        return told
    by_name = {piece.name: piece for piece in told}
    edges = [(name, edge) for name, edge in chosen if isinstance(edge, str)]
    first = _chosen_seams(by_name, meetings, edges)
    if isinstance(first, Problem):
        return first
    if repeat is None:
        return told
    held = {name: by_name[name].match for name, _ in notches}
    then = _in_turn([one for one in meetings if not _hindrance(one, by_name)])
    along = {name: point.x for name, point in held.items() if point is not None}
    across = {name: point.y for name, point in held.items() if point is not None}
    middles = {piece.name: 0.0 for piece in told if piece.on_fold}
    xs = _held(by_name, (first, then), "x", repeat, along)
    ys = _held(by_name, (first, then), "y", repeat, middles | across)
    return tuple(_at(piece, xs, ys) for piece in told)


def _chosen_seams(
    pieces: Mapping[str, LayPiece], meetings: Sequence[Meeting], edges: Sequence[tuple[str, str]]
) -> list[Meeting] | Problem:
    """The seams at these edges of pieces; or why stripes cannot be made to meet in one of them."""
    found: list[Meeting] = []
    for edge in edges:
        if edge[0] not in pieces:
            return no_such_piece(edge[0], tuple(pieces.values()))
        here = [one for one in meetings if edge in _edges(one)]
        can = [one for one in here if not _hindrance(one, pieces)]
        if not can:
            return _cannot(edge, here, meetings, pieces)
        found += can
    return found


def _edges(seam: Meeting) -> tuple[tuple[str, str], tuple[str, str]]:
    return (seam.first.piece, seam.first.edge), (seam.second.piece, seam.second.edge)


def _cannot(
    edge: tuple[str, str],
    here: Sequence[Meeting],
    meetings: Sequence[Meeting],
    pieces: Mapping[str, LayPiece],
) -> Problem:
    """Why stripes cannot meet at an edge, and at which edges of the piece they can."""
    name, at = edge
    why = _hindrance(here[0], pieces) if here else "no seam to another edge is there"
    able = [one for seam in meetings if not _hindrance(seam, pieces) for one in _edges(seam)]
    others = ", ".join(dict.fromkeys(said for piece, said in able if piece == name)) or "none"
    return Problem(
        "seam-not-matched",
        f'Stripes cannot be matched at "{at}" of "{name}": {why}. Edges of it at which they can: {others}.',
        place=Place(piece=name, edge=at),
    )


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
    ranks: Sequence[Sequence[Meeting]],
    axis: Axis,
    repeat: Repeat,
    known: Mapping[str, float],
) -> dict[str, float]:
    """Of each piece the place, in its own frame along one axis, that meets the middle of a stripe [mm].

    The seams of a rank are taken in turn; of them always the first that reaches a piece with a known place.
    """
    places = dict(known)
    for seams in ranks if _step(repeat, axis) > 0 else ():
        places = _joined(pieces, seams, axis, repeat, places)
    return places


def _joined(
    pieces: Mapping[str, LayPiece],
    seams: Sequence[Meeting],
    axis: Axis,
    repeat: Repeat,
    known: Mapping[str, float],
) -> dict[str, float]:
    """The known places and those of the pieces that hang together by these seams."""
    places, left = dict(known), list(seams)
    while left:
        one = next((seam for seam in left if _is_known(seam, places)), left[0])
        left.remove(one)
        first, second = one.first, one.second
        if second.piece in places:
            first, second = second, first
        places.setdefault(first.piece, _notch(pieces, first, axis))
        off = remainder(_notch(pieces, first, axis) - places[first.piece], _step(repeat, axis))
        places.setdefault(second.piece, _notch(pieces, second, axis) - _turn(one, axis, repeat) * off)
    return places


def _is_known(seam: Meeting, places: Mapping[str, float]) -> bool:
    return seam.first.piece in places or seam.second.piece in places


def _step(repeat: Repeat, axis: Axis) -> float:
    return repeat.along if axis == "x" else repeat.across


def _turn(seam: Meeting, axis: Axis, repeat: Repeat) -> int:
    """1 where both pieces count the stripes the same way from the notch, -1 where one counts back.

    Even stripes are counted as one goes along the seam.  Uneven ones are counted as they lie on the cloth: all pieces
    lie the same way up on it, and where both are on the same side of the seam one of them is worn as its mirror image.
    """
    if axis == "x" and repeat.uneven_along:
        return 1
    if axis == "y" and repeat.uneven_across:
        return 1 if seam.first.left != seam.second.left else -1
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
    first, second = _edges(seam)
    hindrance = _hindrance(seam, pieces)
    if hindrance:
        return Met(first, second, None, None, hindrance)
    along = _off(seam, pieces, "x", repeat) if repeat.along > 0 else None
    across = _off(seam, pieces, "y", repeat) if repeat.across > 0 else None
    return Met(first, second, along, across)


def _off(seam: Meeting, pieces: Mapping[str, LayPiece], axis: Axis, repeat: Repeat) -> float:
    """How far apart the stripes are where the two notches meet [mm]."""
    from_stripe = [
        _notch(pieces, side, axis) - _part_of(pieces[side.piece], axis) for side in (seam.first, seam.second)
    ]
    return abs(remainder(from_stripe[0] - _turn(seam, axis, repeat) * from_stripe[1], _step(repeat, axis)))


def _part_of(piece: LayPiece, axis: Axis) -> float:
    assert piece.match is not None, "only pieces that are held are asked"  # noqa: S101 - our own mistake
    return piece.match.x if axis == "x" else piece.match.y
