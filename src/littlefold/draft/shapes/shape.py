"""A closed outline with what is drawn on it: the value that every operation takes and gives.

    Shape = edges, counter-clockwise and head to tail, + named points and lines that lie on it or in it

Nothing here knows the desk; operations are arithmetic from shapes to shapes.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import accumulate
from typing import TYPE_CHECKING

from littlefold.draft.outline import CORNER
from littlefold.draft.shapes.region import Region
from littlefold.geometry import Path
from littlefold.geometry.once import hand_on, once
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from littlefold.geometry import Affine, Point

Fold = tuple[float, float]
"""A stretch of an edge that is folded away when it is sewn: from and to [mm along the edge]."""

# A piece of an edge shorter than this [mm] is no piece: less than the thickness of paper.
SLIVER = 1e-4


@dataclass(frozen=True, slots=True)
class ShapeEdge:
    """One edge of an outline, and where pleats or tucks fold it away."""

    name: str
    path: Path
    folds: tuple[Fold, ...] = ()

    @property
    def length(self) -> float:
        """The length as drawn [mm]."""
        return self.path.length()

    def part(self, start: float, end: float) -> ShapeEdge:
        """The part between two lengths [mm], with the folds in it."""
        whole = self.length
        start, end = max(0.0, start), min(whole, end)
        path = self.path if start <= SAME_POINT and end >= whole - SAME_POINT else self.path.part(start, end)
        clipped = ((max(a, start) - start, min(b, end) - start) for a, b in self.folds)
        return ShapeEdge(self.name, path, tuple((a, b) for a, b in clipped if b - a > SLIVER))

    def touches(self, place: Point) -> bool:
        """Whether a point lies on it, to the width of a corner."""
        return self.path.closest(place, CORNER) is not None

    def moved(self, affine: Affine) -> ShapeEdge:
        """The edge moved or turned."""
        return replace(self, path=self.path.transformed(affine))

    def turned_over(self, affine: Affine) -> ShapeEdge:
        """The edge mirrored, and travelled the other way, so that it still runs counter-clockwise."""
        whole = self.length
        folds = tuple((whole - b, whole - a) for a, b in reversed(self.folds))
        return ShapeEdge(self.name, self.path.transformed(affine).reversed(), folds)

    def then(self, other: ShapeEdge) -> ShapeEdge:
        """This edge gone on with another, under this one's name."""
        whole = self.length
        folds = (*self.folds, *((a + whole, b + whole) for a, b in other.folds))
        return ShapeEdge(self.name, Path.joined(self.path, other.path), folds)


@dataclass(frozen=True, slots=True)
class Marks:
    """Points and lines by their short names."""

    points: Mapping[str, Point] = field(default_factory=dict)
    lines: Mapping[str, Path] = field(default_factory=dict)


