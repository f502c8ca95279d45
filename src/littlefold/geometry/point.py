"""Points and vectors: a place on the plane, and the way from one place to another.

They are two types on purpose.  A point minus a point is a vector; a point plus a vector is a point; two
points cannot be added.  Lengths are millimetres, y points up, angles are radians counted counter-clockwise
from the x axis.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, cos, hypot, sin
from typing import Self


@dataclass(frozen=True, slots=True)
class Vector:
    """A way across the plane [mm], without a starting place."""

    x: float
    y: float

    @classmethod
    def polar(cls, angle: float, length: float = 1.0) -> Self:
        """The vector of a given direction [rad] and length [mm]."""
        return cls(cos(angle) * length, sin(angle) * length)

    def __add__(self, other: Vector) -> Vector:
        return Vector(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Vector) -> Vector:
        return Vector(self.x - other.x, self.y - other.y)

    def __mul__(self, factor: float) -> Vector:
        return Vector(self.x * factor, self.y * factor)

    def __truediv__(self, divisor: float) -> Vector:
        return Vector(self.x / divisor, self.y / divisor)

    def __neg__(self) -> Vector:
        return Vector(-self.x, -self.y)

    def dot(self, other: Vector) -> float:
        """The scalar product: positive where both point the same way, zero where they are square."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: Vector) -> float:
        """The turn from this vector to the other: positive counter-clockwise, zero if parallel."""
        return self.x * other.y - self.y * other.x

    @property
    def length(self) -> float:
        """The length [mm]."""
        return hypot(self.x, self.y)

    @property
    def angle(self) -> float:
        """The direction [rad], counter-clockwise from the x axis, in (-pi, pi]."""
        return atan2(self.y, self.x)

    def unit(self) -> Vector:
        """The same direction with length 1.

        Raises:
            ZeroDivisionError: The vector has no length, so it has no direction.
        """
        length = hypot(self.x, self.y)
        return Vector(self.x / length, self.y / length)

    def turned_left(self) -> Vector:
        """This vector turned a quarter counter-clockwise."""
        return Vector(-self.y, self.x)

    def turned_right(self) -> Vector:
        """This vector turned a quarter clockwise."""
        return Vector(self.y, -self.x)

    def turned(self, angle: float) -> Vector:
        """This vector turned counter-clockwise by an angle [rad]."""
        c, s = cos(angle), sin(angle)
        return Vector(self.x * c - self.y * s, self.x * s + self.y * c)


@dataclass(frozen=True, slots=True)
class Point:
    """A place on the plane [mm]."""

    x: float
    y: float

    def __add__(self, way: Vector) -> Point:
        return Point(self.x + way.x, self.y + way.y)

    def __sub__(self, other: Point) -> Vector:
        return Vector(self.x - other.x, self.y - other.y)

    def distance(self, other: Point) -> float:
        """How far the other point lies from this one [mm]."""
        return hypot(self.x - other.x, self.y - other.y)

    def towards(self, other: Point, fraction: float) -> Point:
        """The point at a fraction of the way to another: 0 is here, 1 is there, 1/2 the midpoint."""
        return Point(self.x + (other.x - self.x) * fraction, self.y + (other.y - self.y) * fraction)


ORIGIN = Point(0.0, 0.0)
