"""Widths of a piece across its grain."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING, Final

import shapely

from littlefold.geometry import Affine

from .area import area

if TYPE_CHECKING:
    from littlefold.geometry import Point
    from littlefold.pattern.model import Piece

BEYOND: Final = 1.0  # mm: how far a measuring line reaches out of the piece on both sides


def upright(piece: Piece) -> Affine:
    """The turn that stands the grain of a piece upright; none where the grain has no direction."""
    start, end = piece.grain
    way = end - start
    return Affine.rotation(pi / 2 - way.angle) if way.length > 0 else Affine.identity()


def width_at(piece: Piece, point: Point) -> float:
    """How wide the whole piece is on the stitch line, square to the grain through a point [mm]."""
    turned = upright(piece)
    shape = area(piece.unfolded.stitch.transformed(turned))
    if not shape.is_valid:
        return 0.0
    left, _, right, _ = shape.bounds
    level = turned.apply(point).y
    line = shapely.LineString([(left - BEYOND, level), (right + BEYOND, level)])
    return float(shape.intersection(line).length)


def along(piece: Piece, point: Point) -> float:
    """The height of a point along the grain [mm]; only differences mean anything."""
    return upright(piece).apply(point).y


def across(piece: Piece, point: Point) -> float:
    """The place of a point across the grain [mm]; only differences mean anything."""
    return upright(piece).apply(point).x


def height(piece: Piece) -> float:
    """How long a piece is along its grain, on the stitch line [mm]."""
    return piece.outline.stitch.transformed(upright(piece)).bounds().height
