"""The offset of one segment, as legs that run forwards or backwards."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import copysign, pi
from typing import TYPE_CHECKING

from .arc import Arc
from .bezier import Cubic
from .equation import root_between, sign_changes
from .fit import fitted
from .line import Line
from .tolerance import SAME_POINT

if TYPE_CHECKING:
    from .point import Point, Vector
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
    follow = _Follower(segment, here, there)
    changes = sign_changes(follow.forwardness, GRID)
    turns = [root_between(follow.forwardness, low, high, 0.0) for low, high in changes]
    stops = [0.0, *(t for t in turns if 0 < t < 1), 1.0]
    return [
        Leg(cubic, backward=follow.forwardness((low + high) / 2) < 0)
        for low, high in pairwise(stops)
        for cubic in fitted(follow, low, high)
    ]


@dataclass(frozen=True, slots=True)
class _Follower:
    """The point that goes along beside a segment."""

    segment: Segment
    here: float
    there: float

    def distance(self, t: float) -> float:
        """How far to the left it is at a parameter [mm]."""
        if self.here == self.there:
            return self.here
        return self.here + (self.there - self.here) * self.segment.length_to(t) / self.segment.length()

    def place(self, t: float) -> Point:
        """Where it is."""
        return self.segment.at(t) + self.segment.tangent(t).turned_left() * self.distance(t)

    def way(self, t: float) -> Vector:
        """Its derivative: along by (1 - distance x curvature) of the segment's own, sideways by the taper."""
        along = self.segment.tangent(t)
        speed = self.segment.derivative(t).length
        ahead = (
            along * (speed * (1 - self.distance(t) * self.segment.curvature(t))) if speed > 0 else along * 0.0
        )
        if self.here == self.there:
            return ahead
        return ahead + along.turned_left() * ((self.there - self.here) * speed / self.segment.length())

    def forwardness(self, t: float) -> float:
        """Positive where it goes the way of the segment, negative where it goes back; finite at cusps."""
        way = self.segment.derivative(t)
        speed = way.length
        if isinstance(self.segment, Cubic):
            return speed * speed * speed - self.distance(t) * way.cross(self.segment.second_derivative(t))
        return 1 - self.distance(t) * self.segment.curvature(t)
