"""Moving, turning, mirroring and scaling the plane."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, hypot, sin

from .point import ORIGIN, Point, Vector


@dataclass(frozen=True, slots=True)
class Affine:
    """The map (x, y) -> (a x + c y + e, b x + d y + f), the six numbers in the order SVG writes them."""

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float

    @classmethod
    def identity(cls) -> Affine:
        """The map that leaves everything in its place."""
        return cls(1.0, 0.0, 0.0, 1.0, 0.0, 0.0)

    @classmethod
    def translation(cls, way: Vector) -> Affine:
        """Everything moved the same way."""
        return cls(1.0, 0.0, 0.0, 1.0, way.x, way.y)

    @classmethod
    def rotation(cls, angle: float, about: Point = ORIGIN) -> Affine:
        """Everything turned counter-clockwise by an angle [rad] about a point."""
        return cls._about(cos(angle), sin(angle), -sin(angle), cos(angle), about)

    @classmethod
    def scale(cls, factor: float, about: Point = ORIGIN) -> Affine:
        """Everything made larger or smaller alike in both directions about a point."""
        return cls._about(factor, 0.0, 0.0, factor, about)

    @classmethod
    def mirror(cls, through: Point, along: Vector) -> Affine:
        """Everything mirrored in the line through a point along a direction."""
        u = along.unit()
        c, s = u.x * u.x - u.y * u.y, 2 * u.x * u.y
        return cls._about(c, s, s, -c, through)

    @classmethod
    def taking(cls, p: Point, q: Point, to_p: Point, to_q: Point) -> Affine:
        """The rigid motion that lays p on `to_p` and the ray p -> q along the ray `to_p` -> `to_q`.

        Lengths are kept, so q lands on `to_q` only if the two distances agree.
        """
        old, new = (q - p).unit(), (to_q - to_p).unit()
        c, s = old.dot(new), old.cross(new)
        return cls(c, s, -s, c, to_p.x - c * p.x + s * p.y, to_p.y - s * p.x - c * p.y)

    @classmethod
    def _about(cls, a: float, b: float, c: float, d: float, fixed: Point) -> Affine:
        """The linear map a, b, c, d with a point left in its place."""
        return cls(a, b, c, d, fixed.x - a * fixed.x - c * fixed.y, fixed.y - b * fixed.x - d * fixed.y)

    def apply(self, point: Point) -> Point:
        """Where a point goes."""
        x, y = point.x, point.y
        return Point(self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f)

    def apply_vector(self, way: Vector) -> Vector:
        """What becomes of a way; moving does not change it."""
        return Vector(self.a * way.x + self.c * way.y, self.b * way.x + self.d * way.y)

    def then(self, other: Affine) -> Affine:
        """This map, and the other one after it."""
        a, b, c, d, e, f = other.a, other.b, other.c, other.d, other.e, other.f
        return Affine(
            a * self.a + c * self.b,
            b * self.a + d * self.b,
            a * self.c + c * self.d,
            b * self.c + d * self.d,
            a * self.e + c * self.f + e,
            b * self.e + d * self.f + f,
        )

    @property
    def determinant(self) -> float:
        """The factor by which areas grow; negative where the map turns things over."""
        return self.a * self.d - self.b * self.c

    @property
    def flips(self) -> bool:
        """Whether left becomes right, as in a mirror."""
        return self.determinant < 0

    def inverse(self) -> Affine:
        """The map back.

        Raises:
            ZeroDivisionError: The map flattens the plane, so there is no way back.
        """
        det = self.determinant
        a, b, c, d = self.d / det, -self.b / det, -self.c / det, self.a / det
        return Affine(a, b, c, d, -(a * self.e + c * self.f), -(b * self.e + d * self.f))

    @property
    def stretch(self) -> float:
        """The factor by which a similar map makes lengths grow [mm per mm]."""
        return hypot(self.a, self.b)

    def is_similar(self) -> bool:
        """Whether all shapes stay similar: moved, turned, mirrored or scaled alike in all directions.

        Angles may be off by a billionth, which bends a circle of 1 m by less than `SAME_POINT`.
        """
        size = self.a * self.a + self.b * self.b
        slack = 1e-9 * size
        return (
            abs(self.c * self.c + self.d * self.d - size) <= slack
            and abs(self.a * self.c + self.b * self.d) <= slack
        )
