"""Constructions with the compasses: where circles meet lines and each other."""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

from .lines import foot
from .tolerance import SOLVED, TOUCH

if TYPE_CHECKING:
    from .point import Point


def line_meets_circle(a: Point, b: Point, centre: Point, radius: float) -> tuple[Point, ...]:
    """The none, one or two points of a circle on the line a-b carried on without end, in the order a to b.

    A line that misses the circle by no more than `tolerance.TOUCH` touches it in one point.

    Raises:
        ZeroDivisionError: a and b are one point, so there is no line.
    """
    middle = foot(centre, a, b)
    half = _half_chord(centre.distance(middle), radius)
    if half is None:
        return ()
    if half == 0:
        return (middle,)
    way = (b - a).unit() * half
    return (middle + -way, middle + way)


def circle_meets_circle(
    first: Point, first_radius: float, second: Point, second_radius: float
) -> tuple[Point, ...]:
    """Where two circles meet: none, one or two points; of two, the one left of first -> second comes first.

    Circles that miss each other by no more than `tolerance.TOUCH` touch in one point.  Circles about the same
    centre do not meet in points.
    """
    apart = first.distance(second)
    if apart <= SOLVED:
        return ()
    along = (apart * apart + first_radius * first_radius - second_radius * second_radius) / (2 * apart)
    half = _half_chord(abs(along), first_radius)
    if half is None:
        return ()
    way = (second - first) / apart
    middle = first + way * along
    if half == 0:
        return (middle,)
    square = way.turned_left() * half
    return (middle + square, middle + -square)


def _half_chord(off: float, radius: float) -> float | None:
    """Half the chord at a distance from the centre: 0 where it touches, None where it misses."""
    if off > radius + TOUCH:
        return None
    if off >= radius - SOLVED:
        return 0.0
    return sqrt((radius - off) * (radius + off))
