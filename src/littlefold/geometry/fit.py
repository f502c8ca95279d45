"""A smooth curve known by its points and derivatives, written as cubics.

Each cubic has the ends and the end derivatives of its part (Hermite); a part whose cubic strays too far is
halved.  The error falls with the fourth power of the number of parts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from .bezier import Cubic
from .tolerance import OFFSET

if TYPE_CHECKING:
    from .point import Point, Vector


class Followed(Protocol):
    """A curve known by its points and derivatives."""

    def place(self, t: float) -> Point:
        """The point at a parameter."""

    def way(self, t: float) -> Vector:
        """The derivative at a parameter."""


# Where a part is compared with its cubic.  More places: slower.  Fewer: an error that changes its sign twice
# within a part may be overlooked.
PROBES = (0.2, 0.4, 0.6, 0.8)

# Halving ends here; what is then left is shorter than a thousandth of the curve.
DEEPEST = 10


def fitted(curve: Followed, low: float, high: float, tolerance: float = OFFSET) -> tuple[Cubic, ...]:
    """Cubics that follow a curve between two parameters.

    Args:
        curve: The curve; its derivative is not zero between the two.
        low: The parameter at which to begin.
        high: The parameter at which to end.
        tolerance: How far the cubics may stray sideways [mm].
    """
    return tuple(_parts(curve, low, high, tolerance, DEEPEST))


def _parts(curve: Followed, low: float, high: float, tolerance: float, depth: int) -> list[Cubic]:
    """The cubics of a part, halved as often as need be."""
    cubic = _hermite(curve, low, high)
    if depth == 0 or _strays(cubic, curve, low, high) <= tolerance / 2:
        return [cubic]
    middle = (low + high) / 2
    before = _parts(curve, low, middle, tolerance, depth - 1)
    return before + _parts(curve, middle, high, tolerance, depth - 1)


def _hermite(curve: Followed, low: float, high: float) -> Cubic:
    """The cubic with the ends and end derivatives of a part."""
    start, end, third = curve.place(low), curve.place(high), (high - low) / 3
    return Cubic(start, start + curve.way(low) * third, end + curve.way(high) * -third, end)


def _strays(cubic: Cubic, curve: Followed, low: float, high: float) -> float:
    """How far a cubic lies beside its part at the worst of the probes [mm]."""
    return max(
        _beside(cubic, u, curve.place(t), curve.way(t))
        for u, t in ((u, low + (high - low) * u) for u in PROBES)
    )


def _beside(cubic: Cubic, u: float, point: Point, way: Vector) -> float:
    """How far a cubic passes beside a point near its parameter u [mm]: slid along once, then measured."""
    gap, speed = point - cubic.at(u), cubic.derivative(u)
    square = speed.dot(speed)
    slid = min(1.0, max(0.0, u + gap.dot(speed) / square)) if square > 0 else u
    rest = point - cubic.at(slid)
    length = way.length
    return abs(rest.cross(way)) / length if length > 0 else rest.length
