"""Two trial values between which a goal is met, searched outward from a start.

The search never goes further at once than twice as far as it has come on that side, nor past the last stride before the
goal would be met at the rate at which it nears.  Where nothing is found so, every stride is looked at.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

STRIDES = 40
"""The bounds are searched in this many strides; two solutions within one stride can be overlooked."""

Gap = Callable[[float], float | None]
"""How far a goal is missed at a value, with its sign; None where that cannot be told."""


@dataclass(frozen=True, slots=True)
class _Side:
    """How far the search has come on one side of the start, the gap there, and how far it goes next; in strides."""

    sign: int
    come: int
    gap: float | None
    leap: int = 1

    @property
    def going(self) -> int:
        return self.come + self.leap


Leap = Callable[[_Side, int, float | None], int]


def bracket(gap: Gap, low: float, high: float, start: float) -> tuple[float, float] | None:
    """Two values between which a gap changes its sign, those found first from the start outward.

    Args:
        gap: The gap; each value is asked for once.
        low: The lowest value.
        high: The highest value.
        start: The value from which the search goes out, between them.

    Returns:
        The values, the lower first, both the start where it fits; None where the gap has one sign wherever it is told.
    """
    look = cache(gap)
    stride = (high - low) / STRIDES

    def value(count: int) -> float:
        return min(high, max(low, start + count * stride))

    if look(start) == 0:
        return (start, start)
    return _outward(look, value, _bounded) or _outward(look, value, _single)


def _outward(look: Gap, value: Callable[[int], float], leap: Leap) -> tuple[float, float] | None:
    """The search on both sides, always on the one that is nearer to the start."""
    here = look(value(0))
    sides = [_Side(1, 0, here), _Side(-1, 0, here)]
    while sides:
        side = min(sides, key=lambda one: one.going)
        last, place = value(side.sign * side.come), value(side.sign * side.going)
        if place == last:
            sides.remove(side)
            continue
        gap = look(place)
        if gap is not None and side.gap is not None and gap * side.gap <= 0:
            return (min(place, last), max(place, last))
        sides[sides.index(side)] = _Side(side.sign, side.going, gap, leap(side, side.going, gap))
    return None


def _single(side: _Side, come: int, gap: float | None) -> int:  # noqa: ARG001
    """Stride after stride."""
    return 1


def _bounded(side: _Side, come: int, gap: float | None) -> int:
    """Twice as far as it has come, or to the last stride before the goal would be met, whichever is nearer."""
    if gap is None or side.gap is None:
        return 1
    nearing = (abs(side.gap) - abs(gap)) / (come - side.come)
    return max(1, min(2 * come, int(abs(gap) / nearing))) if nearing > 0 else 2 * come
