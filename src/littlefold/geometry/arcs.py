"""Arcs from what a drafter knows of them."""

from __future__ import annotations

from math import atan2, copysign, pi, sqrt, tan, tau

from .arc import Arc
from .fair import turn_between
from .point import Point
from .tolerance import ANGLE, SAME_POINT


def arc_about(centre: Point, start: Point, sweep: float) -> Arc:
    """The arc described by a point turned about a centre [rad], counter-clockwise if positive."""
    arm = start - centre
    return Arc(centre, arm.length, arm.angle, sweep)


def arc_through(p: Point, q: Point, r: Point) -> Arc | None:
    """The arc from p through q to r; None if the three are in line or two of them are one."""
    first, second = q - p, r - p
    turn = first.cross(second)
    if abs(turn) <= ANGLE * max(first.dot(first), second.dot(second)):
        return None
    u, v = first.dot(first) / (2 * turn), second.dot(second) / (2 * turn)
    centre = Point(p.x + second.y * u - first.y * v, p.y + first.x * v - second.x * u)
    sweep = (turn_between(p - centre, r - centre) * copysign(1.0, turn)) % tau
    return arc_about(centre, p, copysign(sweep, turn))


def arc_of_radius(start: Point, end: Point, radius: float) -> tuple[Arc, ...]:
    """The two minor arcs of a radius between two points: first the one that lies left of start -> end.

    None of them (an empty tuple) if the radius does not reach half way, or the points are one.
    """
    way = end - start
    half = way.length / 2
    if half <= SAME_POINT or radius < half - SAME_POINT:
        return ()
    radius = max(radius, half)
    height = sqrt((radius - half) * (radius + half))
    sweep = 2 * atan2(half, height)
    rise = way.unit().turned_left() * height
    middle = start.towards(end, 0.5)
    return arc_about(middle + -rise, start, -sweep), arc_about(middle + rise, start, sweep)


def rounded_corner(corner: Point, towards_a: Point, towards_b: Point, radius: float) -> Arc | None:
    """The arc that rounds a corner, from its leg towards a to its leg towards b, tangent to both.

    None if a leg has no length or is too short for the radius (the arc would begin beyond a or end beyond
    b), or the corner is straight or folded flat.
    """
    leg_a, leg_b = towards_a - corner, towards_b - corner
    shorter = min(leg_a.length, leg_b.length)
    if shorter <= SAME_POINT:
        return None
    opening = turn_between(leg_a, leg_b)
    if abs(opening) <= ANGLE or abs(opening) >= pi - ANGLE:
        return None
    from_corner = radius / tan(abs(opening) / 2)
    if from_corner > shorter + SAME_POINT:
        return None
    first = corner + leg_a.unit() * from_corner
    inward = leg_a.unit().turned_left() * copysign(radius, opening)
    return arc_about(first + inward, first, copysign(pi, -opening) + opening)
