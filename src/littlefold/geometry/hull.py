"""Where a segment lies at most, told at a glance: how near it can come to a point, a box that holds it."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING

from .bezier import Cubic
from .bounds import Bounds

if TYPE_CHECKING:
    from .point import Point
    from .segment import Segment


def least_distance(segment: Segment, point: Point) -> float:
    """A length that no place of the segment is nearer to the point than [mm].

    A cubic lies within the box of its control points; of other segments nothing is told, they are quick to ask.
    """
    if not isinstance(segment, Cubic):
        return 0.0
    p, q, r, e = segment.start, segment.control1, segment.control2, segment.end
    x, y = point.x, point.y
    across = max(0.0, min(p.x, q.x, r.x, e.x) - x, x - max(p.x, q.x, r.x, e.x))
    upward = max(0.0, min(p.y, q.y, r.y, e.y) - y, y - max(p.y, q.y, r.y, e.y))
    return hypot(across, upward)


def box_round(segment: Segment) -> Bounds:
    """A box that holds a segment, if not always the smallest: of a cubic, that of its control points."""
    if isinstance(segment, Cubic):
        return Bounds.of_points(segment.start, segment.control1, segment.control2, segment.end)
    return segment.bounds()
