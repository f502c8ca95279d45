r"""The comb: all pieces on the fold as one rigid shape that cannot leave it.

An engine that knows no folds can still pack a fold lay if the pieces on the fold come as one outline with a thin
bar below the fold and a thin mast as high as the cloth, and may not be turned: there is only one height at which
it goes into the strip.

    |mast
    |    ____          ___
    |   /    \__      /   |
    |__/________|_____|___|____   fold
    ===========================   bar
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.lay.convex import ring_of
from littlefold.lay.strip import Spot

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.strip import Layout, Strip

BAR = 0.05
"""The depth of the bar below the fold [mm]."""

MAST = 1.0
"""The width of the mast [mm]; so much cloth is lost until the lay is settled."""

PLAY = 0.1
"""How much lower than the strip the comb is [mm]; the engine cannot find exact fits."""

# Pieces that touch in one point would use a corner twice, which the engine does not take: they are grown by this.
WELD = 0.02


@dataclass(frozen=True, slots=True)
class Comb:
    """The comb, the strip it needs, and where its pieces are in it."""

    ring: tuple[tuple[float, float], ...]
    teeth: tuple[tuple[int, Spot], ...]
    strip_height: float
    below: float

    def spots(self, x: float) -> dict[int, Spot]:
        """The spots of the pieces on the fold when the comb has been moved by x [mm]."""
        return {number: Spot(spot.stance, spot.x + x, spot.y) for number, spot in self.teeth}


def comb_of(strip: Strip, layout: Layout, members: Sequence[int], top: float) -> Comb | None:
    """The comb of the members that lie on the lower fold, with a mast up to `top` [mm].

    None where the pieces do not join to one simple shape.
    """
    shapes = [_placed(strip, layout, k) for k in members]
    right = max(shape.bounds[2] for shape in shapes)
    left = min(shape.bounds[0] for shape in shapes) - MAST
    bar = shapely.box(left, -BAR, right, WELD)
    mast = shapely.box(left, -BAR, left + MAST, top)
    grown = [shapely.buffer(shape, WELD, join_style="mitre") for shape in shapes]
    joined = shapely.union_all([bar, mast, *(_above(shape) for shape in grown)])
    if not isinstance(joined, shapely.Polygon):
        return None
    corners = tuple((float(x), float(y)) for x, y in ring_of(shapely.Polygon(joined.exterior)))
    teeth = tuple((k, layout[k]) for k in members)
    return Comb(corners, teeth, top + BAR + PLAY, BAR)


def _placed(strip: Strip, layout: Layout, number: int) -> shapely.Polygon:
    spot = layout[number]
    stance = strip.members[number].stances[spot.stance]
    ring = strip.shapes[stance.shape].ring * stance.sign.factors()
    return shapely.Polygon(ring + np.array((spot.x, spot.y)))


def _above(polygon: shapely.Polygon) -> shapely.Polygon:
    left, _, right, high = polygon.bounds
    return shapely.intersection(polygon, shapely.box(left, -BAR / 2, right, high))
