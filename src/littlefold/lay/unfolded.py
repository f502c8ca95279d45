"""Damaged spots carried from one way of laying to another: they are places of the cloth, not of the table.

The cloth is unfolded into panels.  Where it lay in two layers nobody said which of them is damaged, so both count.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.lay.ways import Way
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.ways import Spread

# More than any cloth is long [mm]: a panel reaches along all of it.
ENDLESS = 1e7


@dataclass(frozen=True, slots=True)
class Panel:
    """A strip of the open cloth from `low` to `high` [mm], which lies on the spread at `sign` * y + `offset`."""

    low: float
    high: float
    sign: int
    offset: float

    def laid(self, spot: shapely.Polygon) -> shapely.Polygon:
        """What of a spot of the open cloth is on this panel, where the panel lies on the spread."""
        return _turned(_within(spot, self.low, self.high), self.sign, self.offset)

    def opened(self, spot: shapely.Polygon) -> shapely.Polygon:
        """What of a spot of the spread is on this panel, where the panel lies on the open cloth."""
        low, high = sorted((self.sign * self.low + self.offset, self.sign * self.high + self.offset))
        return _turned(_within(spot, low, high), self.sign, -self.sign * self.offset)


def spots_laid(
    spots: Sequence[shapely.Polygon], was: Spread, now: Spread
) -> tuple[shapely.Polygon, ...] | Problem:
    """Spots that were measured on one spread, on another spread of the same cloth.

    A problem where one of the two is folded across: where that fold comes is only known when the lay is found.
    """
    if was.way is now.way or not spots:
        return joined(spots)
    before, after = _panels(was), _panels(now)
    if not before or not after:
        crosswise = now.way if before else was.way
        words = (
            f"Where the damaged spots come when the cloth is {crosswise} depends on the length of the lay. Lay it so, "
            "and say where they are then."
        )
        return Problem("spots-not-carried", words)
    return _carried(spots, before, after)


def _carried(
    spots: Sequence[shapely.Polygon], before: Sequence[Panel], after: Sequence[Panel]
) -> tuple[shapely.Polygon, ...]:
    """The spots through the open cloth."""
    opened = [panel.opened(spot) for spot in spots for panel in before]
    return joined([panel.laid(spot) for spot in opened for panel in after])


def joined(spots: Sequence[shapely.Polygon]) -> tuple[shapely.Polygon, ...]:
    """The spots, where two lie on each other as one: the search can part no two that are held where they are."""
    parts = shapely.get_parts(shapely.union_all(list(spots)))
    return tuple(
        shapely.Polygon(one.exterior) for one in parts if one.geom_type == "Polygon" and one.area > 0
    )


def _panels(spread: Spread) -> tuple[Panel, ...]:
    """The panels of a cloth that is folded lengthwise or not at all; none for other ways."""
    width, depth = spread.cloth_width, spread.zones[0].depth
    if spread.way is Way.OPEN:
        return (Panel(0.0, width, 1, 0.0),)
    if spread.way in (Way.FOLDED, Way.PARTLY):
        return (Panel(0.0, depth, -1, depth), Panel(depth, width, 1, -depth))
    if spread.way in (Way.TWO_FOLDS, Way.TWO_PARTLY):
        far = width - depth
        return (
            Panel(0.0, depth, -1, depth),
            Panel(depth, far, 1, -depth),
            Panel(far, width, -1, 2 * far - depth),
        )
    return ()


def _within(spot: shapely.Polygon, low: float, high: float) -> shapely.Polygon:
    return shapely.intersection(spot, shapely.box(-ENDLESS, low, ENDLESS, high))


def _turned(spot: shapely.Polygon, sign: int, offset: float) -> shapely.Polygon:
    return shapely.transform(spot, lambda xy: xy * np.array((1.0, sign)) + np.array((0.0, offset)))
