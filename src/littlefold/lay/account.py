"""A lay as plain values for JSON: placements, length, share used, and that it was verified."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.lay.convex import ring_of
from littlefold.lay.verify import verify

if TYPE_CHECKING:
    from littlefold.lay.cloth import Repeat
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay, Placement


def lay_values(lay: Lay) -> dict[str, Any]:
    """The lay with names that say their units; `verified` comes from a fresh check."""
    cloth = lay.cloth
    return {
        "cloth": cloth.name,
        "width_mm": cloth.width,
        "usable_width_mm": cloth.usable_width,
        "way": str(lay.spread.way),
        "length_mm": lay.cloth_length,
        "length_to_buy_mm": lay.to_buy,
        "price": lay.price,
        "share_used": lay.share_used,
        "gap_mm": lay.gap,
        "maker": lay.maker,
        "shrinkage": {
            "along": cloth.shrinkage.along,
            "across": cloth.shrinkage.across,
            "done": str(cloth.treatment),
        },
        "repeat": None if cloth.repeat is None else _repeat(cloth.repeat),
        "verified": not verify(lay),
        "placements": [_placement(lay, placement) for placement in lay.placements],
    }


def _repeat(repeat: Repeat) -> dict[str, Any]:
    return {
        "along_mm": repeat.along,
        "across_mm": repeat.across,
        "uneven_along": repeat.uneven_along,
        "uneven_across": repeat.uneven_across,
    }


def _placement(lay: Lay, placement: Placement) -> dict[str, Any]:
    """A cut with its outline where it lies, so that a reader needs no frame of ours to check it."""
    return {
        "piece": placement.piece,
        "on_fold": placement.half,
        "layers": placement.layers,
        "degrees": placement.degrees,
        "sign": [placement.sign.along, placement.sign.across],
        "x_mm": placement.at.x,
        "y_mm": placement.at.y,
        "outline_mm": [[float(x), float(y)] for x, y in ring_of(lay.shape(placement))],
    }


def row_values(row: Row) -> dict[str, Any]:
    """A row of the comparison."""
    bounds = row.bounds
    return {
        "way": str(row.way),
        "width_mm": row.width,
        "length_mm": None if row.lay is None else row.lay.cloth_length,
        "length_to_buy_mm": row.to_buy,
        "share_used": None if row.lay is None else row.lay.share_used,
        "price": row.price,
        "bound_mm": None if bounds is None else bounds.most,
        "binds": None if bounds is None else bounds.binding,
        "problems": [problem.message for problem in row.problems],
    }
