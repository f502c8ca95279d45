"""A smooth curve known by its places and directions, written as cubics.

Each cubic has the ends and the end directions of its part.  The lengths of its two handles are those with
the least squares of the distances between curve and cubic, measured square to the curve, so that the
parameters of the two need not agree; a part whose cubic still strays too far is halved.  The idea of
fitting handle lengths by least squares is Schneider's (Graphics Gems, 1990, "An algorithm for automatically
fitting digitized curves").
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, inf
from typing import NamedTuple, Protocol

from .bezier import Cubic
from .point import Point
from .tolerance import OFFSET


class Sample(NamedTuple):
    """A place (x, y) of a curve, the direction (u, v) there, of length 1, and the speed that way, negative backwards.

    Plain numbers, since a fit asks for some tens of them.
    """

    x: float
    y: float
    u: float
    v: float
    speed: float


class Followed(Protocol):
    """A curve that can be asked for samples."""

    def sample(self, t: float) -> Sample:
        """The curve at a parameter."""


# Where a part is compared with its cubic; where a part is halved, its middle is asked for already.  More places:
# slower.  Fewer: two handles through two places fit worse.
PROBES = (0.16, 0.5, 0.84)

# Where a cubic that fits is checked once more: between the probes, where an error that changes its sign would hide,
# and near the ends, where curves of uneven speed bend most.
CHECKS = (0.06, 0.33, 0.67, 0.94)

# Handle lengths and parameters are improved in turn so often.  Fewer: more parts.
ROUNDS = 3

# A cubic that strays by more than so many tolerances after a round is given up: of some hundred offset edges hardly
# one came right that had strayed by more.  Larger: slower.  Smaller: more parts.
HOPELESS = 5.0

# The weight that holds the handles to those of equal speed where the curve is so straight that their length
# does not matter.  Larger: a worse fit.  Smaller: handles of nearly straight parts wander.
HOLD = 1e-3

# A handle is no longer than so many chords.  Larger: where a curve turns about within a hair's breadth, its speed has
# no meaning and handles run away.  Smaller: parts that bend much are halved once more.
LONGEST = 10.0

# Halving ends here; what is then left is shorter than a thousandth of the curve.
DEEPEST = 10


def fitted(curve: Followed, low: float, high: float, tolerance: float = OFFSET) -> tuple[Cubic, ...]:
    """Cubics that follow a curve between two parameters.

    Args:
        curve: The curve; it runs forwards all along, or backwards all along.
        low: The parameter at which to begin.
        high: The parameter at which to end.
        tolerance: How far the cubics may stray sideways [mm].
    """
    ends = curve.sample(low), curve.sample(high)
    return tuple(_Fit(curve, tolerance).parts((low, high), ends, DEEPEST))


@dataclass(frozen=True, slots=True)
class _Fit:
    """A curve to be followed, and how closely [mm]."""

    curve: Followed
    tolerance: float

    def parts(self, span: tuple[float, float], ends: tuple[Sample, Sample], depth: int) -> list[Cubic]:
        """The cubics between two parameters, with the samples there, halved as often as need be."""
        low, high = span
        inside = [self.curve.sample(low + (high - low) * t) for t in PROBES]
        handles, error = self.best(span, ends, inside)
        if depth == 0 or error <= self.tolerance / 2:
            return [_cubic(*ends, handles)]
        half, middle = (low + high) / 2, inside[1]
        before = self.parts((low, half), (ends[0], middle), depth - 1)
        return before + self.parts((half, high), (middle, ends[1]), depth - 1)

    def best(
        self, span: tuple[float, float], ends: tuple[Sample, Sample], inside: list[Sample]
    ) -> tuple[tuple[float, float], float]:
        """The handle lengths of the best single cubic between two parameters, and how far it strays [mm]."""
        start, end = ends
        step = span[1] - span[0]
        plain = (start.speed * step / 3, end.speed * step / 3)
        furthest = LONGEST * hypot(end.x - start.x, end.y - start.y)
        places: tuple[float, ...] = PROBES
        handles, error = plain, inf
        for _ in range(ROUNDS):
            handles = _handles(start, end, inside, places, plain)
            if handles[0] * inside[0].speed < 0 or handles[1] * inside[-1].speed < 0:
                handles = plain
            handles = _held(handles, furthest)
            bow = _bow(start, end, handles)
            places, error = _compared(bow, places, inside)
            if error <= self.tolerance / 2:
                error = self.checked(bow, span[0], step)
                break
            if error > HOPELESS * self.tolerance:
                break
        return handles, error

    def checked(self, bow: _Bow, low: float, step: float) -> float:
        """How far a cubic strays at places that it was not fitted to [mm]."""
        samples = [self.curve.sample(low + step * t) for t in CHECKS]
        places, _ = _compared(bow, CHECKS, samples)
        return _compared(bow, places, samples)[1]


class _Bow(NamedTuple):
    """A cubic as two polynomials of its parameter: x = ((ax t + bx) t + cx) t + x0, y likewise."""

    ax: float
    bx: float
    cx: float
    x0: float
    ay: float
    by: float
    cy: float
    y0: float


def _bow(start: Sample, end: Sample, handles: tuple[float, float]) -> _Bow:
    """The polynomials of the cubic with handles of given lengths along the end directions."""
    out, back = 3 * handles[0], 3 * handles[1]
    right, up = end.x - start.x, end.y - start.y
    cx, cy, ex, ey = start.u * out, start.v * out, end.u * back, end.v * back
    return _Bow(
        cx + ex - 2 * right,
        3 * right - 2 * cx - ex,
        cx,
        start.x,
        cy + ey - 2 * up,
        3 * up - 2 * cy - ey,
        cy,
        start.y,
    )


def _cubic(start: Sample, end: Sample, handles: tuple[float, float]) -> Cubic:
    """The same cubic as a curve."""
    out, back = handles
    return Cubic(
        Point(start.x, start.y),
        Point(start.x + start.u * out, start.y + start.v * out),
        Point(end.x - end.u * back, end.y - end.v * back),
        Point(end.x, end.y),
    )


def _held(handles: tuple[float, float], furthest: float) -> tuple[float, float]:
    """The handles, neither longer than `furthest`."""
    out, back = handles
    if -furthest <= out <= furthest and -furthest <= back <= furthest:
        return handles
    return max(-furthest, min(furthest, out)), max(-furthest, min(furthest, back))


def _handles(
    start: Sample,
    end: Sample,
    inside: list[Sample],
    places: tuple[float, ...],
    plain: tuple[float, float],
) -> tuple[float, float]:
    """The handle lengths with the least squares of the sideways distances: two equations in two unknowns."""
    hold = HOLD * HOLD
    aa, ab, bb, ar, br = hold, 0.0, hold, hold * plain[0], hold * plain[1]
    x0, y0, u0, v0, _ = start
    x1, y1, u1, v1, _ = end
    for (x, y, u, v, _speed), t in zip(inside, places, strict=True):
        s = 1 - t
        a = 3 * s * s * t * (u * v0 - v * u0)
        b = 3 * s * t * t * (v * u1 - u * v1)
        share = t * t * (3 - 2 * t)
        rest = u * (y - y0 - (y1 - y0) * share) - v * (x - x0 - (x1 - x0) * share)
        aa, ab, bb = aa + a * a, ab + a * b, bb + b * b
        ar, br = ar + a * rest, br + b * rest
    below = aa * bb - ab * ab
    return ((ar * bb - br * ab) / below, (br * aa - ar * ab) / below)


def _compared(bow: _Bow, places: tuple[float, ...], inside: list[Sample]) -> tuple[tuple[float, ...], float]:
    """Where a cubic passes the samples, a Newton step better than before, and how far off the worst [mm].

    A hundredth of the way by which a place was off along the curve counts too: on a radius of 25 mm a place
    that is off by 0.5 mm shifts the sideways distance by 0.005 mm.
    """
    ax, bx, cx, x0, ay, by, cy, y0 = bow
    faster_x, fast_x, faster_y, fast_y = 3 * ax, 2 * bx, 3 * ay, 2 * by
    better, worst = [], 0.0
    for t, (x, y, u, v, _speed) in zip(places, inside, strict=True):
        right = x - x0 - ((ax * t + bx) * t + cx) * t
        up = y - y0 - ((ay * t + by) * t + cy) * t
        slip = right * u + up * v
        ahead = ((faster_x * t + fast_x) * t + cx) * u + ((faster_y * t + fast_y) * t + cy) * v
        off = abs(right * v - up * u)
        along = abs(slip) / 100
        if off > worst or along > worst:
            worst = max(off, along)
        nearer = t + slip / ahead if ahead != 0 else t
        better.append(0.0 if nearer < 0 else nearer if nearer < 1 else 1.0)
    return tuple(better), worst
