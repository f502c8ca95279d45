"""Which corners come together when a seam is sewn, and the angle that the crossing edges make there.

armhole   armhole      The corner of the front and that of the back meet at the end of the side seam.
     |     |           Their angles together are the angle of the joined armhole: pi where it runs on
front+-----+back       smoothly, less where it makes a point, more where it makes a hollow.
      side
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from littlefold.draft.model import EdgeKind

from .corners import Corner, corner_at_end, corner_at_start
from .roles import Role, role_of
from .worn import holds, is_sewn

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece, Seam
    from littlefold.pattern.run import EdgeEnd


@dataclass(frozen=True, slots=True)
class Join:
    """Two corners that a seam brings together, each with the edge that runs on across the seam.

    `takes_piece` says whether another piece is sewn to that edge, as a sleeve to an armhole.
    """

    seam: Seam
    first: Corner
    first_edge: DraftEdge
    second: Corner
    second_edge: DraftEdge
    takes_piece: bool

    @property
    def angle(self) -> float:
        """The angle of the joined edge, measured inside the garment [rad]: pi where it is smooth."""
        return self.first.angle + self.second.angle

    @property
    def bend(self) -> float:
        """How far it is from smooth [rad]: positive for a point, negative for a hollow."""
        return pi - self.angle


def smooth_joins(pattern: Pattern) -> Iterator[Join]:
    """The joins at which the edges that cross a seam should run on as one line.

    They should when both end free (two hems), when both lie on the same side of another seam (two armhole
    edges sewn to one sleeve), and when both are middle seams (two crotch curves).  At a fold, at a gathered
    seam and where other seams meet nothing is asked.
    """
    return (join for join in joins(pattern) if not join.seam.gather and _run_on(pattern, join))


def joins(pattern: Pattern) -> Iterator[Join]:
    """Every meeting of two corners at the end of a seam."""
    for seam in pattern.seams:
        for first, second in seam.ends:
            yield _join(pattern, seam, first, second)


def _join(pattern: Pattern, seam: Seam, first: EdgeEnd, second: EdgeEnd) -> Join:
    (corner, edge), (other, crossing) = _corner(pattern, first), _corner(pattern, second)
    takes_piece = is_sewn(pattern, corner.piece, edge)
    return Join(seam, corner, edge, other, crossing, takes_piece)


def _corner(pattern: Pattern, end: EdgeEnd) -> tuple[Corner, DraftEdge]:
    """The corner at the end of an edge, and its other edge."""
    piece = pattern.piece(end.piece)
    if end.at_start:
        corner = corner_at_start(piece, end.edge)
        return corner, corner.before
    corner = corner_at_end(piece, end.edge)
    return corner, corner.after


def _run_on(pattern: Pattern, join: Join) -> bool:
    first, second = join.first_edge, join.second_edge
    if EdgeKind.FOLD in {first.kind, second.kind}:
        return False
    ends = (join.first.piece, first), (join.second.piece, second)
    if not any(is_sewn(pattern, *end) for end in ends):
        return True
    return _same_side(pattern, join) or all(_is_middle_seam(pattern, *end) for end in ends)


def _same_side(pattern: Pattern, join: Join) -> bool:
    """Whether the crossing edges are two edges of one run of another seam."""
    if join.first_edge is join.second_edge:
        return False
    first, second = (join.first.piece, join.first_edge), (join.second.piece, join.second_edge)
    seams = pattern.seams_of(first[0].name, first[1].name)
    runs = (run for seam in seams for run in (seam.first, seam.second))
    return any(holds(run, *first) and holds(run, *second) for run in runs)


def _is_middle_seam(pattern: Pattern, piece: Piece, edge: DraftEdge) -> bool:
    """Whether an edge is a crotch that is sewn to its own mirror image."""
    return role_of(piece, edge) is Role.CROTCH and any(
        holds(s.first, piece, edge) and holds(s.second, piece, edge)
        for s in pattern.seams_of(piece.name, edge.name)
    )
