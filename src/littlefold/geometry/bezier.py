"""The cubic Bezier curve.

The formulas are those of any book on the subject, e.g. Farin, Curves and Surfaces for CAGD, 5th ed. 2002,
chapters 4 and 5.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, copysign, hypot, inf, sqrt
from typing import TYPE_CHECKING

from .bounds import Bounds
from .equation import quadratic_roots
from .gap import Gap
from .once import hand_on, once
from .point import Point, Vector
from .quadrature import Speed
from .tolerance import FLATNESS, QUADRATURE, SAME_POINT

if TYPE_CHECKING:
    from .affine import Affine

# A derivative shorter than this part of the control polygon has lost its direction to rounding, and the next
# higher one tells it.  Larger: true tangents beside very short handles are overruled.  Smaller: noise is
# taken for a direction.
NO_SPEED = 1e-9

# The search for a length ends after so many steps; each triples the digits, so three are usual.
STEPS = 40


@dataclass(frozen=True)
class Cubic:
    """A cubic Bezier curve; see `segment.Segment` for what its methods mean.

    It leaves `start` towards `control1` and comes to `end` from `control2`.  What takes long to work out, such as the
    length, is worked out once when it is first asked for, and kept: so it has no slots.
    """

    start: Point
    control1: Point
    control2: Point
    end: Point

    def at(self, t: float) -> Point:
        """The point at a parameter."""
        s = 1 - t
        a, b, c, d = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return Point(a * p.x + b * q.x + c * r.x + d * e.x, a * p.y + b * q.y + c * r.y + d * e.y)

    def derivative(self, t: float) -> Vector:
        """How fast and which way the point moves [mm]."""
        s = 1 - t
        a, b, c = 3 * s * s, 6 * s * t, 3 * t * t
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return Vector(
            a * (q.x - p.x) + b * (r.x - q.x) + c * (e.x - r.x),
            a * (q.y - p.y) + b * (r.y - q.y) + c * (e.y - r.y),
        )

    def second_derivative(self, t: float) -> Vector:
        """How the derivative changes [mm]."""
        s = 1 - t
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return Vector(
            6 * (s * (r.x - 2 * q.x + p.x) + t * (e.x - 2 * r.x + q.x)),
            6 * (s * (r.y - 2 * q.y + p.y) + t * (e.y - 2 * r.y + q.y)),
        )

    @once
    def polygon_length(self) -> float:
        """The length of the control polygon [mm]; the curve is never longer."""
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return p.distance(q) + q.distance(r) + r.distance(e)

    def tangent(self, t: float) -> Vector:
        """The direction of travel, of length 1; at a cusp inside, the direction in which it is left."""
        way = self.derivative(t)
        least = NO_SPEED * self.polygon_length
        if way.length > least:
            return way.unit()
        turn = self.second_derivative(t)
        if turn.length > least:
            return -turn.unit() if t >= 1 else turn.unit()
        return (self.end - self.start).unit()

    def curvature(self, t: float) -> float:
        """The curvature [1/mm]: positive where it bends left, infinite at a cusp that bends."""
        way, turn = self.derivative(t), self.second_derivative(t)
        bend, speed = way.cross(turn), way.length
        if speed <= NO_SPEED * self.polygon_length:
            return 0.0 if bend == 0 else copysign(inf, bend)
        return bend / (speed * speed * speed)

    @once
    def speed(self) -> Speed:
        """The derivative as polynomials of the parameter."""
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return Speed(
            3 * (e.x - p.x + 3 * (q.x - r.x)),
            6 * (p.x - 2 * q.x + r.x),
            3 * (q.x - p.x),
            3 * (e.y - p.y + 3 * (q.y - r.y)),
            6 * (p.y - 2 * q.y + r.y),
            3 * (q.y - p.y),
        )

    def length(self) -> float:
        """The arc length [mm]."""
        return self._length

    @once
    def _length(self) -> float:
        return self.speed.way(0.0, 1.0, QUADRATURE * self.polygon_length)

    def length_to(self, t: float) -> float:
        """The arc length from the start to a parameter [mm]."""
        if t == 1.0:
            return self._length
        return self.speed.way(0.0, t, QUADRATURE * self.polygon_length)

    def parameter_at(self, length: float) -> float:
        """The parameter at an arc length from the start [mm], clamped to the segment; to `SAME_POINT`."""
        whole = self._length
        if length <= 0 or whole == 0:
            return 0.0
        if length >= whole:
            return 1.0
        return self._parameter_inside(length, length / whole)

    def _parameter_inside(self, length: float, t: float) -> float:
        """Steps from speed and acceleration, kept in a bracket; only the way of each step is measured anew."""
        speed, slack = self.speed, QUADRATURE * self.polygon_length
        low, high = 0.0, 1.0
        missing = length - speed.way(0.0, t, slack)
        for _ in range(STEPS):
            if abs(missing) <= SAME_POINT / 100:
                break
            low, high = (t, high) if missing > 0 else (low, t)
            step = speed.time(t, missing)
            guess = t + step if low < t + step < high else (low + high) / 2
            missing -= speed.way(t, guess, slack)
            t = guess
        return t

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        """The two parts before and after a parameter (de Casteljau)."""
        p, q, r, e = self.start, self.control1, self.control2, self.end
        a, m, c = p.towards(q, t), q.towards(r, t), r.towards(e, t)
        b, d = a.towards(m, t), m.towards(c, t)
        middle = b.towards(d, t)
        return Cubic(p, a, b, middle), Cubic(middle, d, c, e)

    def part(self, t0: float, t1: float) -> Cubic:
        """The part between two parameters (its ends and end derivatives)."""
        first = self.start if t0 == 0 else self.end if t0 == 1 else self.at(t0)
        last = self.end if t1 == 1 else self.start if t1 == 0 else self.at(t1)
        third = (t1 - t0) / 3
        return Cubic(first, first + self.derivative(t0) * third, last + self.derivative(t1) * -third, last)

    def reversed(self) -> Cubic:
        """The same travelled the other way."""
        return hand_on(self, Cubic(self.end, self.control2, self.control1, self.start), "_length")

    def extremes(self, along: Vector) -> tuple[float, ...]:
        """The parameters inside at which it goes neither forwards nor backwards in a direction, rising."""
        v = self.speed
        roots = quadratic_roots(
            v.ax * along.x + v.ay * along.y, v.bx * along.x + v.by * along.y, v.cx * along.x + v.cy * along.y
        )
        return tuple(t for t in roots if 0 < t < 1)

    def bounds(self) -> Bounds:
        """The upright rectangle that it just fills."""
        inside = (*self.extremes(Vector(1.0, 0.0)), *self.extremes(Vector(0.0, 1.0)))
        return Bounds.of_points(self.start, self.end, *(self.at(t) for t in inside))

    def nearest(self, point: Point) -> float:
        """The parameter at which it lies nearest to a point."""
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return Gap(
            (
                e.x - p.x + 3 * (q.x - r.x),
                3 * (p.x - 2 * q.x + r.x),
                3 * (q.x - p.x),
                p.x - point.x,
            ),
            (
                e.y - p.y + 3 * (q.y - r.y),
                3 * (p.y - 2 * q.y + r.y),
                3 * (q.y - p.y),
                p.y - point.y,
            ),
        ).shortest()

    def flatten(self, tolerance: float = FLATNESS) -> tuple[Point, ...]:
        """Points along it whose chords are never further off than the tolerance [mm].

        Equal steps of the parameter, as many as the greatest second difference of the control points asks for
        (Wang's formula; e.g. Goldman, Pyramid Algorithms, 2003, section 5.6, from memory).
        """
        flat = iter(self.coordinates(tolerance)[2:-2])
        return (self.start, *map(Point, flat, flat), self.end)

    def coordinates(self, tolerance: float = FLATNESS) -> list[float]:
        """The same points as plain numbers, x and y in turn."""
        ax, bx, cx, ay, by, cy = self.speed
        bend = max(hypot(bx, by), hypot(bx + 2 * ax, by + 2 * ay)) / 6
        count = max(1, ceil(sqrt(0.75 * bend / tolerance)))
        x, y, ax, bx, ay, by = self.start.x, self.start.y, ax / 3, bx / 2, ay / 3, by / 2
        flat = [x, y]
        for t in [k / count for k in range(1, count)]:
            flat += (x + ((ax * t + bx) * t + cx) * t, y + ((ay * t + by) * t + cy) * t)
        flat += (self.end.x, self.end.y)
        return flat

    def transformed(self, affine: Affine) -> Cubic:
        """What a map of the plane makes of it."""
        return Cubic(
            affine.apply(self.start),
            affine.apply(self.control1),
            affine.apply(self.control2),
            affine.apply(self.end),
        )

    def swept_area(self) -> float:
        """The area swept by the ray from the origin [mm2]: half the integral of x dy - y dx, closed."""
        p, q, r, e = self.start, self.control1, self.control2, self.end
        return (
            p.x * (6 * q.y + 3 * r.y + e.y)
            + 3 * q.x * (r.y + e.y - 2 * p.y)
            + 3 * r.x * (2 * e.y - p.y - q.y)
            - e.x * (p.y + 3 * q.y + 6 * r.y)
        ) / 20

    def ending(self, start: Point, end: Point) -> Cubic:
        """The same with its ends moved a little, each handle going along with its end."""
        at_start, at_end = start - self.start, end - self.end
        return Cubic(start, self.control1 + at_start, self.control2 + at_end, end)
