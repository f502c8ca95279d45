"""Finding room for words inside a piece."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin
from typing import TYPE_CHECKING

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry import box

from littlefold.drawing import Fill, Label, Stroke, label_bounds
from littlefold.geometry import Point
from littlefold.pattern.simple import polygon

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.drawing import Mark
    from littlefold.geometry import Path

# Words keep this far from every line [mm].
AIR = 2.0

# A place is looked for on a grid of this many steps each way.  More: slower.  Fewer: tight places are missed.
STEPS = 14


@dataclass(frozen=True, slots=True)
class Place:
    """The lower left corner of a block of words, and the direction in which it is read [rad]."""

    corner: Point
    angle: float


@dataclass(frozen=True, slots=True)
class Room:
    """The free part of a piece, as seen by words read level and by words read upwards."""

    free: Polygon

    def level(self, width: float, height: float) -> Place | None:
        """A place for a block of words read level, near the middle; None if there is none."""
        corner = self._corner(width, height)
        return None if corner is None else Place(corner, 0.0)

    def upright(self, width: float, height: float) -> Place | None:
        """A place for a block of words read upwards, near the middle; None if there is none."""
        corner = self._corner(height, width)
        return None if corner is None else Place(Point(corner.x + height, corner.y), pi / 2)

    def _corner(self, width: float, height: float) -> Point | None:
        """The lower left corner of an upright rectangle in the free part."""
        left, bottom, right, top = self.free.bounds
        if right - left < width or top - bottom < height:
            return None
        xs, ys = np.linspace(left, right - width, STEPS), np.linspace(bottom, top - height, STEPS)
        corners = np.array([(x, y) for x in xs for y in ys])
        boxes = shapely.box(corners[:, 0], corners[:, 1], corners[:, 0] + width, corners[:, 1] + height)
        fits = corners[shapely.contains(self.free, boxes)]
        if len(fits) == 0:
            return None
        middle = np.array(self.free.centroid.coords[0]) - (width / 2, height / 2)
        best = fits[np.argmin(np.abs(fits - middle).sum(axis=1))]
        return Point(float(best[0]), float(best[1]))


def room(outline: Path, marks: Iterable[Mark]) -> Room:
    """The inside of an outline without what is drawn there already."""
    inner = polygon(outline).buffer(-AIR)
    taken = shapely.union_all([_shape(mark).buffer(AIR) for mark in marks])
    free = inner.difference(taken)
    shapely.prepare(free)
    return Room(free)


def _shape(mark: Mark) -> shapely.Geometry:
    if isinstance(mark, Stroke | Fill):
        return LineString([(p.x, p.y) for p in mark.path.flatten(0.1)])
    if isinstance(mark, Label):
        bounds = label_bounds(mark)
        return box(bounds.left, bounds.bottom, bounds.right, bounds.top)
    return shapely.Point(mark.at.x, mark.at.y)


def shifted(place: Place, along: float, up: float) -> Point:
    """The point some way along the lines of a block and some way above its lower edge [mm]."""
    c, s = cos(place.angle), sin(place.angle)
    return Point(place.corner.x + along * c - up * s, place.corner.y + along * s + up * c)