@dataclass(frozen=True)
class Shape:
    """A closed outline with the named points and lines on it and in it.

    What is asked for often is worked out once and kept: so it has no slots.
    """

    edges: tuple[ShapeEdge, ...]
    points: Mapping[str, Point] = field(default_factory=dict)
    lines: Mapping[str, Path] = field(default_factory=dict)

    @once
    def outline(self) -> Path:
        """All edges as one closed path."""
        return Path.joined(*(edge.path for edge in self.edges))

    @once
    def region(self) -> Region:
        """What it goes round, to be asked what lies in it."""
        return Region.within(self.outline)

    @property
    def size(self) -> int:
        """Of how many segments and lines it is made: what an operation on it costs."""
        return len(self.lines) + sum(len(edge.path.segments) for edge in self.edges)

    @once
    def names(self) -> tuple[str, ...]:
        """The names of the edges, in order."""
        return tuple(edge.name for edge in self.edges)

    @property
    def marks(self) -> Marks:
        """The points and lines, apart from the outline."""
        return Marks(self.points, self.lines)

    @once
    def corners(self) -> tuple[float, ...]:
        """The lengths along the outline at which edges begin, and its whole length last [mm]."""
        return tuple(accumulate((edge.length for edge in self.edges), initial=0.0))

    def stretch(self, start: float, end: float) -> tuple[ShapeEdge, ...]:
        """The edges and parts of edges between two lengths along the outline [mm], going on over its start."""
        marks = self.corners
        whole = marks[-1]
        end = end if end > start else end + whole
        found = []
        for turn in (0.0, whole):
            for edge, mark in zip(self.edges, marks, strict=False):
                low, high = max(start, mark + turn), min(end, mark + turn + edge.length)
                if high - low > SLIVER:
                    found.append(edge.part(low - mark - turn, high - mark - turn))
        return tuple(found)

    def place(self, at: float) -> Point:
        """The point at a length along the outline [mm]."""
        marks = self.corners
        for edge, mark in zip(self.edges, marks, strict=False):
            if at <= mark + edge.length:
                return edge.path.at_length(max(0.0, at - mark))
        return self.edges[-1].path.end

    def edges_at(self, place: Point) -> tuple[str, ...]:
        """The names of the edges that a point lies on: one, or two at a corner."""
        return tuple(edge.name for edge in self.edges if edge.touches(place))

    def holding(self, marks: Marks) -> Shape:
        """This outline with those points that lie on or in it, and those lines that lie wholly in it."""
        region, taken = self.region, set(self.names)
        points = {name: place for name, place in marks.points.items() if region.holds(place)}
        lines = {
            name: path for name, path in marks.lines.items() if name not in taken and region.holds_line(path)
        }
        return self._with(points, lines)

    def _with(self, points: Mapping[str, Point], lines: Mapping[str, Path]) -> Shape:
        """The same outline with other points and lines; what has been worked out of the outline is told on."""
        other = Shape(self.edges, points, lines)
        for answer in ("outline", "region", "names", "corners"):
            hand_on(self, other, answer)
        return other

    def gaining(self, marks: Marks) -> Shape:
        """This shape with those points and lines beside its own that lie on or in it; itself where none is new."""
        points = {name: place for name, place in marks.points.items() if name not in self.points}
        lines = {name: path for name, path in marks.lines.items() if name not in self.lines}
        gained = self.holding(Marks(points, lines)) if points or lines else self
        if not gained.points and not gained.lines:
            return self
        return gained._with({**self.points, **gained.points}, {**self.lines, **gained.lines})  # noqa: SLF001 - its own kind

    def moved(self, affine: Affine) -> Shape:
        """Everything moved or turned."""
        marks = moved(self.marks, affine)
        return Shape(tuple(edge.moved(affine) for edge in self.edges), marks.points, marks.lines)

    def turned_over(self, affine: Affine) -> Shape:
        """Everything mirrored; the outline still runs counter-clockwise."""
        marks = moved(self.marks, affine)
        edges = tuple(edge.turned_over(affine) for edge in reversed(self.edges))
        return Shape(edges, marks.points, marks.lines)


def moved(marks: Marks, affine: Affine) -> Marks:
    """Points and lines moved, turned or mirrored."""
    return Marks(
        {name: affine.apply(place) for name, place in marks.points.items()},
        {name: path.transformed(affine) for name, path in marks.lines.items()},
    )


def same_place(one: Point, other: Point) -> bool:
    """Whether two points are one to the pencil."""
    return one.distance(other) <= CORNER


def numbered(names: Sequence[str]) -> list[str]:
    """The names, those that occur more than once with a number after them: `hem_1`, `hem_2`."""
    given: list[str] = []
    for name in names:
        given.append(_free(name, names, given) if names.count(name) > 1 else name)
    return given


def _free(name: str, names: Sequence[str], given: Sequence[str]) -> str:
    numbers = (f"{name}_{number}" for number in range(1, len(names) + len(given) + 2))
    return next(new for new in numbers if new not in given and new not in names)


def tidied(edges: Sequence[ShapeEdge], first: str) -> tuple[ShapeEdge, ...]:
    """Edges of a new outline: neighbours of one name made one, the rest numbered, the named one first."""
    merged = merged_alike(edges)
    start = next((index for index, edge in enumerate(merged) if edge.name == first), 0)
    turned = merged[start:] + merged[:start]
    names = numbered([edge.name for edge in turned])
    return tuple(replace(edge, name=name) for edge, name in zip(turned, names, strict=True))


def merged_alike(edges: Sequence[ShapeEdge]) -> list[ShapeEdge]:
    """Neighbours of the same name made one edge, the last and the first of the ring too."""
    merged: list[ShapeEdge] = []
    for edge in edges:
        if merged and merged[-1].name == edge.name:
            merged[-1] = merged[-1].then(edge)
        else:
            merged.append(edge)
    if len(merged) > 1 and merged[0].name == merged[-1].name:
        merged[0] = merged.pop().then(merged[0])
    return merged
