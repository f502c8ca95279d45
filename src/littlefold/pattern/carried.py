"""A line that goes on straight beyond both its ends, as a ruler laid along them would carry it on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from littlefold.geometry import Line, Path
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from littlefold.geometry import Point, Segment, Vector


class Footing(NamedTuple):
    """A place on a line: the point, the direction of travel, and the curvature there [1/mm]."""

    point: Point
    along: Vector
    bend: float


@dataclass(frozen=True, slots=True)
class Carried:
    """A path carried on; places are lengths from its start [mm], below 0 or above `length` outside it."""

    path: Path
    length: float

    @classmethod
    def of(cls, path: Path) -> Carried:
        """The path carried on beyond its ends."""
        return cls(path, path.length())

    def reversed(self) -> Carried:
        """The same travelled the other way; the place s becomes `length` - s."""
        return Carried(self.path.reversed(), self.length)

    def at(self, place: float) -> Point:
        """The point at a place."""
        if place <= 0:
            return self.path.start + self.path.start_tangent * place
        if place >= self.length:
            return self.path.end + self.path.end_tangent * (place - self.length)
        return self.path.at_length(place)

    def tangent(self, place: float) -> Vector:
        """The direction of travel at a place, of length 1."""
        if place <= 0:
            return self.path.start_tangent
        if place >= self.length:
            return self.path.end_tangent
        return self.path.tangent_at_length(place)

    def part(self, start: float, end: float) -> Path:
        """What lies between two places, start < end.

        Raises:
            ValueError: Nothing lies between them.
        """
        low, high = max(0.0, start), min(self.length, end)
        if high - low <= SAME_POINT:
            return Path((Line(self.at(start), self.at(end)),))
        path = self.path if (low, high) == (0.0, self.length) else self.path.part(low, high)
        if start < 0:
            path = _begun(path, self.at(start))
        if end > self.length:
            path = _begun(path.reversed(), self.at(end)).reversed()
        return path

    def foot(self, point: Point) -> float:
        """The place that lies nearest to a point."""
        nearest = self.path.nearest(point)
        best, place = nearest.distance, nearest.length
        before = (point - self.path.start).dot(self.path.start_tangent)
        if before < 0 and self.at(before).distance(point) < best:
            best, place = self.at(before).distance(point), before
        after = (point - self.path.end).dot(self.path.end_tangent)
        if after > 0 and self.at(self.length + after).distance(point) < best:
            place = self.length + after
        return place

    def footing(self, point: Point) -> Footing:
        """The place that lies nearest to a point, as a footing."""
        start, end = self.path.start, self.path.end
        before = (point - start).dot(self.path.start_tangent)
        after = (point - end).dot(self.path.end_tangent)
        found = [_on_segment(segment, point) for segment in self.path.segments]
        if before < 0:
            found.append(Footing(self.at(before), self.path.start_tangent, 0.0))
        if after > 0:
            found.append(Footing(end + self.path.end_tangent * after, self.path.end_tangent, 0.0))
        return min(found, key=lambda footing: footing.point.distance(point))

    def straight_start(self) -> float:
        """The place up to which it is one straight line from its start: the length of a first line, or 0."""
        first = self.path.segments[0]
        return first.length() if isinstance(first, Line) else 0.0


def _on_segment(segment: Segment, point: Point) -> Footing:
    t = segment.nearest(point)
    return Footing(segment.at(t), segment.tangent(t), segment.curvature(t))


def _begun(path: Path, start: Point) -> Path:
    """A path begun earlier, at a point straight behind its start: one line with a first line."""
    first = path.segments[0]
    if isinstance(first, Line):
        return Path((Line(start, first.end), *path.segments[1:]))
    return Path((Line(start, first.start), *path.segments))
