"""Whether outlines are simple and lie within each other: polygon questions, asked of shapely."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import shapely
from shapely import LineString, MultiLineString, MultiPolygon, Polygon, make_valid
from shapely.geometry.polygon import orient

from littlefold.geometry import Path, Point

if TYPE_CHECKING:
    from numpy.typing import NDArray
    from shapely import LinearRing
    from shapely.geometry.base import BaseGeometry

# The part of a stitch outline that may lie outside its cutting line [mm2 per mm of outline]: where both lie
# on each other, flattening puts slivers of that width between them.
SLIVER = 0.05

# Where the plain difference of two polygons seems too large it is taken again with corners on this grid [mm]: it
# has been seen to answer with the whole polygon where two sides lie on each other but for rounding (1e-14 mm).
GRID = 1e-6


def polygon(outline: Path) -> Polygon:
    """A closed path as a polygon, flattened."""
    corners = _coordinates(outline)[:-1]
    return shapely.polygons(corners if len(corners) > 2 else np.tile(corners, (2, 1)))  # noqa: PLR2004 - there and back is no ring


def line_string(line: Path) -> LineString:
    """A path as a string of lines, flattened."""
    return shapely.linestrings(_coordinates(line))


def _coordinates(line: Path) -> NDArray[np.float64]:
    """The places of a flattened path, one in a row."""
    return np.array(line.coordinates).reshape(-1, 2)


def parallel(line: Path, distance: float) -> Path | None:
    """The line at a distance to the left of another, of straight pieces; None where it falls apart."""
    found = shapely.offset_curve(line_string(line), distance, join_style="mitre")
    if not isinstance(found, LineString) or found.is_empty:
        return None
    return Path.line_through(*(Point(x, y) for x, y in found.coords))


def bare(within: Polygon, around: Polygon) -> Polygon | MultiPolygon:
    """What lies within one polygon and not within another; nearly always nothing, which is quicker to see than to cut."""
    if around.covers(within):
        return Polygon()
    plain = shapely.difference(within, around)
    return plain if is_sliver(plain, within) else shapely.difference(within, around, grid_size=GRID)


def is_sliver(part: Polygon | MultiPolygon, whole: Polygon) -> bool:
    """Whether a part of a polygon is so narrow that flattening alone may have made it."""
    return bool(part.area <= SLIVER * whole.length)


def self_meeting(loop: LinearRing) -> Point:
    """A point at which a ring that is not simple crosses or touches itself: more than two of its parts end there."""
    ends: dict[tuple[float, float], int] = {}
    for part in shapely.get_parts(shapely.node(loop)):
        for end in (part.coords[0], part.coords[-1]):
            ends[end] = ends.get(end, 0) + 1
    x, y = max(ends, key=lambda end: ends[end])
    return Point(x, y)


def widened(outline: Path, by: float) -> Path:
    """A closed outline, simple or not, with one margin all round and round corners; straight lines only."""
    line = line_string(outline)
    return _ring(make_valid(polygon(outline)).union(line).buffer(by))


def _ring(shape: BaseGeometry) -> Path:
    biggest = max(getattr(shape, "geoms", [shape]), key=lambda part: part.area)
    return Path.line_through(*(Point(x, y) for x, y in orient(biggest).exterior.coords))


def stretch_inside(line: Path, shape: Polygon, about: Point) -> tuple[Point, Point] | None:
    """The ends of that stretch of an open line inside a shape that lies nearest to a point."""
    cut = line_string(line).intersection(shape)
    stretches = [part for part in _lines(cut) if part.length > 0]
    if not stretches:
        return None
    here = LineString([(about.x, about.y), (about.x, about.y)])
    nearest = min(stretches, key=lambda part: part.distance(here))
    (x0, y0), (x1, y1) = nearest.coords[0], nearest.coords[-1]
    return Point(x0, y0), Point(x1, y1)


def _lines(shape: BaseGeometry) -> list[LineString]:
    if isinstance(shape, LineString):
        return [shape]
    if isinstance(shape, MultiLineString):
        return list(shape.geoms)
    return [part for part in getattr(shape, "geoms", []) if isinstance(part, LineString)]
