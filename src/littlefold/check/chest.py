"""The girth of a bodice at the underarm, as worn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.draft.model import EdgeKind

from .across import along, width_at
from .corners import corner_at_end, corner_at_start
from .roles import Role, edges_with, is_sleeve
from .worn import times

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge
    from littlefold.geometry import Point
    from littlefold.pattern.model import Pattern, Piece

# How far under the underarm the seams are looked at that cross the chest line [mm].
BELOW: Final = 5.0
# An edge is a side when it climbs along the grain by more than this part of its length: 30 degrees.
SIDE: Final = 0.5


@dataclass(frozen=True, slots=True)
class Chest:
    """The girth at the underarm [mm], the first piece that makes it, and whether it is gathered on to a yoke."""

    length: float
    piece: Piece
    is_gathered: bool = False


def chest_as_worn(pattern: Pattern) -> Chest | None:
    """The girth of the pieces that have an armhole, at the underarm, laps taken off.

    None where no piece has an armhole, and where other pieces, such as side panels, are sewn between them.
    """
    holes = [
        hole
        for piece, edge in edges_with(pattern, Role.ARMHOLE)
        if not is_sleeve(piece) and _ends_at_side(hole := _underarm(piece, edge))
    ]
    pieces = {hole.piece.name: hole.piece for hole in holes}
    if not holes or any(_has_panel_beside(pattern, hole, set(pieces)) for hole in holes):
        return None
    widths = {hole.piece.name: hole.width for hole in holes}
    whole = sum(width * pieces[name].cutting.count for name, width in widths.items())
    laps = sum(_laps(piece) for piece in pieces.values())
    return Chest(whole - laps, holes[0].piece, any(_is_gathered(pattern, piece) for piece in pieces.values()))


def _is_gathered(pattern: Pattern, piece: Piece) -> bool:
    runs = (seam.second for seam in pattern.seams if seam.gather)
    return any(ref.piece == piece.name for run in runs for ref in run)


@dataclass(frozen=True, slots=True)
class _Underarm:
    """The end of an armhole at which the piece is wider, and that width [mm]."""

    piece: Piece
    armhole: DraftEdge
    foot: Point
    width: float


def _underarm(piece: Piece, armhole: DraftEdge) -> _Underarm:
    ends = (armhole.path.start, armhole.path.end)
    width, _, foot = max((width_at(piece, end), order, end) for order, end in enumerate(ends))
    return _Underarm(piece, armhole, foot, width)


def _ends_at_side(hole: _Underarm) -> bool:
    """Whether a side runs down from the underarm: the armhole of a yoke ends at a seam across the grain instead."""
    piece, armhole = hole.piece, hole.armhole
    at_start = hole.foot is armhole.path.start
    corner = (corner_at_start if at_start else corner_at_end)(piece, armhole.name)
    way = corner.other(armhole).path.end - corner.other(armhole).path.start
    return abs(along(piece, hole.foot + way) - along(piece, hole.foot)) > SIDE * way.length


def _laps(piece: Piece) -> float:
    """How much the button edges of a piece lap over their partners [mm]."""
    laps = sum(edge.lap for edge in piece.edges if edge.kind is EdgeKind.BUTTON)
    return laps * times(piece.cutting)


def _has_panel_beside(pattern: Pattern, hole: _Underarm, bodice: set[str]) -> bool:
    """Whether an edge that crosses the chest line is sewn to a piece without an armhole."""
    piece, path = hole.piece, hole.armhole.path
    middle = (along(piece, path.start) + along(piece, path.end)) / 2
    level = along(piece, hole.foot)
    level += BELOW if level > middle else -BELOW
    crossing = [edge for edge in piece.edges if edge is not hole.armhole and _spans(piece, edge, level)]
    partners = {
        ref.piece
        for edge in crossing
        for seam in pattern.seams_of(piece.name, edge.name)
        for ref in (*seam.first, *seam.second)
    }
    return not partners <= bodice


def _spans(piece: Piece, edge: DraftEdge, level: float) -> bool:
    ends = along(piece, edge.path.start), along(piece, edge.path.end)
    return min(ends) <= level <= max(ends)
