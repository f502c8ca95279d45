"""Outlines as polygons, for questions of inside and outside (shapely; arcs and curves to `CHORD`).

Many rules look at the same outlines.  Flattening one takes longer than most questions about it, so the polygons of
the last outlines are remembered; they follow from the path alone.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

import shapely

if TYPE_CHECKING:
    from littlefold.geometry import Path, Point

# Outlines remembered: a garment has some ten pieces of four outlines.
REMEMBERED: Final = 128
# Greatest distance from a chord to its curve [mm].  Larger: widths and gaps are off by what a pencil line is wide.
# Smaller: more points, with no effect on what a rule says.
CHORD: Final = 0.1


@lru_cache(maxsize=REMEMBERED)
def ring(path: Path) -> shapely.LinearRing:
    """A closed path as a ring of points; an open one is closed straight."""
    return shapely.linearrings([(p.x, p.y) for p in path.flatten(CHORD)])


@lru_cache(maxsize=REMEMBERED)
def area(path: Path) -> shapely.Polygon:
    """What a closed path encloses."""
    return shapely.polygons(ring(path))


def spot(point: Point) -> shapely.Point:
    """A point as shapely knows it."""
    return shapely.Point(point.x, point.y)
