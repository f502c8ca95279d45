"""Outlines as polygons, for questions of inside and outside (shapely; arcs and curves to `FLATNESS`)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

if TYPE_CHECKING:
    from littlefold.geometry import Path, Point


def ring(path: Path) -> shapely.LinearRing:
    """A closed path as a ring of points; an open one is closed straight."""
    return shapely.LinearRing([(p.x, p.y) for p in path.flatten()])


def area(path: Path) -> shapely.Polygon:
    """What a closed path encloses."""
    return shapely.Polygon(ring(path))


def track(path: Path) -> shapely.LineString:
    """A path as a chain of points."""
    return shapely.LineString([(p.x, p.y) for p in path.flatten()])


def spot(point: Point) -> shapely.Point:
    """A point as shapely knows it."""
    return shapely.Point(point.x, point.y)
