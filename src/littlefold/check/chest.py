"""The girth of a bodice at the underarm, as worn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.draft.model import EdgeKind

from .across import along, width_at
from .roles import Role, edges_with, is_sleeve
from .worn import seams_of, times

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge
    from littlefold.geometry import Point
    from littlefold.pattern.model import Pattern, Piece

# How far under the underarm the seams are looked at that cross the chest line [mm].
BELOW: Final = 5.0


@dataclass(frozen=True, slots=True)
class Chest:
    """The girth at the underarm [mm], and the first piece that makes it."""

    length: float
    piece: Piece


def chest_as_worn(pattern: Pattern) -> Chest | None:
    """The girth of the pieces that have an armhole, at the underarm, laps taken off.

    None where no piece has an armhole, and where other pieces, such as side panels, are sewn between them.
    """
    holes = [
        _underarm(piece, edge) for piece, edge in edges_with(pattern, Role.ARMHOLE) if not is_sleeve(piece)
    ]
    pieces = {hole.piece.name: hole.piece for hole in holes}
    if not holes or any(_has_panel_beside(pattern, hole, set(pieces)) for hole in holes):
        return None
    widths = {hole.piece.name: hole.width for hole in holes}
    whole = sum(width * pieces[name].cutting.count for name, width in widths.items())
    return Chest(whole - sum(_laps(piece) for piece in pieces.values()), holes[0].piece)


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
        for seam in seams_of(pattern, piece, edge)
        for ref in (*seam.first, *seam.second)
    }
    return not partners <= bodice


def _spans(piece: Piece, edge: DraftEdge, level: float) -> bool:
    ends = along(piece, edge.path.start), along(piece, edge.path.end)
    return min(ends) <= level <= max(ends)
