"""Widths of a piece across its grain."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

import shapely

from littlefold.geometry import Affine, Vector

from .area import area

if TYPE_CHECKING:
    from littlefold.geometry import Point
    from littlefold.pattern.model import Piece


def upright(piece: Piece) -> Affine:
    """The turn that stands the grain of a piece upright; none where the grain has no direction."""
    start, end = piece.grain
    way = end - start
    return Affine.rotation(pi / 2 - way.angle) if way.length > 0 else Affine.identity()


def width_at(piece: Piece, point: Point) -> float:
    """How far apart the sides of the whole piece are, square to the grain through a point, on the stitch line [mm]."""
    shape, square = area(piece.unfolded.stitch), square_to_grain(piece)
    if not shape.is_valid:
        return 0.0
    left, bottom, right, top = shape.bounds
    reach = right - left + top - bottom
    ends = point + square * reach, point + square * -reach
    line = shapely.LineString([(end.x, end.y) for end in ends])
    met = shapely.get_coordinates(shape.intersection(line))
    places = met @ (square.x, square.y)
    return float(places.max() - places.min()) if len(places) else 0.0


def square_to_grain(piece: Piece) -> Vector:
    """The direction across a piece, of length 1; sideways where the grain has no direction."""
    way = piece.grain[1] - piece.grain[0]
    return way.unit().turned_right() if way.length > 0 else Vector(1.0, 0.0)


def along(piece: Piece, point: Point) -> float:
    """The height of a point along the grain [mm]; only differences mean anything."""
    return upright(piece).apply(point).y


def across(piece: Piece, point: Point) -> float:
    """The place of a point across the grain [mm]; only differences mean anything."""
    return upright(piece).apply(point).x


def height(piece: Piece) -> float:
    """How long a piece is along its grain, on the stitch line [mm]."""
    return piece.outline.stitch.transformed(upright(piece)).bounds().height
