"""The offset of one segment, as legs that run forwards or backwards."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import copysign, pi, sqrt
from typing import TYPE_CHECKING

from .arc import Arc
from .bezier import Cubic
from .equation import root_between, sign_changes
from .fit import Sample, fitted
from .line import Line
from .tolerance import SAME_POINT

if TYPE_CHECKING:
    from .quadrature import Speed
    from .segment import Segment

# Where a cubic is asked whether its offset has turned back; a backward part shorter than a sixteenth may be
# overlooked, and is then rounded off by the fit.
GRID = tuple(k / 16 for k in range(17))


@dataclass(frozen=True, slots=True)
class Leg:
    """A segment of an offset, and whether it runs against the travel of the path that is followed."""

    segment: Segment
    backward: bool = False


def beside(segment: Segment, here: float, there: float) -> list[Leg]:
    """The offset of a segment, whose distance to the left changes evenly from its start to its end [mm]."""
    if isinstance(segment, Line):
        return [Leg(_line(segment, here, there))]
    if isinstance(segment, Arc) and here == there:
        return _arc(segment, here)
    return _curve(segment, here, there)


def _line(line: Line, here: float, there: float) -> Line:
    """Exact."""
    square = line.tangent(0.0).turned_left()
    return Line(line.start + square * here, line.end + square * there)


def _arc(arc: Arc, distance: float) -> list[Leg]:
    """Exact; an arc tighter than the distance comes out on the far side of its centre and runs backwards."""
    radius = arc.radius - distance * copysign(1.0, arc.sweep)
    if abs(radius) <= SAME_POINT:
        return []
    if radius > 0:
        return [Leg(Arc(arc.centre, radius, arc.start_angle, arc.sweep))]
    return [Leg(Arc(arc.centre, -radius, arc.start_angle + pi, arc.sweep), backward=True)]


def _curve(segment: Segment, here: float, there: float) -> list[Leg]:
    """Fitted, in parts between the places where the offset turns back."""
    follow: _Parallel | _Tapering
    if isinstance(segment, Cubic) and here == there:
        follow = _Parallel.of(segment, here)
        if follow.never_turns():
            return [Leg(cubic) for cubic in fitted(follow, 0.0, 1.0)]
    else:
        follow = _Tapering(segment, here, there)
    changes = sign_changes(follow.forwardness, GRID)
    turns = [root_between(follow.forwardness, low, high, 0.0) for low, high in changes]
    stops = [0.0, *(t for t in turns if 0 < t < 1), 1.0]
    return [
        Leg(cubic, backward=follow.forwardness((low + high) / 2) < 0)
        for low, high in pairwise(stops)
        for cubic in fitted(follow, low, high)
    ]


@dataclass(frozen=True, slots=True)
class _Parallel:
    """The point that goes along beside a cubic at one distance to the left [mm].

    `bend` is the cross product of the first and second derivative of the cubic as a polynomial, the lowest power first.
    """

    cubic: Cubic
    distance: float
    speed: Speed
    bend: tuple[float, float, float]

    @classmethod
    def of(cls, cubic: Cubic, distance: float) -> _Parallel:
        """The point beside a cubic."""
        ax, bx, cx, ay, by, cy = speed = cubic.speed
        bend = cx * by - cy * bx, 2 * (cx * ay - cy * ax), bx * ay - by * ax
        return cls(cubic, distance, speed, bend)

    def sample(self, t: float) -> Sample:
        """Its place, its direction, and its speed: (1 - distance x curvature) of the cubic's own."""
        ax, bx, cx, ay, by, cy = self.speed
        x, y = (ax * t + bx) * t + cx, (ay * t + by) * t + cy
        own = sqrt(x * x + y * y)
        if own > SAME_POINT:
            u, v = x / own, y / own
        else:
            along = self.cubic.tangent(t)
            u, v = along.x, along.y
        flat, rising, curved = self.bend
        distance, start = self.distance, self.cubic.start
        ahead = own - distance * ((curved * t + rising) * t + flat) / (own * own) if own > 0 else 0.0
        right, up = ((ax / 3 * t + bx / 2) * t + cx) * t, ((ay / 3 * t + by / 2) * t + cy) * t
        return Sample(start.x + right - v * distance, start.y + up + u * distance, u, v, ahead)

    def forwardness(self, t: float) -> float:
        """Positive where it goes the way of the cubic, negative where it goes back; finite at cusps."""
        ax, bx, cx, ay, by, cy = self.speed
        x, y = (ax * t + bx) * t + cx, (ay * t + by) * t + cy
        own = sqrt(x * x + y * y)
        flat, rising, curved = self.bend
        return own * own * own - self.distance * ((curved * t + rising) * t + flat)

    def never_turns(self) -> bool:
        """Whether it surely goes forwards all along; if not, it may still do so.

        A polynomial lies between its Bernstein coefficients.  Those of the speed along the chord give the lowest
        speed, those of the bend the sharpest.
        """
        ax, bx, cx, ay, by, cy = self.speed
        flat, rising, curved = self.bend
        sharpest = max(self.distance * bend for bend in (flat, flat + rising / 2, flat + rising + curved))
        if sharpest < 0:
            return True
        ways = ((cx, cy), (cx + bx / 2, cy + by / 2), (cx + bx + ax, cy + by + ay))
        chord = self.cubic.end - self.cubic.start
        slowest = min(x * chord.x + y * chord.y for x, y in ways) / (chord.length or 1.0)
        return slowest > SAME_POINT and slowest * slowest * slowest > sharpest


@dataclass(frozen=True, slots=True)
class _Tapering:
    """The point that goes along beside a segment at a distance that changes evenly with the length [mm]."""

    segment: Segment
    here: float
    there: float

    def distance(self, t: float) -> float:
        """How far to the left it is at a parameter [mm]."""
        return self.here + (self.there - self.here) * self.segment.length_to(t) / self.segment.length()

    def sample(self, t: float) -> Sample:
        """Its place, and its derivative: along by (1 - distance x curvature), sideways by the taper."""
        along, own, distance = self.segment.tangent(t), self.segment.derivative(t).length, self.distance(t)
        place = self.segment.at(t) + along.turned_left() * distance
        if own == 0:
            return Sample(place.x, place.y, along.x, along.y, 0.0)
        ahead = 1 - distance * self.segment.curvature(t)
        taper = (self.there - self.here) / self.segment.length()
        way = along * ahead + along.turned_left() * taper
        sign = copysign(1.0, ahead)
        unit = way.unit() * sign
        return Sample(place.x, place.y, unit.x, unit.y, own * way.length * sign)

    def forwardness(self, t: float) -> float:
        """Positive where it goes the way of the segment, negative where it goes back."""
        return 1 - self.distance(t) * self.segment.curvature(t)
