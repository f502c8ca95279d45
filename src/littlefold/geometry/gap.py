"""The way from a point to a cubic, and where it is shortest."""

from __future__ import annotations

from dataclasses import dataclass

from .equation import roots_from_0_to_1

Coefficients = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Gap:
    """The way from a point to a cubic [mm]: x and y as polynomials, the highest power first."""

    x: Coefficients
    y: Coefficients

    def square(self, t: float) -> float:
        """The square of its length [mm2]."""
        a, b, c, d = self.x
        u = ((a * t + b) * t + c) * t + d
        a, b, c, d = self.y
        v = ((a * t + b) * t + c) * t + d
        return u * u + v * v

    def shortest(self) -> float:
        """The parameter from 0 to 1 at which it is shortest: at an end, or where it is square to the curve."""
        return min((0.0, 1.0, *roots_from_0_to_1(self.slope())), key=self.square)

    def slope(self) -> tuple[float, ...]:
        """Half the derivative of the square, as a polynomial."""
        a, b, c, d = self.x
        p, q, r, s = self.y
        return (
            3 * (a * a + p * p),
            5 * (a * b + p * q),
            2 * (2 * a * c + b * b + 2 * p * r + q * q),
            3 * (a * d + b * c + p * s + q * r),
            2 * (b * d + q * s) + c * c + r * r,
            c * d + r * s,
        )
