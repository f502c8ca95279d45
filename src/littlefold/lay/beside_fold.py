"""The least length of a half on a fold and one other piece, when the two are too deep to lie side by side.

A half on the fold cannot be moved across the cloth, and a piece that is nearly as deep as the folded cloth (a strip on
the bias is as deep as it is long) only a little.  So the two alone take a length under which no lay that has them can be.

Every place of the other piece lies in some cell of a lattice.  Where it would lie too near to the half in the middle of
a cell, even if it might be nearer by half a diagonal of the cell, it does so in all of the cell.  Of the cells that are
left the one with the shortest lay counts, less half a step.  Turned or mirrored pieces are allowed even where nap
forbids them, so the bound may be too short there, never too long.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from math import ceil, hypot
from typing import TYPE_CHECKING, Final

import numpy as np
import shapely

from littlefold.lay.deal import EXACT
from littlefold.lay.piece import mirrored, rotated, turned

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy.typing as npt

    from littlefold.lay.deal import Cut

# The side of a cell [mm].  Larger: the bound gets shorter by about as much; smaller: it takes longer.
CELL = 3.0

# How much nearer than the gap two pieces may seem to lie [mm].
HAIR = 0.01


@dataclass(frozen=True, slots=True)
class Beside:
    """A half on the fold and a piece that does not lie beside it, by their names; the length the two ask for [mm]."""

    length: float = 0.0
    half: str = ""
    other: str = ""


ALL_BESIDE: Final = Beside()
"""Every piece lies beside every half."""


def least_beside(cuts: Sequence[Cut], height: float, gap: float, enough: float) -> Beside:
    """The half on one fold and the other cut that ask for the greatest length on cloth of one zone.

    A pair that may be laid in `enough` [mm], a length that is known to be needed, says nothing; 0 if all are so.
    """
    once = {(cut.piece.name, cut.half): cut for cut in cuts}.values()
    pairs = product((cut for cut in once if cut.half), (cut for cut in once if not cut.half))
    found = (
        Beside(_least(half.piece.polygon, cut, height, gap, enough), half.piece.name, cut.piece.name)
        for half, cut in pairs
    )
    return max((one for one in found if one.length), key=lambda one: one.length, default=ALL_BESIDE)


def _least(half: shapely.Polygon, cut: Cut, height: float, gap: float, enough: float) -> float:
    """The least length of the two over all ways in which the other may lie; 0 if it is no more than enough."""
    least = np.inf
    for other in _ways(cut):
        if _depth(other) <= height + EXACT:
            least = min(least, _beside(half, other, height, gap, enough))
        if least <= enough:
            return 0.0
    return float(least) if np.isfinite(least) else 0.0


def _ways(cut: Cut) -> list[shapely.Polygon]:
    """The shape at each angle, turned and mirrored, its lower left corner at the origin."""
    plain = [rotated(cut.piece.whole, degrees) for degrees in cut.angles]
    ways = [way for one in plain for way in (one, mirrored(one), turned(one), turned(mirrored(one)))]
    return [_cornered(way) for way in ways]


def _cornered(shape: shapely.Polygon) -> shapely.Polygon:
    left, low, _, _ = shape.bounds
    return shapely.transform(shape, lambda xy: xy - np.array((left, low)))


def _depth(shape: shapely.Polygon) -> float:
    return float(shape.bounds[3])


def _beside(half: shapely.Polygon, other: shapely.Polygon, height: float, gap: float, enough: float) -> float:
    """The least length of a half and another piece in one stance [mm]; `enough` if it is no more than that."""
    start, _, end, top = half.bounds
    long = other.bounds[2]
    if _depth(other) + top + gap <= height:
        return enough
    heights = _middles(0.0, height - _depth(other))
    room = half.buffer(gap - HAIR - CELL * hypot(0.5, 0.5))
    shapely.prepare(room)
    ways = _middles(start - long - gap, end + gap + CELL)
    lengths = np.maximum(ways + long, end) - np.minimum(ways, start)
    for k in _in_turn(lengths, enough):
        if _is_free(room, other, float(ways[k]), heights):
            return max(float(lengths[k]) - CELL / 2, enough)
    return enough


def _in_turn(lengths: npt.NDArray[np.float64], enough: float) -> npt.NDArray[np.intp]:
    """The order in which cells are tried: those that say nothing, the longest first, as it is likely free; then upwards."""
    upwards = np.argsort(lengths)
    silent = int(np.count_nonzero(lengths - CELL / 2 <= enough))
    return np.concatenate((upwards[:silent][::-1], upwards[silent:]))


def _middles(low: float, high: float) -> npt.NDArray[np.float64]:
    """The middles of cells that cover a range."""
    count = max(1, ceil((high - low) / CELL))
    return low + CELL * (np.arange(count, dtype=np.float64) + 0.5)


def _is_free(
    room: shapely.Polygon, other: shapely.Polygon, way: float, heights: npt.NDArray[np.float64]
) -> bool:
    corners = shapely.get_coordinates(other)
    moved = shapely.polygons([corners + np.array((way, height)) for height in heights])
    return not bool(shapely.intersects(room, moved).all())
