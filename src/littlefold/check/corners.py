"""The corners of a piece and the angles in them."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, pi
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Piece


@dataclass(frozen=True, slots=True)
class Corner:
    """Where one edge of a piece ends and the next begins; `angle` is measured inside the piece [rad]."""

    piece: Piece
    before: DraftEdge
    after: DraftEdge

    @property
    def angle(self) -> float:
        """Between 0 (a spike) and 2 pi (a slit); pi where the two edges run on smoothly."""
        way_in, way_out = self.before.path.end_tangent, self.after.path.start_tangent
        return pi - atan2(way_in.cross(way_out), way_in.dot(way_out))

    def other(self, edge: DraftEdge) -> DraftEdge:
        """The neighbour of one of the two edges at this corner."""
        return self.after if edge is self.before else self.before


def corners(piece: Piece) -> Iterator[Corner]:
    """All corners, in order; the first is at the start of the first edge."""
    edges = piece.edges
    for index, edge in enumerate(edges):
        yield Corner(piece, edges[index - 1], edge)


def corner_at_start(piece: Piece, name: str) -> Corner:
    """The corner at which an edge begins."""
    index = place_of(piece, name)
    return Corner(piece, piece.edges[index - 1], piece.edges[index])


def corner_at_end(piece: Piece, name: str) -> Corner:
    """The corner at which an edge ends."""
    index = place_of(piece, name)
    return Corner(piece, piece.edges[index], piece.edges[(index + 1) % len(piece.edges)])


def place_of(piece: Piece, name: str) -> int:
    """The place of an edge in the order round its piece."""
    return next(k for k, edge in enumerate(piece.edges) if edge.name == name)
