"""The least length of a row of pieces on one fold: they follow each other along it in some order, each as near as it goes.

The edges on the fold are disjoint, so the pieces have an order.  Each pair that follows each other stands at least as far
apart as the two alone could, and before the first and behind the last there is room for what sticks out over its edge.
The best order, each piece as drawn or turned end for end, gives a length under which no lay on this fold can be.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.lay.piece import ON_FOLD, points_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.piece import LayPiece

# Two pieces are moved apart by steps of this [mm] until they lie clear; the bound is too short by up to so much a pair.
STEP = 1.0

# Of more pieces the order is not sought: the edges in a row are bound enough.
MOST = 8

# How much nearer than the gap two pieces may seem to lie [mm].
HAIR = 0.01


@dataclass(frozen=True, slots=True)
class _Tooth:
    """A half on the fold, its edge from 0 to `edge`; how far it reaches out to the left and to the right [mm]."""

    shape: shapely.Polygon
    edge: float
    before: float
    behind: float


def least_row(pieces: Sequence[LayPiece], gap: float, *, may_turn: bool) -> float:
    """The least length of some halves on one fold, each given as often as it is cut [mm]; 0 for none or too many."""
    if not 0 < len(pieces) <= MOST:
        return 0.0
    teeth = [_teeth(piece, may_turn=may_turn and not piece.one_way) for piece in pieces]
    apart = {
        (i, a, j, b): _apart(teeth[i][a], teeth[j][b], gap)
        for i, j in product(range(len(teeth)), repeat=2)
        if i != j
        for a, b in product(range(len(teeth[i])), range(len(teeth[j])))
    }
    return _shortest(teeth, apart)


def _teeth(piece: LayPiece, *, may_turn: bool) -> list[_Tooth]:
    on = [point.x for point in piece.ring if abs(point.y) <= ON_FOLD]
    start, end = min(on), max(on)
    plain = shapely.Polygon(points_of(piece.ring) - np.array((start, 0.0)))
    turned = shapely.Polygon(points_of(piece.ring) * np.array((-1.0, 1.0)) + np.array((end, 0.0)))
    return [_tooth(shape, end - start) for shape in ((plain, turned) if may_turn else (plain,))]


def _tooth(shape: shapely.Polygon, edge: float) -> _Tooth:
    left, _, right, _ = shape.bounds
    return _Tooth(shape, edge, -left, right)


def _apart(first: _Tooth, second: _Tooth, gap: float) -> float:
    """How far the edge of the second begins behind the beginning of the first, at least [mm]."""
    room = shapely.buffer(first.shape, gap - HAIR) if gap > HAIR else shapely.buffer(first.shape, -HAIR)
    shapely.prepare(room)
    ways = np.arange(first.edge, first.behind + second.before + gap + STEP, STEP)
    corners = shapely.get_coordinates(second.shape)
    moved = shapely.polygons([corners + np.array((way, 0.0)) for way in ways])
    clear = np.flatnonzero(~shapely.intersects(room, moved))
    return float(max(first.edge, ways[clear[0]] - STEP)) if clear.size else float(ways[-1])


def _shortest(teeth: Sequence[Sequence[_Tooth]], apart: dict[tuple[int, int, int, int], float]) -> float:
    """The shortest row over all orders and turns: piece by piece, the best row of every set that ends with each."""
    ends = {
        (frozenset((i,)), i, a): tooth.before
        for i, turns in enumerate(teeth)
        for a, tooth in enumerate(turns)
    }
    for _ in range(len(teeth) - 1):
        longer: dict[tuple[frozenset[int], int, int], float] = {}
        for (done, i, a), begins in ends.items():
            for j in range(len(teeth)):
                for b in range(len(teeth[j])) if j not in done else ():
                    key = (done | {j}, j, b)
                    longer[key] = min(longer.get(key, np.inf), begins + apart[i, a, j, b])
        ends = longer
    return min(begins + teeth[i][a].behind for (_, i, a), begins in ends.items())
