"""A chain of segments, travelled from its start to its end."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from functools import reduce
from itertools import accumulate, pairwise
from math import inf
from typing import TYPE_CHECKING

from .affine import Affine
from .bounds import Bounds
from .hull import box_round, least_distance
from .line import Line
from .once import once
from .point import Point, Vector
from .segment import is_within
from .tolerance import ANGLE, FLATNESS, SAME_POINT
from .winding import winding_number

if TYPE_CHECKING:
    from collections.abc import Iterable

    from .segment import Segment


@dataclass(frozen=True, slots=True)
class Nearest:
    """The place of a path that lies nearest to a point: length from the start, itself, how far off [mm]."""

    length: float
    point: Point
    distance: float


@dataclass(frozen=True)
class Path:
    """One or more segments, each beginning where the one before it ends (to `SAME_POINT`).

    Lengths are arc lengths from the start [mm].  A length outside the path is our own mistake: ValueError.  What many
    ask for (lengths, the box round it, its chords) is worked out once and kept: so it has no slots.
    """

    segments: tuple[Segment, ...]

    def __post_init__(self) -> None:
        if not self.segments:
            raise ValueError("a path has at least one segment")
        for before, after in pairwise(self.segments):
            here, there = before.end, after.start
            if here is not there and here.distance(there) > SAME_POINT:
                raise ValueError(f"a path is broken between {before.end} and {after.start}")

    @classmethod
    def joined(cls, *paths: Path) -> Path:
        """Paths laid end to end as one; ends that differ by rounding are made the same.

        Raises:
            ValueError: One does not begin where the one before it ends.
        """
        return cls.chained([segment for path in paths for segment in path.segments])

    @classmethod
    def chained(cls, segments: Iterable[Segment]) -> Path:
        """Segments laid end to end as one path; ends that differ by rounding are made the same.

        Raises:
            ValueError: One does not begin where the one before it ends.
        """
        chain = list(segments)
        for k in range(1, len(chain)):
            if chain[k - 1].end is not chain[k].start:
                chain[k - 1], chain[k] = _meeting(chain[k - 1], chain[k])
        return cls(tuple(chain))

    @classmethod
    def line_through(cls, *points: Point) -> Path:
        """Straight lines from point to point, at least two."""
        return cls(tuple(Line(p, q) for p, q in pairwise(points)))

    @property
    def start(self) -> Point:
        """Where it begins."""
        return self.segments[0].start

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self.segments[-1].end

    @once
    def start_tangent(self) -> Vector:
        """The direction in which it sets out, of length 1."""
        return self.segments[0].tangent(0.0)

    @once
    def end_tangent(self) -> Vector:
        """The direction in which it arrives, of length 1."""
        return self.segments[-1].tangent(1.0)

    @once
    def is_closed(self) -> bool:
        """Whether it comes back to its start."""
        start = self.start
        return start.distance(self.end) <= SAME_POINT and any(
            not is_within(segment, SAME_POINT) for segment in self.segments
        )

    @once
    def marks(self) -> tuple[float, ...]:
        """The arc lengths at which its segments begin, and its own [mm]."""
        return tuple(accumulate((segment.length() for segment in self.segments), initial=0.0))

    @once
    def is_straight(self) -> bool:
        """Whether it is made of lines in one direction only."""
        if not all(isinstance(segment, Line) for segment in self.segments):
            return False
        if len(self.segments) == 1:
            return True
        ways = [segment.tangent(0.0) for segment in self.segments if segment.length() > SAME_POINT]
        return all(abs(ways[0].cross(way)) <= ANGLE and ways[0].dot(way) > 0 for way in ways)

    def length(self) -> float:
        """The arc length [mm]."""
        return self.marks[-1]

    def length_to(self, index: int, t: float) -> float:
        """The arc length from the start to a parameter of the segment of an index [mm]."""
        return self.marks[index] + self.segments[index].length_to(t)

    def locate(self, length: float) -> tuple[int, float]:
        """The index of the segment at an arc length and the parameter there; at a joint, the one before it.

        Raises:
            ValueError: The length lies outside the path by more than `SAME_POINT`.
        """
        marks = self.marks
        if length < -SAME_POINT or length > marks[-1] + SAME_POINT:
            raise ValueError(f"there is no place at {length} mm on a path of {self.length()} mm")
        index = min(max(0, bisect_left(marks, length) - 1), len(self.segments) - 1)
        return index, self.segments[index].parameter_at(length - marks[index])

    def at_length(self, length: float) -> Point:
        """The point at an arc length [mm]."""
        index, t = self.locate(length)
        return self.segments[index].at(t)

    def tangent_at_length(self, length: float) -> Vector:
        """The direction of travel at an arc length, of length 1; at a corner, that of the one before it."""
        index, t = self.locate(length)
        return self.segments[index].tangent(t)

    def split_at_length(self, length: float) -> tuple[Path, Path]:
        """The two parts before and after an arc length [mm].

        Raises:
            ValueError: The length is not inside the path, so that one part would be empty.
        """
        return self.part(0.0, length), self.part(length, self.length())

    def part(self, start: float, end: float) -> Path:
        """The part between two arc lengths [mm]; on a closed path it may go on over the start (start > end).

        Raises:
            ValueError: The part would be empty, or lies outside.
        """
        if start > end and self.is_closed:
            whole = self.length()
            parts = [self.part(a, b) for a, b in ((start, whole), (0.0, end)) if b - a > SAME_POINT]
            return Path.joined(*parts)
        if end - start <= SAME_POINT:
            raise ValueError(f"nothing lies between {start} mm and {end} mm")
        first, t0 = self.locate(start)
        last, t1 = self.locate(end)
        return Path(self._without_slivers(first, t0, last, t1))

    def _without_slivers(self, first: int, t0: float, last: int, t1: float) -> tuple[Segment, ...]:
        """The segments of a part; pieces shorter than `SAME_POINT` at either end are left out."""
        if first == last:
            return (self.segments[first].part(t0, t1),)
        head = self.segments[first].part(t0, 1.0) if t0 > 0 else self.segments[first]
        tail = self.segments[last].part(0.0, t1) if t1 < 1 else self.segments[last]
        chain = [head, *self.segments[first + 1 : last], tail]
        if head.length() <= SAME_POINT:
            del chain[0]
        if len(chain) > 1 and tail.length() <= SAME_POINT:
            del chain[-1]
        return tuple(chain)

    def reversed(self) -> Path:
        """The same travelled the other way."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def transformed(self, affine: Affine) -> Path:
        """What a map of the plane makes of it; ValueError if it would make an ellipse of an arc."""
        return Path(tuple(segment.transformed(affine) for segment in self.segments))

    def bounds(self) -> Bounds:
        """The upright rectangle that it just fills."""
        return self._bounds

    @once
    def _bounds(self) -> Bounds:
        return reduce(Bounds.union, (segment.bounds() for segment in self.segments))

    @once
    def boxes(self) -> tuple[Bounds, ...]:
        """A box that holds each of its segments, if not always the smallest."""
        return tuple(map(box_round, self.segments))

    def flatten(self, tolerance: float = FLATNESS) -> tuple[Point, ...]:
        """Points along it whose chords are never further off than the tolerance [mm].

        Both ends are included, so a closed path has its first point twice; joints come once.
        """
        points = [self.start]
        for segment in self.segments:
            points.extend(segment.flatten(tolerance)[1:])
        return tuple(points)

    @once
    def coordinates(self) -> tuple[float, ...]:
        """The points of `flatten` as plain numbers, x and y in turn: what polygon work takes, at a third of the cost."""
        flat = [self.start.x, self.start.y]
        for segment in self.segments:
            flat += segment.coordinates()[2:]
        return tuple(flat)

    def nearest(self, point: Point) -> Nearest:
        """The place that lies nearest to a point; the first of several."""
        found = self.closest(point)
        assert found is not None, "every place is nearer than infinitely far"  # noqa: S101 - our own mistake
        index, t, distance = found
        return Nearest(self.length_to(index, t), self.segments[index].at(t), distance)

    def distance(self, point: Point) -> float:
        """How far a point lies from it [mm]: `nearest` without the length along it, which costs more than the rest."""
        found = self.closest(point)
        return inf if found is None else found[2]

    def closest(self, point: Point, than: float = inf) -> tuple[int, float, float] | None:
        """The place that lies nearest to a point and nearer than a distance [mm], if there is one.

        Returns:
            The index of the segment, the parameter there, and the distance [mm].
        """
        found = None
        for index, segment in enumerate(self.segments):
            if least_distance(segment, point) < than:
                t = segment.nearest(point)
                distance = segment.at(t).distance(point)
                if distance < than:
                    found, than = (index, t, distance), distance
        return found

    def signed_area(self) -> float:
        """The area enclosed by a closed path [mm2], exact: positive if it runs counter-clockwise.

        Raises:
            ValueError: The path is open and encloses nothing.
        """
        if not self.is_closed:
            raise ValueError("an open path encloses no area")
        home = Affine.translation(Point(0.0, 0.0) - self.start)  # near the origin no digits are lost
        return sum(segment.transformed(home).swept_area() for segment in self.segments)

    def contains(self, point: Point) -> bool:
        """Whether a closed path, flattened to `FLATNESS`, goes round a point.

        Raises:
            ValueError: The path is open and contains nothing.
        """
        if not self.is_closed:
            raise ValueError("an open path contains nothing")
        return winding_number(self.flatten(), point) != 0

    def extended_start(self, by: float) -> Path:
        """The path with a straight piece [mm] before its start, in line with it."""
        return Path((Line(self.start + self.start_tangent * -by, self.start), *self.segments))

    def extended_end(self, by: float) -> Path:
        """The path carried on straight [mm] beyond its end."""
        return Path((*self.segments, Line(self.end, self.end + self.end_tangent * by)))


def _meeting(before: Segment, after: Segment) -> tuple[Segment, Segment]:
    """Two neighbours with exactly one joint, if they join at all; lines and cubics give way to arcs."""
    here, there = before.end, after.start
    if here == there or here.distance(there) > SAME_POINT:
        return before, after
    moved = after.ending(here, after.end)
    return (before, moved) if moved.start == here else (before.ending(before.start, there), after)
