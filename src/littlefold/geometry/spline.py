"""A smooth curve through points."""

from __future__ import annotations

from itertools import pairwise

from .bezier import Cubic
from .curves import curve_between
from .path import Path
from .point import Point, Vector

PAIR = 2


def curve_through(
    points: tuple[Point, ...], start_direction: Vector | None = None, end_direction: Vector | None = None
) -> Path:
    """The cubic spline through points, in order; its direction and curvature are continuous.

    The parameter is the length of the chords, so unequal distances do no harm.  An end with a direction
    leaves (or arrives) that way; an end without one is natural: it does not bend there.  Two points with
    both directions are joined by `curve_between`.

    Raises:
        ValueError: There are fewer than two points.
        ZeroDivisionError: Two neighbours are one point, or a direction has no length.
    """
    if len(points) < PAIR:
        raise ValueError("a curve goes through two points at least")
    if len(points) == PAIR and start_direction is not None and end_direction is not None:
        return Path((curve_between(points[0], points[1], start_direction, end_direction),))
    speeds = _speeds(points, start_direction, end_direction)
    return Path(
        tuple(
            _between(p, q, leave, arrive)
            for (p, q), (leave, arrive) in zip(pairwise(points), pairwise(speeds), strict=True)
        )
    )


def _between(p: Point, q: Point, leave: Vector, arrive: Vector) -> Cubic:
    """The cubic with given derivatives by the chord length at its ends."""
    third = p.distance(q) / 3
    return Cubic(p, p + leave * third, q + arrive * -third, q)


def _speeds(points: tuple[Point, ...], first: Vector | None, last: Vector | None) -> list[Vector]:
    """The derivatives at the points that make the second derivative continuous."""
    steps = [p.distance(q) for p, q in pairwise(points)]
    (leave_x, leave_y), (arrive_x, arrive_y) = _unit(first), _unit(last)
    across = _changes([p.x for p in points], steps, leave_x, arrive_x)
    upward = _changes([p.y for p in points], steps, leave_y, arrive_y)
    return list(map(Vector, across, upward))


def _unit(direction: Vector | None) -> tuple[float, float] | tuple[None, None]:
    """Both coordinates of a direction made one long, if there is one."""
    if direction is None:
        return None, None
    unit = direction.unit()
    return unit.x, unit.y


def _changes(places: list[float], steps: list[float], first: float | None, last: float | None) -> list[float]:
    """The derivatives of one coordinate: a tridiagonal system."""
    slopes = [(q - p) / step for (p, q), step in zip(pairwise(places), steps, strict=True)]
    rows = [_start_row(first, slopes[0])]
    for (h0, h1), (m0, m1) in zip(pairwise(steps), pairwise(slopes), strict=True):
        rows.append((h1, 2 * (h0 + h1), h0, (m0 * h1 + m1 * h0) * 3))
    rows.append(_end_row(last, slopes[-1]))
    return _tridiagonal(rows)


Row = tuple[float, float, float, float]
"""One equation: what stands below, on and above the diagonal, and the right side."""


def _start_row(direction: float | None, slope: float) -> Row:
    """The first equation: the given direction, or no bend."""
    return (0.0, 2.0, 1.0, slope * 3) if direction is None else (0.0, 1.0, 0.0, direction)


def _end_row(direction: float | None, slope: float) -> Row:
    """The last equation: the given direction, or no bend."""
    return (1.0, 2.0, 0.0, slope * 3) if direction is None else (0.0, 1.0, 0.0, direction)


def _tridiagonal(rows: list[Row]) -> list[float]:
    """Thomas' elimination."""
    swept: list[tuple[float, float]] = []
    ratio, value = 0.0, 0.0
    for below, on, above, right in rows:
        pivot = on - below * ratio
        ratio, value = above / pivot, (right - value * below) / pivot
        swept.append((ratio, value))
    found = [swept[-1][1]]
    for ratio, value in reversed(swept[:-1]):
        found.append(value - found[-1] * ratio)
    return found[::-1]
