"""A line that goes on straight beyond both its ends, as a ruler laid along them would carry it on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry import Line, Path

if TYPE_CHECKING:
    from littlefold.geometry import Point, Vector


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
        pieces = []
        if start < 0:
            pieces.append(_straight(self.at(start), self.at(min(0.0, end))))
        low, high = max(0.0, start), min(self.length, end)
        if low < high:
            pieces.append(self.path if (low, high) == (0.0, self.length) else self.path.part(low, high))
        if end > self.length:
            pieces.append(_straight(self.at(max(start, self.length)), self.at(end)))
        return Path.joined(*pieces)

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

    def straight_start(self) -> float:
        """The place up to which it is one straight line from its start: the length of a first line, or 0."""
        first = self.path.segments[0]
        return first.length() if isinstance(first, Line) else 0.0


def _straight(start: Point, end: Point) -> Path:
    return Path((Line(start, end),))
