"""How directions turn: the measure of corners and of smooth joins."""

from __future__ import annotations

from math import atan2, pi
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .point import Vector


def turn_between(incoming: Vector, outgoing: Vector) -> float:
    """The turn from one direction to another [rad]: counter-clockwise positive, in (-pi, pi].

    Zero for a smooth join, pi/2 for a square corner to the left, pi for a way straight back.
    """
    turn = atan2(incoming.cross(outgoing), incoming.dot(outgoing))
    return pi if turn == -pi else turn


def angle_between(one: Vector, other: Vector) -> float:
    """The angle between two directions [rad], from 0 to pi, no matter which comes first."""
    return abs(turn_between(one, other))


def bisector(one: Vector, other: Vector) -> Vector:
    """The direction half way between two, of length 1; for opposite ones, square left of the first."""
    half = turn_between(one, other) / 2
    return one.unit().turned(half)
