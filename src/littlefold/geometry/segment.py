"""What a line, an arc and a cubic can all do."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol, Self

from .tolerance import FLATNESS

if TYPE_CHECKING:
    from .affine import Affine
    from .bounds import Bounds
    from .point import Point, Vector


class Segment(Protocol):
    """A piece of curve travelled from `start` (parameter 0) to `end` (parameter 1).

    Parameters are not lengths: on a cubic the parameter 1/2 need not lie half way.  Lengths are millimetres
    from the start along the curve.
    """

    @property
    def start(self) -> Point:
        """Where it begins."""

    @property
    def end(self) -> Point:
        """Where it ends."""

    def at(self, t: float) -> Point:
        """The point at a parameter."""

    def derivative(self, t: float) -> Vector:
        """How fast and which way the point moves at a parameter [mm]."""

    def tangent(self, t: float) -> Vector:
        """The direction of travel at a parameter, of length 1; sound where handles have no length.

        Raises:
            ZeroDivisionError: The whole segment is one point.
        """

    def curvature(self, t: float) -> float:
        """The curvature at a parameter [1/mm]: positive where it bends left, infinite at a cusp."""

    def length(self) -> float:
        """The arc length [mm], right to `tolerance.LENGTH` of itself."""

    def length_to(self, t: float) -> float:
        """The arc length from the start to a parameter [mm]."""

    def parameter_at(self, length: float) -> float:
        """The parameter at an arc length from the start [mm], clamped to the segment; to `SAME_POINT`."""

    def split(self, t: float) -> tuple[Self, Self]:
        """The two parts before and after a parameter; they meet in the very same point."""

    def part(self, t0: float, t1: float) -> Self:
        """The part between two parameters; travelled backwards if t0 > t1."""

    def reversed(self) -> Self:
        """The same curve travelled the other way."""

    def bounds(self) -> Bounds:
        """The upright rectangle that it just fills."""

    def nearest(self, point: Point) -> float:
        """The parameter of the point of this segment that lies nearest to another point."""

    def flatten(self, tolerance: float = FLATNESS) -> tuple[Point, ...]:
        """Points along it, both ends included, whose chords are never further off than the tolerance [mm]."""

    def coordinates(self, tolerance: float = FLATNESS) -> list[float]:
        """The points of `flatten` as plain numbers, x and y in turn: what polygon work takes, at a third of the cost."""

    def transformed(self, affine: Affine) -> Segment:
        """What a map of the plane makes of it."""

    def swept_area(self) -> float:
        """The area swept by the ray from the origin [mm2], positive counter-clockwise (Green's theorem)."""

    def ending(self, start: Point, end: Point) -> Self:
        """The same with its ends moved by no more than `SAME_POINT`; an arc is what it was."""


def is_within(segment: Segment, length: float) -> bool:
    """Whether a segment is no longer than a length [mm]; its chord, which is never longer, nearly always says no."""
    return segment.start.distance(segment.end) <= length and segment.length() <= length
