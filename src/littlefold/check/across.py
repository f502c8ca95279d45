"""Widths of a piece across its grain."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING, Final

import shapely

from littlefold.draft.model import EdgeKind
from littlefold.geometry import Affine, Vector

from .area import ring

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from littlefold.geometry import Point
    from littlefold.pattern.model import Piece

# A fold within this angle [rad] of the grain runs along it; 0.1 mm in 1 m.
ANGLE: Final = 1e-4


def upright(piece: Piece) -> Affine:
    """The turn that stands the grain of a piece upright; none where the grain has no direction."""
    start, end = piece.grain
    way = end - start
    return Affine.rotation(pi / 2 - way.angle) if way.length > 0 else Affine.identity()


def width_at(piece: Piece, point: Point) -> float:
    """How far apart the sides of the whole piece are, square to the grain through a point, on the stitch line [mm]."""
    doubled = _is_folded_along_grain(piece)
    places = _met(ring((piece.outline if doubled else piece.unfolded).stitch), point, square_to_grain(piece))
    chord = float(places.max() - places.min()) if len(places) else 0.0
    return 2 * chord if doubled else chord


def _met(outline: shapely.LinearRing, point: Point, way: Vector) -> NDArray[np.float64]:
    """Where a line through a point meets an outline: the places along its direction [mm]."""
    corners = shapely.get_coordinates(outline) - (point.x, point.y)
    along, aside = corners @ (way.x, way.y), corners @ (-way.y, way.x)
    before, after = aside[:-1], aside[1:]
    crossed = (before * after <= 0) & (before != after)
    share = before[crossed] / (before[crossed] - after[crossed])
    places: NDArray[np.float64] = along[:-1][crossed] + share * (along[1:] - along[:-1])[crossed]
    return places


def _is_folded_along_grain(piece: Piece) -> bool:
    """Whether the fold runs along the grain, so that every width of the whole piece is twice that of its half."""
    folds = [edge.path for edge in piece.edges if edge.kind is EdgeKind.FOLD]
    square = square_to_grain(piece)
    return len(folds) == 1 and abs((folds[0].end - folds[0].start).dot(square)) < ANGLE * folds[0].length()


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
