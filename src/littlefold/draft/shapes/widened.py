"""An outline widened: all of it, or the part between two places, evenly and in one direction.

    |     |         Between `low` and `high`, counted along the direction, everything is stretched; what lies
----+-----+----     before stays, what lies beyond moves on.  So the cuts at both ends of the stretch stay closed.
   low   high
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf, isfinite
from typing import TYPE_CHECKING

from littlefold.draft.shapes.cut import joined_up
from littlefold.draft.shapes.shape import SLIVER, Shape, ShapeEdge
from littlefold.geometry import Affine, Arc, Path, Point, Vector, curve_between
from littlefold.geometry.intersection import meet_line

if TYPE_CHECKING:
    from littlefold.geometry import Segment

# Arcs are stretched in parts no longer than this [rad]: cubics follow them to 1e-6 of the radius.
ARC_PART = 0.4

ORIGIN = Point(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Widening:
    """A stretch by `factor` along a unit vector between two places on it [mm]; the point `fixed` stays."""

    along: Vector
    factor: float
    fixed: Point
    low: float = -inf
    high: float = inf

    def by(self, factor: float) -> Widening:
        """The same stretch with another factor."""
        return replace(self, factor=factor)

    def where(self, place: Point) -> float:
        """How far along the direction a point lies [mm]."""
        return (place - ORIGIN).dot(self.along)

    def place(self, place: Point) -> Point:
        """Where a point goes."""
        return self.motion(self.where(place)).apply(place)

    def motion(self, where: float) -> Affine:
        """What happens to everything that lies so far along the direction."""
        u, more = self.along, self.factor - 1
        home = more * self._held(self.where(self.fixed))
        if not self.low <= where <= self.high:
            return Affine.translation(u * (more * self._held(where) - home))
        return Affine(
            1 + more * u.x * u.x,
            more * u.x * u.y,
            more * u.x * u.y,
            1 + more * u.y * u.y,
            -u.x * home,
            -u.y * home,
        )

    def _held(self, where: float) -> float:
        """A place along the direction, held between the ends of the stretch."""
        return min(max(where, self.low), self.high)

    def path(self, path: Path) -> Path:
        """A path widened; it is parted where it enters and leaves the stretch."""
        parts = _parted(without_arcs(path), self)
        return Path.joined(*(part.transformed(self.motion(self._middle(part))) for part in parts))

    def _middle(self, part: Path) -> float:
        """Where a part lies that is on one side of each end of the stretch."""
        return self.where(part.at_length(part.length() / 2))

    def shape(self, shape: Shape) -> Shape:
        """An outline with all that is drawn on it, widened."""
        edges = joined_up([self._edge(edge) for edge in shape.edges])
        points = {name: self.place(place) for name, place in shape.points.items()}
        return Shape(edges, points, {name: self.path(path) for name, path in shape.lines.items()})

    def _edge(self, edge: ShapeEdge) -> ShapeEdge:
        """An edge widened; its folds begin and end at the places to which theirs went."""
        path = self.path(edge.path)
        folds = tuple((self._new(a, edge.path, path), self._new(b, edge.path, path)) for a, b in edge.folds)
        return ShapeEdge(edge.name, path, folds)

    def _new(self, at: float, before: Path, after: Path) -> float:
        """Where on the path after it a length along the path before it lies [mm]."""
        return after.nearest(self.place(before.at_length(at))).length


def _parted(path: Path, widening: Widening) -> list[Path]:
    """A path cut where it crosses the ends of the stretch."""
    across = widening.along.turned_left()
    limits = [limit for limit in (widening.low, widening.high) if isfinite(limit)]
    whole = path.length()
    cuts = sorted(
        meeting.first_length
        for limit in limits
        for meeting in meet_line(path, ORIGIN + widening.along * limit, across)
        if SLIVER < meeting.first_length < whole - SLIVER
    )
    marks = [0.0, *cuts, whole]
    return [path.part(a, b) for a, b in pairwise(marks) if b - a > SLIVER] if cuts else [path]


def without_arcs(path: Path) -> Path:
    """The path with cubics instead of arcs, which a stretch would make ellipses of."""
    return Path.joined(*(Path(_cubics(segment)) for segment in path.segments))


def _cubics(segment: Segment) -> tuple[Segment, ...]:
    if not isinstance(segment, Arc):
        return (segment,)
    count = int(abs(segment.sweep) / ARC_PART) + 1
    arcs = [segment.part(k / count, (k + 1) / count) for k in range(count)]
    return tuple(curve_between(arc.start, arc.end, arc.tangent(0.0), arc.tangent(1.0)) for arc in arcs)
