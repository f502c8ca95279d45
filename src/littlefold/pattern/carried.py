"""A line that goes on straight beyond both its ends, as a ruler laid along them would carry it on."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING, NamedTuple

from littlefold.geometry import Line, Path
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from littlefold.geometry import Point, Vector


class Footing(NamedTuple):
    """A place on a line: the point, the direction of travel, and the curvature there [1/mm]."""

    point: Point
    along: Vector
    bend: float


@dataclass(frozen=True, slots=True)
class Carried:
    """A path carried on; places are lengths from its start [mm], below 0 or above `length` outside it."""

    path: Path

    @property
    def length(self) -> float:
        """The length of the path itself [mm]."""
        return self.path.length()

    def reversed(self) -> Carried:
        """The same travelled the other way; the place s becomes `length` - s."""
        return Carried(self.path.reversed())

    def at(self, place: float) -> Point:
        """The point at a place."""
        if place <= 0:
            return self.path.start + self.path.start_tangent * place
        beyond = place - self.length
        return self.path.end + self.path.end_tangent * beyond if beyond >= 0 else self.path.at_length(place)

    def tangent(self, place: float) -> Vector:
        """The direction of travel at a place, of length 1."""
        if place <= 0:
            return self.path.start_tangent
        if place >= self.length:
            return self.path.end_tangent
        return self.path.tangent_at_length(place)

    def going(self, place: float) -> tuple[Point, Vector]:
        """The point at a place and the direction of travel there, looked for along the path once."""
        if not 0 < place < self.length:
            return self.at(place), self.tangent(place)
        index, t = self.path.locate(place)
        segment = self.path.segments[index]
        return segment.at(t), segment.tangent(t)

    def part(self, start: float, end: float) -> Path:
        """What lies between two places, start < end.

        Raises:
            ValueError: Nothing lies between them.
        """
        whole = self.length
        low, high = max(0.0, start), min(whole, end)
        if high - low <= SAME_POINT:
            return Path((Line(self.at(start), self.at(end)),))
        path = self.path if low == 0.0 and high == whole else self.path.part(low, high)
        if low - start > SAME_POINT:
            path = _begun(path, self.at(start))
        if end - high > SAME_POINT:
            path = _gone_on(path, self.at(end))
        return path

    def carried_on(self, before: float, after: float) -> Path:
        """The whole path with straight pieces before its start and beyond its end, each so long [mm] or 0."""
        path = self.path
        if before > SAME_POINT:
            path = _begun(path, path.start + path.start_tangent * -before)
        if after > SAME_POINT:
            path = _gone_on(path, path.end + path.end_tangent * after)
        return path

    def foot(self, point: Point) -> float:
        """The place that lies nearest to a point."""
        if self.path.is_straight:
            return (point - self.path.start).dot(self.path.start_tangent)
        outside, away = self._foot_outside(point)
        found = self.path.closest(point, away)
        return outside if found is None else self.path.length_to(*found[:2])

    def footing(self, point: Point) -> Footing:
        """The place that lies nearest to a point, as a footing."""
        outside, away = self._foot_outside(point)
        found = self.path.closest(point, away)
        if found is None:
            return Footing(self.at(outside), self.tangent(outside), 0.0)
        segment, t = self.path.segments[found[0]], found[1]
        return Footing(segment.at(t), segment.tangent(t), segment.curvature(t))

    def _foot_outside(self, point: Point) -> tuple[float, float]:
        """The place on the straight pieces beyond the ends nearest to a point, and how far off it is [mm]."""
        path, place, away = self.path, 0.0, inf
        before = (point - path.start).dot(path.start_tangent)
        if before < 0:
            place, away = before, abs(path.start_tangent.cross(point - path.start))
        after = (point - path.end).dot(path.end_tangent)
        aside = abs(path.end_tangent.cross(point - path.end))
        return (self.length + after, aside) if after > 0 and aside < away else (place, away)

    def straight_start(self) -> float:
        """The place up to which it is one straight line from its start: the length of a first line, or 0."""
        first = self.path.segments[0]
        return first.length() if isinstance(first, Line) else 0.0


def _begun(path: Path, start: Point) -> Path:
    """A path begun earlier, at a point straight behind its start: one line with a first line."""
    first = path.segments[0]
    if isinstance(first, Line):
        return Path((Line(start, first.end), *path.segments[1:]))
    return Path((Line(start, first.start), *path.segments))


def _gone_on(path: Path, end: Point) -> Path:
    """A path gone on to a point straight beyond its end: one line with a last line."""
    last = path.segments[-1]
    if isinstance(last, Line):
        return Path((*path.segments[:-1], Line(last.start, end)))
    return Path((*path.segments, Line(last.end, end)))
