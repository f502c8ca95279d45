"""The pattern: pieces with stitch lines, cutting lines, notches and grain, and the seams that join them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from littlefold.geometry import Vector
from littlefold.geometry.once import once
from littlefold.pattern.simple import bare, is_sliver, polygon
from littlefold.pattern.turn import Turn, turn_lines

if TYPE_CHECKING:
    from collections.abc import Hashable, Mapping

    from shapely import MultiPolygon, Polygon

    from littlefold.draft.model import Cutting, Draft, DraftEdge, EdgeRef, Inside
    from littlefold.geometry import Path, Point
    from littlefold.pattern.run import EdgeEnd
    from littlefold.pattern.unfold import Half
    from littlefold.problem import Place, Problem


@dataclass(frozen=True, slots=True)
class Notch:
    """A mark at which edges meet.

    It stands on the stitch line at `foot`, `at` millimetres of stitch length from the start of its edge, and
    points `outward` into the allowance, square to the edge; `count` 1 is single (front), 2 double (back).
    """

    edge: str
    at: float
    count: int
    foot: Point
    outward: Vector


@dataclass(frozen=True)
class Outline:
    """The closed stitch line and the closed cutting line of a shape, both counter-clockwise.

    Tracing and many checks ask for the polygons, so they are made once: it has no slots.
    """

    stitch: Path
    cut: Path

    @classmethod
    def round_simple(cls, stitch: Path, cut: Path, within: Polygon) -> Outline:
        """An outline of whose stitch line the polygon has been made already, and found simple."""
        outline = cls(stitch, cut)
        outline.__dict__.update(within=within, stitch_is_simple=True)
        return outline

    @once
    def within(self) -> Polygon:
        """What the stitch line encloses."""
        return polygon(self.stitch)

    @once
    def around(self) -> Polygon:
        """What the cutting line encloses."""
        return polygon(self.cut)

    @once
    def stitch_is_simple(self) -> bool:
        """Whether the stitch line encloses something and does not meet itself."""
        return bool(self.within.is_valid)

    @once
    def cut_is_simple(self) -> bool:
        """Whether the cutting line encloses something and does not meet itself."""
        return bool(self.around.is_valid)

    @once
    def bare(self) -> Polygon | MultiPolygon:
        """What the stitch line encloses and the cutting line does not; both must be simple."""
        return bare(self.within, self.around)

    def is_round(self) -> bool:
        """Whether the cutting line is simple and goes round a simple stitch line, or lies on it."""
        return self.cut_is_simple and is_sliver(self.bare, self.within)


@dataclass(frozen=True)
class Piece:
    """One piece of the pattern, as drawn (half of it where it lies on a fold).

    Attributes:
        name: The name in the recipe.
        title: The name on the paper.
        cutting: How often and how it is cut.
        cloth: `main`, `lining`, `interfacing`, or a cloth of the recipe's own.
        edges: In order, counter-clockwise; their paths join to the stitch outline.
        outline: As drawn.
        half: What is unfolded to the whole piece; None where there is no fold, or none that can be unfolded.
        grain: The ends of the grain arrow.
        notches: On the stitch line, in order.
        inside: Slits, buttonholes, darts, pleats ...
        marks: Words at a point.
        place: Where the recipe states the piece.
    """

    name: str
    title: str
    cutting: Cutting
    cloth: str
    edges: tuple[DraftEdge, ...]
    outline: Outline
    half: Half | None
    grain: tuple[Point, Point]
    notches: tuple[Notch, ...]
    inside: tuple[Inside, ...]
    marks: tuple[tuple[str, Point], ...]
    place: Place

    @once
    def unfolded(self) -> Outline:
        """The whole piece as cut from cloth; the same as `outline` where there is no fold."""
        return self.outline if self.half is None else self.half.unfolded()

    @once
    def grain_way(self) -> Vector:
        """The direction of the grain, of length 1; upwards where it has none."""
        way = self.grain[1] - self.grain[0]
        return way.unit() if way.length > 0 else Vector(0.0, 1.0)

    @once
    def folded(self) -> tuple[Turn, ...]:
        """Lines on which a hem, casing or button edge is turned over, to be drawn."""
        return turn_lines(self.edges, self.outline)

    @property
    def turns(self) -> tuple[Path, ...]:
        """The lines of `folded` alone."""
        return tuple(turn.path for turn in self.folded)

    def edge(self, name: str) -> DraftEdge:
        """The edge of that name.

        Raises:
            KeyError: The piece has no such edge.
        """
        for edge in self.edges:
            if edge.name == name:
                return edge
        raise KeyError(name)


@dataclass(frozen=True, slots=True)
class Seam:
    """Two runs of edges that are sewn together, measured on the stitch line [mm].

    `second_length - first_length` should be `ease` within `tolerance`, unless the second run is gathered.  `ends` are
    the ends of edges that meet where the seam begins and where it stops.
    """

    first: tuple[EdgeRef, ...]
    second: tuple[EdgeRef, ...]
    first_length: float
    second_length: float
    ease: float
    gather: bool
    tolerance: float
    matched: bool
    place: Place
    ends: tuple[tuple[EdgeEnd, EdgeEnd], ...]


@dataclass(frozen=True)
class Pattern:
    """All pieces and seams of a garment for one child; `draft` is where they come from.

    `answers` holds what has been found out about it, so that many checks may ask the same (see `check/once.py`).
    """

    draft: Draft
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    problems: tuple[Problem, ...] = ()
    answers: dict[Hashable, object] = field(default_factory=dict, init=False, repr=False, compare=False)

    def piece(self, name: str) -> Piece:
        """The piece of that name.

        Raises:
            KeyError: There is no such piece.
        """
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(name)

    def seams_of(self, piece: str, edge: str) -> tuple[Seam, ...]:
        """All seams that take in an edge, given by the names of its piece and itself."""
        return self._seams.get((piece, edge), ())

    @once
    def _seams(self) -> Mapping[tuple[str, str], tuple[Seam, ...]]:
        """The seams of each edge that is sewn."""
        found: dict[tuple[str, str], tuple[Seam, ...]] = {}
        for seam in self.seams:
            for ref in dict.fromkeys((*seam.first, *seam.second)):
                found[ref.piece, ref.edge] = (*found.get((ref.piece, ref.edge), ()), seam)
        return found
