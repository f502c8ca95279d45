"""The arc of a circle."""

from __future__ import annotations

from dataclasses import dataclass
from math import acos, atan2, ceil, copysign, cos, floor, pi, sin, tau
from typing import TYPE_CHECKING

from .bounds import Bounds
from .once import once
from .point import Point, Vector
from .tolerance import FLATNESS

if TYPE_CHECKING:
    from .affine import Affine


@dataclass(frozen=True)
class Arc:
    """An arc of a circle; see `segment.Segment` for what its methods mean.

    Its ends follow from angles; they are asked for often, worked out once and kept: so it has no slots.

    Attributes:
        centre: The centre of the circle.
        radius: Its radius [mm], positive.
        start_angle: The direction from the centre to the start [rad].
        sweep: How far it turns about the centre [rad]: counter-clockwise if positive, at most one full turn.
    """

    centre: Point
    radius: float
    start_angle: float
    sweep: float

    def __post_init__(self) -> None:
        assert self.radius >= 0, "an arc has no negative radius"  # noqa: S101 - our own mistake
        assert abs(self.sweep) <= tau + 1e-9, "an arc turns once at most"  # noqa: S101 - our own mistake

    @once
    def start(self) -> Point:
        """Where it begins."""
        return self._place(self.start_angle)

    @once
    def end(self) -> Point:
        """Where it ends."""
        return self._place(self.start_angle + self.sweep)

    def _place(self, angle: float) -> Point:
        """The point of the circle in a direction from the centre [rad]."""
        return Point(self.centre.x + self.radius * cos(angle), self.centre.y + self.radius * sin(angle))

    def angle(self, t: float) -> float:
        """The direction from the centre at a parameter [rad]."""
        return self.start_angle + self.sweep * t

    def at(self, t: float) -> Point:
        """The point at a fraction of the turn."""
        return self._place(self.start_angle + self.sweep * t)

    def derivative(self, t: float) -> Vector:
        """How fast and which way the point moves [mm]."""
        speed, angle = self.radius * self.sweep, self.angle(t)
        return Vector(-sin(angle) * speed, cos(angle) * speed)

    def tangent(self, t: float) -> Vector:
        """The direction of travel, of length 1."""
        side, angle = copysign(1.0, self.sweep), self.angle(t)
        return Vector(-sin(angle) * side, cos(angle) * side)

    def curvature(self, t: float) -> float:  # noqa: ARG002 - it is the same everywhere
        """One over the radius [1/mm]: positive where the arc turns left."""
        return copysign(1 / self.radius, self.sweep)

    def length(self) -> float:
        """The arc length [mm]."""
        return self.radius * abs(self.sweep)

    def length_to(self, t: float) -> float:
        """The arc length from the start to a fraction of the turn [mm]."""
        return self.radius * abs(self.sweep) * t

    def parameter_at(self, length: float) -> float:
        """The fraction of the turn at an arc length [mm], clamped to the segment."""
        whole = self.length()
        return min(1.0, max(0.0, length / whole)) if whole > 0 else 0.0

    def split(self, t: float) -> tuple[Arc, Arc]:
        """The two parts before and after a fraction of the turn."""
        return self.part(0.0, t), self.part(t, 1.0)

    def part(self, t0: float, t1: float) -> Arc:
        """The part between two fractions of the turn."""
        return Arc(self.centre, self.radius, self.angle(t0), self.sweep * (t1 - t0))

    def reversed(self) -> Arc:
        """The same travelled the other way."""
        return Arc(self.centre, self.radius, self.start_angle + self.sweep, -self.sweep)

    def bounds(self) -> Bounds:
        """The upright rectangle that it just fills: the ends, and the quarters of the circle passed over."""
        low, high = sorted((self.start_angle, self.start_angle + self.sweep))
        quarters = range(ceil(low / (pi / 2)), floor(high / (pi / 2)) + 1)
        return Bounds.of_points(self.start, self.end, *(self._place(k * pi / 2) for k in quarters))

    def parameter_of_angle(self, angle: float) -> float | None:
        """The fraction of the turn at a direction from the centre [rad], or None where it does not go."""
        if self.sweep == 0:
            return None
        turned = (angle - self.start_angle) * copysign(1.0, self.sweep) % tau
        t = turned / abs(self.sweep)
        return t if t <= 1.0 else None

    def nearest(self, point: Point) -> float:
        """The fraction of the turn at which it lies nearest to a point."""
        t = self.parameter_of_angle(atan2(point.y - self.centre.y, point.x - self.centre.x))
        if t is not None:
            return t
        return 0.0 if point.distance(self.start) <= point.distance(self.end) else 1.0

    def flatten(self, tolerance: float = FLATNESS) -> tuple[Point, ...]:
        """Points along it whose chords are never further off than the tolerance [mm]."""
        widest = 2 * acos(1 - tolerance / self.radius) if self.radius > tolerance else pi / 2
        count = max(1, ceil(abs(self.sweep) / widest))
        return tuple(self.at(k / count) for k in range(count + 1))

    def coordinates(self, tolerance: float = FLATNESS) -> list[float]:
        """The same points as plain numbers, x and y in turn."""
        return [place for point in self.flatten(tolerance) for place in (point.x, point.y)]

    def transformed(self, affine: Affine) -> Arc:
        """What a map of the plane makes of it.

        Raises:
            ValueError: The map would make an ellipse of the circle.
        """
        if not affine.is_similar():
            raise ValueError("an arc can be moved, turned, mirrored and scaled, not stretched one way")
        first = affine.apply_vector(Vector(cos(self.start_angle), sin(self.start_angle)))
        sweep = -self.sweep if affine.flips else self.sweep
        return Arc(affine.apply(self.centre), self.radius * affine.stretch, first.angle, sweep)

    def swept_area(self) -> float:
        """The area swept by the ray from the origin [mm2]."""
        way = self.end - self.start
        return (self.radius * self.radius * self.sweep + self.centre.x * way.y - self.centre.y * way.x) / 2

    def ending(self, start: Point, end: Point) -> Arc:  # noqa: ARG002 - an arc has no ends of its own to move
        """This arc: its ends follow from centre and angles, and the neighbours are moved to them instead."""
        return self
