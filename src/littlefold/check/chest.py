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
    holes = [(piece, edge) for piece, edge in edges_with(pattern, Role.ARMHOLE) if not is_sleeve(piece)]
    pieces = {piece.name: piece for piece, _ in holes}
    if not holes or any(_has_panel_beside(pattern, piece, edge, set(pieces)) for piece, edge in holes):
        return None
    widths = {piece.name: width_at(piece, underarm(piece, edge)) for piece, edge in holes}
    whole = sum(width * pieces[name].cutting.count for name, width in widths.items())
    return Chest(whole - sum(_laps(piece) for piece in pieces.values()), holes[0][0])


def _laps(piece: Piece) -> float:
    """How much the button edges of a piece lap over their partners [mm]."""
    laps = sum(edge.lap for edge in piece.edges if edge.kind is EdgeKind.BUTTON)
    return laps * times(piece.cutting)


def underarm(piece: Piece, armhole: DraftEdge) -> Point:
    """The end of the armhole at which the piece is wider: the underarm, not the shoulder."""
    return max((armhole.path.start, armhole.path.end), key=lambda end: width_at(piece, end))


def _has_panel_beside(pattern: Pattern, piece: Piece, armhole: DraftEdge, bodice: set[str]) -> bool:
    """Whether an edge that crosses the chest line is sewn to a piece without an armhole."""
    foot, top = underarm(piece, armhole), along(piece, armhole.path.start) + along(piece, armhole.path.end)
    level = along(piece, foot)
    level += BELOW if level > top / 2 else -BELOW
    crossing = [edge for edge in piece.edges if edge is not armhole and _spans(piece, edge, level)]
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
