"""How often a polygon goes round a point."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .point import Point


def winding_number(polygon: tuple[Point, ...], point: Point) -> int:
    """How often a closed polygon goes round a point, counter-clockwise counted positive.

    Each edge that passes the ray to the right of the point upwards adds one, each that passes it downwards
    takes one away.  For a point on the polygon itself the answer may be that of either side.

    Args:
        polygon: Its corners, the first repeated at the end.
        point: The point.
    """
    x, y = point.x, point.y
    turns = 0
    for p, q in pairwise(polygon):
        if (p.y <= y) != (q.y <= y):
            side = (q.x - p.x) * (y - p.y) - (x - p.x) * (q.y - p.y)
            turns += _passing(side, upwards=q.y > p.y)
    return turns


def _passing(side: float, *, upwards: bool) -> int:
    """What an edge that crosses the height of the point adds."""
    if upwards:
        return 1 if side > 0 else 0
    return -1 if side < 0 else 0
