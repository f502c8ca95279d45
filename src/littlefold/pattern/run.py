"""A run: edges of one or several pieces, travelled one after the other as one line.

`back.neck then front.neck` goes from the centre back over the shoulder to the centre front, whichever way
round their pieces the two necks are drawn.  So every edge of a run has a direction, found from how the edges
hang together (`likeness`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from littlefold.draft.model import EdgeKind
from littlefold.geometry.once import once

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.draft.model import DraftEdge, DraftPiece, DraftSeam, EdgeRef


class EdgeEnd(NamedTuple):
    """The start or the end of an edge of a piece."""

    piece: str
    edge: str
    at_start: bool

    @property
    def other(self) -> EdgeEnd:
        """The other end of the same edge."""
        return EdgeEnd(self.piece, self.edge, not self.at_start)


@dataclass(frozen=True, slots=True)
class Leg:
    """One edge of a run: it is entered at `enters` and begins `start` mm along the run.

    `length` is that at which it is sewn; `drawn` is longer where pleats or tucks are folded away, which are
    taken to lie evenly along it.
    """

    enters: EdgeEnd
    start: float
    length: float
    drawn: float

    @property
    def leaves(self) -> EdgeEnd:
        """The end at which it is left."""
        return self.enters.other

    def on_edge(self, place: float) -> float:
        """The place on the edge, from the start of the edge [mm], of a place on the run."""
        within = min(max(place - self.start, 0.0), self.length) * self.drawn / self.length
        return within if self.enters.at_start else self.drawn - within

    def on_run(self, at: float) -> float:
        """The place on the run of a place on the edge [mm from the start of the edge]."""
        within = at if self.enters.at_start else self.drawn - at
        return self.start + within * self.length / self.drawn


@dataclass(frozen=True, slots=True)
class Run:
    """Edges in order, each with its direction."""

    legs: tuple[Leg, ...]

    @property
    def length(self) -> float:
        """The stitch length from end to end as sewn [mm]."""
        return sum(leg.length for leg in self.legs)

    @property
    def enters(self) -> EdgeEnd:
        """The end at which it begins."""
        return self.legs[0].enters

    @property
    def leaves(self) -> EdgeEnd:
        """The end at which it stops."""
        return self.legs[-1].leaves

    def leg_at(self, place: float) -> Leg:
        """The leg on which a place of the run lies; the last one beyond the end."""
        return next((leg for leg in self.legs if place <= leg.start + leg.length), self.legs[-1])

    def reversed(self) -> Run:
        """The same travelled the other way."""
        whole = self.length
        return Run(
            tuple(
                Leg(leg.leaves, whole - leg.start - leg.length, leg.length, leg.drawn)
                for leg in reversed(self.legs)
            )
        )


@dataclass(frozen=True)
class Surroundings:
    """The pieces by name and the seams between them, to see what lies beside an edge.

    What is looked up again and again is put in order once: it has no slots.
    """

    pieces: Mapping[str, DraftPiece]
    seams: tuple[DraftSeam, ...]

    @once
    def _edges(self) -> Mapping[tuple[str, str], DraftEdge]:
        """The edges by the names of their piece and themselves."""
        return {(name, edge.name): edge for name, piece in self.pieces.items() for edge in piece.edges}

    @once
    def _following(self) -> Mapping[tuple[str, str], str]:
        """The name of the edge that follows an edge round its piece."""
        return {
            (name, edge.name): after.name
            for name, piece in self.pieces.items()
            for edge, after in zip(piece.edges, (*piece.edges[1:], piece.edges[0]), strict=True)
        }

    @once
    def _before(self) -> Mapping[tuple[str, str], str]:
        """The name of the edge that an edge follows round its piece."""
        return {(piece, after): edge for (piece, edge), after in self._following.items()}

    @once
    def _sewn(self) -> frozenset[frozenset[tuple[str, str]]]:
        """The pairs of edges that lie on different sides of one seam."""
        return frozenset(pair for seam in self.seams for pair in _pairs(seam))

    @once
    def _runs(self) -> tuple[frozenset[tuple[str, str]], ...]:
        """The runs of more than one edge."""
        runs = (run for seam in self.seams for run in (seam.first, seam.second) if len(run) > 1)
        return tuple(frozenset((ref.piece, ref.edge) for ref in run) for run in runs)

    def edge(self, piece: str, name: str) -> DraftEdge:
        """An edge by the names of its piece and itself; KeyError where there is none."""
        return self._edges[piece, name]

    def has(self, ref: EdgeRef) -> bool:
        """Whether there is such an edge."""
        return (ref.piece, ref.edge) in self._edges

    def neighbour(self, end: EdgeEnd) -> EdgeEnd:
        """The end of the next edge round the piece that stands at the same corner."""
        beside = self._before if end.at_start else self._following
        return EdgeEnd(end.piece, beside[end.piece, end.edge], not end.at_start)

    def point(self, end: EdgeEnd) -> str:
        """The name of the point at an end without that of its drawing, or nothing."""
        edge = self.edge(end.piece, end.edge)
        return (edge.start if end.at_start else edge.end).rpartition(".")[2]

    def are_sewn(self, first: EdgeEnd, second: EdgeEnd) -> bool:
        """Whether two edges lie on different sides of one seam."""
        return frozenset(((first.piece, first.edge), (second.piece, second.edge))) in self._sewn

    def are_joined(self, first: EdgeEnd, second: EdgeEnd) -> bool:
        """Whether two edges follow each other in one run, as the two armholes do that take a sleeve."""
        names = {(first.piece, first.edge), (second.piece, second.edge)}
        return len(names) > 1 and any(names <= run for run in self._runs)

    def is_centre(self, end: EdgeEnd) -> bool:
        """Whether an edge lies on the middle of the body: a fold, or where a pair meets its mirror image."""
        if self.edge(end.piece, end.edge).kind is EdgeKind.FOLD:
            return True
        if not self.pieces[end.piece].cutting.pair:
            return False
        return self.edge(end.piece, end.edge).kind is EdgeKind.BUTTON or self.are_sewn(end, end)

    def likeness(self, first: EdgeEnd, second: EdgeEnd) -> int:
        """How well two edge ends belong together; 0 where nothing says so.

        Neighbours that are sewn to each other, or make one run, say most; then neighbours that both lie on
        the middle line, or have the same name; then neighbours of the same kind; then the same letter at the
        corner.
        """
        a, b = self.neighbour(first), self.neighbour(second)
        kinds = self.edge(a.piece, a.edge).kind, self.edge(b.piece, b.edge).kind
        sewn = self.are_sewn(a, b) and (a.piece, a.edge) != (b.piece, b.edge)
        score = 8 if sewn or self.are_joined(a, b) else 0
        score += 4 if a.edge == b.edge or (self.is_centre(a) and self.is_centre(b)) else 0
        score += 2 if kinds[0] is kinds[1] and kinds[0] is not EdgeKind.SEAM else 0
        return score + (1 if self.point(first) and self.point(first) == self.point(second) else 0)

    def joint(self, first: EdgeEnd, second: EdgeEnd) -> int:
        """How well one edge of a run goes on in the next: at one corner of a piece, or across a seam."""
        if self.neighbour(first) == second:
            return 16
        return self.likeness(first, second)

    def run(self, refs: tuple[EdgeRef, ...]) -> Run:
        """The edges as one run; the first goes the way that suits the second, the others follow."""
        ends = list(self._directed(refs))
        legs, start = [], 0.0
        for end in ends:
            edge = self.edge(end.piece, end.edge)
            legs.append(Leg(end, start, edge.sewn_length, edge.path.length()))
            start += edge.sewn_length
        return Run(tuple(legs))

    def _directed(self, refs: tuple[EdgeRef, ...]) -> Iterator[EdgeEnd]:
        """The end at which each edge is entered."""
        ways = [EdgeEnd(ref.piece, ref.edge, at_start=True) for ref in refs]
        enters = ways[0]
        if len(ways) > 1:
            enters = max(
                _both(ways[0]), key=lambda end: max(self.joint(end.other, n) for n in _both(ways[1]))
            )
        yield enters
        for way in ways[1:]:
            leaving = enters.other
            enters = max(_both(way), key=lambda end: self.joint(leaving, end))
            yield enters


def _both(end: EdgeEnd) -> tuple[EdgeEnd, EdgeEnd]:
    return (end, end.other)


def _pairs(seam: DraftSeam) -> Iterator[frozenset[tuple[str, str]]]:
    return (
        frozenset(((first.piece, first.edge), (second.piece, second.edge)))
        for first in seam.first
        for second in seam.second
    )
