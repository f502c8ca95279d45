"""Cubics fitted to a curve that is known point by point."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from littlefold.geometry import Cubic, Path

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.geometry import Point, Vector

# A fitted curve is nowhere further from the true one than this [mm].  Larger: a turned edge visibly misses
# its seam.  Smaller: more cubics; the error falls with the fourth power of their number.
FIT = 0.005

# How far to either side a direction is felt for, as a part of the piece fitted.
FEELER = 1e-5

# A piece is halved no more often than this; at a true corner halving never ends.
HALVINGS = 8


def fitted(curve: Callable[[float], Point], *stops: float) -> Path:
    """A path of cubics along a curve given as a function; smooth between each two of the stops.

    Args:
        curve: The point at each parameter, from the first stop to the last.
        stops: Two or more parameters, rising; the ends of the curve and its corners.
    """
    pieces = [cubic for low, high in pairwise(stops) for cubic in _between(curve, low, high, HALVINGS)]
    return Path.joined(*(Path((piece,)) for piece in pieces))


def _between(curve: Callable[[float], Point], low: float, high: float, halvings: int) -> list[Cubic]:
    piece = _hermite(curve, low, high)
    if halvings == 0 or _is_near(piece, curve, low, high):
        return [piece]
    middle = (low + high) / 2
    return [*_between(curve, low, middle, halvings - 1), *_between(curve, middle, high, halvings - 1)]


def _hermite(curve: Callable[[float], Point], low: float, high: float) -> Cubic:
    """The cubic with the ends, and the speeds there, of the curve."""
    start, end, third = curve(low), curve(high), (high - low) / 3
    return Cubic(
        start, start + _speed(curve, low, high) * third, end + _speed(curve, high, low) * -third, end
    )


def _speed(curve: Callable[[float], Point], at: float, towards: float) -> Vector:
    """The derivative at an end of a piece, from within; right to the second order."""
    step = (towards - at) * FEELER
    here, near, far = curve(at), curve(at + step), curve(at + 2 * step)
    return ((near - here) * 4 - (far - here)) / (2 * step)


def _is_near(piece: Cubic, curve: Callable[[float], Point], low: float, high: float) -> bool:
    """Whether a cubic keeps to the curve at places between its ends (its parameter need not agree)."""
    for fraction in (0.2, 0.4, 0.6, 0.8):
        true = curve(low + (high - low) * fraction)
        if piece.at(piece.nearest(true)).distance(true) > FIT:
            return False
    return True
