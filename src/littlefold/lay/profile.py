"""How deep a cut is at each place along the cloth, and the length of cloth that this alone asks for.

At any place along a lay the depths of all cuts that lie there add up to no more than the height of the cloth.  So two cuts
that are both deeper than half of it never lie side by side, however they interlock.  Reckoning a depth above h - t as
all of h, a depth under t as nothing, and any other as it is, never makes a sum that was within h larger than h (a dual
feasible function: Fekete and Schepers 2001); so what all cuts come to then, divided by h, is a length under which
no lay can be, for every t.  t = 0 is the area.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
import shapely

from littlefold.lay.piece import rotated

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.deal import Cut

Depths = npt.NDArray[np.float64]

# The depth is looked at so often along a cut [mm]; a step of the bound may be wrong by as much at either end.
EVERY = 2.0

# So many values of t are tried between nothing and half of the height.
THRESHOLDS = 24


def depths(cut: Cut, degrees: float) -> Depths:
    """The depth of a cut [mm] in the middle of each step along it when it lies at an angle."""
    shape = rotated(cut.piece.polygon if cut.half else cut.piece.whole, degrees)
    left, low, right, high = shape.bounds
    places = np.arange(left + EVERY / 2, right, EVERY)
    ends = np.array([[(x, low - 1), (x, high + 1)] for x in places]).reshape(-1, 2, 2)
    return np.asarray(
        shapely.length(shapely.intersection(shape, shapely.linestrings(ends))), dtype=np.float64
    )


def side_by_side(cuts: Sequence[Cut], height: float) -> float:
    """The length under which no lay of these cuts can be, because deep ones do not lie side by side [mm]."""
    profiles: dict[tuple[str, bool], list[Depths]] = {}
    for cut in cuts:
        key = (cut.piece.name, cut.half)
        if key not in profiles:
            profiles[key] = [depths(cut, degrees) for degrees in cut.angles]
    of_all = [profiles[cut.piece.name, cut.half] for cut in cuts]
    thresholds = np.linspace(0.0, height / 2, THRESHOLDS + 1)[1:]
    most = max(sum(_reckoned(one, height, t) for one in of_all) for t in thresholds)
    return max(0.0, most - EVERY * len(cuts))


def _reckoned(angles: Sequence[Depths], height: float, threshold: float) -> float:
    """The least length that a cut asks for in one of its angles [mm]."""
    return min(float(_taken(one, height, threshold).sum()) * EVERY / height for one in angles)


def _taken(depth: Depths, height: float, threshold: float) -> Depths:
    return np.where(depth > height - threshold, height, np.where(depth < threshold, 0.0, depth))
