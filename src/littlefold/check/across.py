"""Widths of a piece across its grain."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np
import shapely

from littlefold.draft.model import EdgeKind
from littlefold.geometry import ORIGIN, Vector

if TYPE_CHECKING:
    from shapely import Polygon

    from littlefold.geometry import Path, Point
    from littlefold.pattern.model import Piece

# A fold within this angle [rad] of the grain runs along it; 0.1 mm in 1 m.
ANGLE: Final = 1e-4


def width_at(piece: Piece, point: Point) -> float:
    """How far apart the sides of the whole piece are, square to the grain through a point, on the stitch line [mm]."""
    doubled = _is_folded_along_grain(piece)
    outline = piece.outline if doubled else piece.unfolded
    places = _met(outline.within, point, square_to_grain(piece))
    chord = max(places) - min(places) if places else 0.0
    return 2 * chord if doubled else chord


def _met(outline: Polygon, point: Point, way: Vector) -> list[float]:
    """Where a line through a point meets an outline: the places along its direction [mm]."""
    corners = shapely.get_coordinates(outline) - (point.x, point.y)
    along, aside = corners @ (way.x, way.y), corners @ (-way.y, way.x)
    before, after = aside[:-1], aside[1:]
    crossed = (before * after <= 0) & (before != after)
    share = before[crossed] / (before[crossed] - after[crossed])
    places: list[float] = (along[:-1][crossed] + share * (along[1:] - along[:-1])[crossed]).tolist()
    return places


def _is_folded_along_grain(piece: Piece) -> bool:
    """Whether the fold runs along the grain, so that every width of the whole piece is twice that of its half."""
    folds = [edge.path for edge in piece.edges if edge.kind is EdgeKind.FOLD]
    square = square_to_grain(piece)
    return len(folds) == 1 and abs((folds[0].end - folds[0].start).dot(square)) < ANGLE * folds[0].length()


def square_to_grain(piece: Piece) -> Vector:
    """The direction across a piece, of length 1."""
    return piece.grain_way.turned_right()


def along(piece: Piece, point: Point) -> float:
    """The height of a point along the grain [mm]; only differences mean anything."""
    return (point - ORIGIN).dot(piece.grain_way)


def across(piece: Piece, point: Point) -> float:
    """The place of a point across the grain [mm]; only differences mean anything."""
    return (point - ORIGIN).dot(square_to_grain(piece))


def height(piece: Piece) -> float:
    """How long a piece is along its grain, on the stitch line [mm]."""
    return extent(piece.outline.stitch, piece.grain_way)


def extent(outline: Path, way: Vector) -> float:
    """How far an outline reaches in a direction of length 1 [mm], to the chords of its curves."""
    return float(np.ptp(np.array(outline.coordinates).reshape(-1, 2) @ (way.x, way.y)))
