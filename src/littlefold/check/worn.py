"""Openings and girths as worn: parts counted by the rule of `draft/worn.py`, laps taken off, slits added."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.draft.model import Cutting, EdgeKind
from littlefold.draft.worn import times_round

from .corners import place_of
from .once import once
from .roles import edges_with

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.draft.model import DraftEdge, EdgeRef, Inside
    from littlefold.pattern.model import Pattern, Piece

    from .roles import Role

SLITS: Final = frozenset({"slit", "placket", "opening"})
# A slit both ends of which lie this near to an edge runs along it: its other side is on the other half [mm].
ON_EDGE: Final = 0.5


@dataclass(frozen=True, slots=True)
class Opening:
    """One opening as worn; for a limb, that of one side.

    Attributes:
        parts: The edges that make it.
        closed: Its length with laps buttoned and slits shut, flat and not drawn in [mm].
        slits: What its slits and buttoned edges add when they are opened [mm].
        casings: How much of it is a casing, which an elastic or a cord draws in [mm].
        edges: How long its edges alone are, laps taken off, whatever else the recipe counts to the opening [mm].
    """

    parts: tuple[tuple[Piece, DraftEdge], ...]
    closed: float
    slits: float
    casings: float
    edges: float

    @property
    def opened(self) -> float:
        """Its length with everything undone [mm]."""
        return self.closed + self.slits

    @property
    def drawn(self) -> float:
        """How much of it an elastic draws in, flat [mm]: its casings, or all of it where a band holds the elastic."""
        return self.casings if self.casings > 0 else self.closed

    def drawn_in_to(self, length: float) -> float:
        """Its length when what is drawn in is so long [mm]; straps and plain edges beside it stay as they are."""
        return self.closed - self.drawn + length


@once
def opening(pattern: Pattern, role: Role) -> Opening | None:
    """The opening that the edges of a role make, or None where the garment has none.

    Where the recipe states how large it is fully undone (straps that no edge shows), that holds.
    """
    parts = edges_with(pattern, role)
    if not parts:
        return None
    counted = tuple(zip(parts, _times_round(pattern, parts), strict=True))
    laps = sum(edge_lap(piece, edge) * times for (piece, edge), times in counted)
    slits = sum(undone(piece, edge) * times for (piece, edge), times in counted)
    stated = pattern.draft.openings.get(role.value)
    edges = _flat(pattern, counted) - laps
    closed = edges if stated is None else stated - slits
    cased = [part for part in counted if part[0][1].kind is EdgeKind.CASING]
    return Opening(parts, closed, slits, _flat(pattern, cased), edges)


def _times_round(pattern: Pattern, parts: tuple[tuple[Piece, DraftEdge], ...]) -> tuple[int, ...]:
    """How often each edge of an opening is counted."""
    places = [(piece, next(k for k, own in enumerate(piece.edges) if own is edge)) for piece, edge in parts]
    return times_round(places, pattern.seams)


def _flat(pattern: Pattern, counted: Iterable[tuple[tuple[Piece, DraftEdge], int]]) -> float:
    """How long edges are together, each counted so often [mm]."""
    return sum(stitched(pattern, piece, edge) * times for (piece, edge), times in counted)


def times(cutting: Cutting) -> int:
    """How many times the drawn edge is cut: both halves of a fold, every copy."""
    return cutting.layers


def stitched(pattern: Pattern, piece: Piece, edge: DraftEdge) -> float:
    """The length to which an edge is sewn [mm]: its own, or its share of the edge it is gathered on to."""
    for seam in pattern.seams_of(piece.name, edge.name):
        if seam.gather and holds(seam.second, piece, edge) and seam.second_length > 0:
            return edge.sewn_length * seam.first_length / seam.second_length
    return edge.sewn_length


def holds(run: tuple[EdgeRef, ...], piece: Piece, edge: DraftEdge) -> bool:
    """Whether an edge belongs to a run."""
    return any(ref.piece == piece.name and ref.edge == edge.name for ref in run)


def is_sewn(pattern: Pattern, piece: Piece, edge: DraftEdge) -> bool:
    """Whether any seam takes an edge in."""
    return bool(pattern.seams_of(piece.name, edge.name))


def neighbours(piece: Piece, edge: DraftEdge) -> tuple[DraftEdge, DraftEdge]:
    """The edges before and after an edge."""
    index = place_of(piece, edge.name)
    return piece.edges[index - 1], piece.edges[(index + 1) % len(piece.edges)]


def edge_lap(piece: Piece, edge: DraftEdge) -> float:
    """How much of an edge laps over a partner at its ends [mm]."""
    return sum(near.lap for near in neighbours(piece, edge) if near.kind is EdgeKind.BUTTON)


def undone(piece: Piece, edge: DraftEdge) -> float:
    """What an opening gains where an edge is counted once, when its slits and buttoned edges are undone [mm]."""
    slits = sum(line.path.length() * slit_sides(piece, line) for line in slits_at(piece, edge))
    buttons = sum(near.path.length() for near in neighbours(piece, edge) if near.kind is EdgeKind.BUTTON)
    return slits + buttons


def slits_at(piece: Piece, edge: DraftEdge) -> Iterator[Inside]:
    """The slits, plackets and openings that open on to an edge."""
    return (line for line in piece.inside if line.kind in SLITS and line.edge == edge.name)


def slit_sides(piece: Piece, slit: Inside) -> int:
    """How many sides of a slit lie on the drawn piece: one where it runs along a fold or a seam."""
    ends = (slit.path.start, slit.path.end)
    along = (all(edge.path.distance(end) <= ON_EDGE for end in ends) for edge in piece.edges)
    return 1 if any(along) else 2
