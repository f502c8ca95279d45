"""The straight segment."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot
from typing import TYPE_CHECKING

from .bounds import Bounds
from .point import Vector
from .tolerance import FLATNESS

if TYPE_CHECKING:
    from .affine import Affine
    from .point import Point


@dataclass(frozen=True, slots=True)
class Line:
    """A straight segment from one point to another; see `segment.Segment` for what its methods mean."""

    start: Point
    end: Point

    def at(self, t: float) -> Point:
        """The point at a fraction of the way."""
        if t == 1.0:
            return self.end
        return self.start.towards(self.end, t)

    def derivative(self, t: float) -> Vector:  # noqa: ARG002 - it is the same everywhere
        """The whole way from start to end [mm]."""
        return self.end - self.start

    def tangent(self, t: float) -> Vector:  # noqa: ARG002 - it is the same everywhere
        """The direction, of length 1; ZeroDivisionError if both ends are one point."""
        right, up = self.end.x - self.start.x, self.end.y - self.start.y
        length = hypot(right, up)
        return Vector(right / length, up / length)

    def curvature(self, t: float) -> float:  # noqa: ARG002 - it is the same everywhere
        """Zero: it does not bend."""
        return 0.0

    def length(self) -> float:
        """The distance between the ends [mm]."""
        return self.start.distance(self.end)

    def length_to(self, t: float) -> float:
        """The length from the start to a fraction of the way [mm]."""
        return t * self.start.distance(self.end)

    def parameter_at(self, length: float) -> float:
        """The fraction of the way at a length from the start [mm], clamped to the segment."""
        whole = self.length()
        return min(1.0, max(0.0, length / whole)) if whole > 0 else 0.0

    def split(self, t: float) -> tuple[Line, Line]:
        """The two parts before and after a fraction of the way."""
        middle = self.at(t)
        return Line(self.start, middle), Line(middle, self.end)

    def part(self, t0: float, t1: float) -> Line:
        """The part between two fractions of the way."""
        return Line(self.at(t0), self.at(t1))

    def reversed(self) -> Line:
        """The same travelled the other way."""
        return Line(self.end, self.start)

    def bounds(self) -> Bounds:
        """The upright rectangle that it just fills."""
        p, q = self.start, self.end
        return Bounds(min(p.x, q.x), min(p.y, q.y), max(p.x, q.x), max(p.y, q.y))

    def nearest(self, point: Point) -> float:
        """The fraction of the way at which it lies nearest to a point."""
        x, y = self.start.x, self.start.y
        right, up = self.end.x - x, self.end.y - y
        square = right * right + up * up
        along = (point.x - x) * right + (point.y - y) * up
        return min(1.0, max(0.0, along / square)) if square > 0 else 0.0

    def flatten(self, tolerance: float = FLATNESS) -> tuple[Point, ...]:  # noqa: ARG002 - it is flat
        """The two ends."""
        return (self.start, self.end)

    def coordinates(self, tolerance: float = FLATNESS) -> list[float]:  # noqa: ARG002 - it is flat
        """The same points as plain numbers, x and y in turn."""
        return [self.start.x, self.start.y, self.end.x, self.end.y]

    def transformed(self, affine: Affine) -> Line:
        """What a map of the plane makes of it."""
        return Line(affine.apply(self.start), affine.apply(self.end))

    def swept_area(self) -> float:
        """The area swept by the ray from the origin [mm2]."""
        return (self.start.x * self.end.y - self.start.y * self.end.x) / 2

    def ending(self, start: Point, end: Point) -> Line:
        """The segment between two other ends."""
        return Line(start, end)
