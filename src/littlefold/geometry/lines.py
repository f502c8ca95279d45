"""Constructions with the ruler and the set square: where lines meet, and what stands square on them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .tolerance import ANGLE

if TYPE_CHECKING:
    from .point import Point


def foot(point: Point, a: Point, b: Point) -> Point:
    """The foot of the perpendicular from a point to the line through a and b, carried on without end.

    Raises:
        ZeroDivisionError: a and b are one point, so there is no line.
    """
    way = b - a
    return a + way * ((point - a).dot(way) / way.dot(way))


def side_of(point: Point, a: Point, b: Point) -> float:
    """How far a point lies to the left of the line from a to b [mm]; negative to the right.

    Raises:
        ZeroDivisionError: a and b are one point, so there is no line.
    """
    return (b - a).unit().cross(point - a)


def line_meets_line(a: Point, b: Point, c: Point, d: Point) -> Point | None:
    """Where the lines a-b and c-d meet, both carried on without end.

    None if they are parallel (to `tolerance.ANGLE`) or one of them is no line because its points are one.
    """
    first, second = b - a, d - c
    turn = first.cross(second)
    if abs(turn) <= ANGLE * first.length * second.length:
        return None
    return a + first * ((c - a).cross(second) / turn)
