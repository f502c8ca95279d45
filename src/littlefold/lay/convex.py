"""Shapes for the search: a safe outline of a piece, cut into convex parts, and sums of convex parts.

Two pieces overlap exactly where a convex part of one overlaps a convex part of the other, and two convex parts
overlap where the way between their reference points lies inside the sum of the one and the reversed other.  So
everything that the planner asks about two pieces is asked of convex polygons.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import hypot
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
import shapely

if TYPE_CHECKING:
    from collections.abc import Sequence

Points = npt.NDArray[np.float64]
"""An array of shape (n, 2) [mm]."""

# Two convex parts make one if their hull is larger by no more than this share of its area.  Larger: shapes get
# fatter than they are; smaller: rounding keeps neighbours apart that lie in one line.
MERGE = 1e-9

# Mitred corners of a grown outline run out to at most this many times the growth before they are cut off.
MITRE = 3.0


def polygon_of(ring: Points) -> shapely.Polygon:
    """The area inside a ring, counter-clockwise."""
    return shapely.orient_polygons(shapely.Polygon(ring))


def ring_of(polygon: shapely.Polygon) -> Points:
    """The outer ring of a polygon, counter-clockwise, without the closing point."""
    corners = shapely.get_coordinates(shapely.orient_polygons(polygon).exterior)
    return np.asarray(corners[:-1], dtype=np.float64)


def outer_polygon(polygon: shapely.Polygon, grow: float, tolerance: float) -> shapely.Polygon:
    """A polygon of few corners that covers everything within `grow` of the given one.

    It reaches at most `2 * tolerance` further than needed (more at sharp corners).  With neither growth nor
    tolerance the polygon is returned as it is.
    """
    reach = grow + tolerance
    if reach <= 0:
        return polygon
    grown = shapely.buffer(polygon, reach, join_style="mitre", mitre_limit=MITRE)
    return shapely.Polygon(shapely.simplify(grown, tolerance).exterior)


def convex_parts(polygon: shapely.Polygon) -> tuple[Points, ...]:
    """Convex polygons that together cover the polygon: its triangles, merged across long edges first."""
    parts = list(shapely.get_parts(shapely.constrained_delaunay_triangles(polygon)))
    owner = list(range(len(parts)))
    for first, second in _inner_edges(parts):
        i, j = _root(owner, first), _root(owner, second)
        both = _convex_union(parts[i], parts[j])
        if both is not None:
            parts[i], owner[j] = both, i
    return tuple(ring_of(parts[k]) for k in range(len(parts)) if owner[k] == k)


def _inner_edges(triangles: Sequence[shapely.Polygon]) -> list[tuple[int, int]]:
    """The pairs of triangles that share an edge, the longest edge first."""
    seen: dict[frozenset[tuple[float, float]], int] = {}
    shared: list[tuple[float, int, int]] = []
    for number, triangle in enumerate(triangles):
        corners = [(float(x), float(y)) for x, y in ring_of(triangle)]
        for start, end in pairwise([*corners, corners[0]]):
            edge = frozenset((start, end))
            if edge in seen:
                shared.append((hypot(end[0] - start[0], end[1] - start[1]), seen[edge], number))
            seen[edge] = number
    return [(i, j) for _, i, j in sorted(shared, key=lambda edge: (-edge[0], edge[1], edge[2]))]


def _root(owner: list[int], number: int) -> int:
    while owner[number] != number:
        number = owner[number]
    return number


def _convex_union(first: shapely.Polygon, second: shapely.Polygon) -> shapely.Polygon | None:
    hull = shapely.convex_hull(shapely.union(first, second))
    return hull if hull.area - first.area - second.area <= MERGE * hull.area else None


@dataclass(frozen=True, slots=True)
class Fan:
    """A convex polygon as its lowest corner and its edges in the order of their directions."""

    lowest: Points
    edges: Points
    angles: npt.NDArray[np.float64]

    @classmethod
    def of(cls, ring: Points) -> Fan:
        """The fan of a convex ring, in either order of travel."""
        ring = ring if _signed_area(ring) > 0 else ring[::-1]
        first = int(np.lexsort((ring[:, 0], ring[:, 1]))[0])
        ring = np.roll(ring, -first, axis=0)
        edges = np.roll(ring, -1, axis=0) - ring
        return cls(ring[0], edges, np.arctan2(edges[:, 1], edges[:, 0]) % (2 * np.pi))

    def plus(self, other: Fan) -> Points:
        """The corners of the sum of two convex polygons, from the lowest, counter-clockwise."""
        angles = np.concatenate((self.angles, other.angles))
        edges = np.concatenate((self.edges, other.edges))[np.argsort(angles, kind="stable")]
        corners = np.empty_like(edges)
        corners[0] = self.lowest + other.lowest
        np.cumsum(edges[:-1], axis=0, out=corners[1:])
        corners[1:] += corners[0]
        return corners


def _signed_area(ring: Points) -> float:
    x, y = ring[:, 0], ring[:, 1]
    return float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2
