"""Finding the place on a page where a check mark or a caption disturbs the drawing least."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from littlefold.geometry import Bounds
from littlefold.sheet.occupied import OUTWARD, Occupied, occupied

if TYPE_CHECKING:
    from collections.abc import Sequence

# Places are tried this far apart [mm], but never more than so many each way.
STEP, MOST_STEPS = 3.0, 64

# A figure keeps this far from the lines where it can [mm]; each point of the drawing nearer than that counts.
AIR = 3.0

# A point of the drawing covered counts as this many within the air: never covered where any free place is.
COVERED = 50.0

# A point of a line that scissors, needle or fold follow counts as so many more.
CROSSED = 1000.0

# A box at the edge disturbs less than one in the midst; each millimetre away from it counts like a hundredth
# of a point of the drawing covered, so it only decides between places that cover the same.
AWAY = 0.01

# Inside the box of a piece, a box costs this many points of the drawing: less than crossing one line.
INSIDE = 1.5

# What a box that touches another box of the sheet costs: more than any drawing.
TAKEN = 1e7

NOWHERE = np.zeros((0, 2))


@dataclass(frozen=True, slots=True)
class Ground:
    """What a figure of the sheet should not be laid on.

    Attributes:
        drawn: The marks of the drawing; each point of them that is covered counts.
        kept: The lines by which people cut, fold and sew; they count much more.
        outlines: Boxes of whole pieces; to lie in none of them is a little better.
        taken: Boxes of other figures of the sheet; never to be touched where that can be helped.
    """

    drawn: Occupied
    kept: Occupied
    outlines: tuple[Bounds, ...] = ()
    taken: tuple[Bounds, ...] = ()

    def with_taken(self, *boxes: Bounds) -> Ground:
        """The same with more figures on it."""
        return replace(self, taken=(*self.taken, *boxes))


def ground(
    places: np.ndarray,
    kept: np.ndarray | None = None,
    outlines: tuple[Bounds, ...] = (),
    taken: tuple[Bounds, ...] = (),
) -> Ground:
    """The ground of points along the marks, and of those on lines that are followed (n x 2) [mm]."""
    return Ground(occupied(places), occupied(NOWHERE if kept is None else kept), outlines, taken)


def least_disturbing(width: float, height: float, room: Bounds, ground: Ground) -> Bounds:
    """The best place in a room for a box of a width and height [mm]."""
    boxes = _candidates(width, height, room)
    covered = COVERED * ground.drawn.within(boxes) + ground.drawn.within(boxes + AIR * OUTWARD)
    covered = covered + CROSSED * ground.kept.within(boxes)
    inside = INSIDE * (_clashes(boxes, ground.outlines) > 0)
    costs = covered + inside + TAKEN * _clashes(boxes, ground.taken) + AWAY * _depths(boxes, room)
    left, bottom, right, top = boxes[int(np.argmin(costs))]
    return Bounds(float(left), float(bottom), float(right), float(top))


def _candidates(width: float, height: float, room: Bounds) -> np.ndarray:
    """Boxes on a raster of the room (m x 4): left, bottom, right, top."""
    across, up = _shares(room.width - width), _shares(room.height - height)
    left = room.left + np.tile(across, len(up)) * (room.width - width)
    bottom = room.bottom + np.repeat(up, len(across)) * (room.height - height)
    return np.stack([left, bottom, left + width, bottom + height], axis=1)


def _shares(spare: float) -> np.ndarray:
    """Parts of the spare room at which places are tried; those at its edges first, for ties."""
    shares = np.linspace(0.0, 1.0, 1 + max(1, min(MOST_STEPS, int(spare / STEP))))
    order = np.argsort(np.minimum(shares, 1.0 - shares), kind="stable")
    ordered: np.ndarray = shares[order]
    return ordered


def _clashes(boxes: np.ndarray, taken: Sequence[Bounds]) -> np.ndarray:
    """How many other boxes each box touches."""
    if not taken:
        return np.zeros(len(boxes))
    others = np.array([(box.left, box.bottom, box.right, box.top) for box in taken])[None]
    left, bottom, right, top = (boxes[:, k, None] for k in range(4))
    beside = (right < others[..., 0]) | (others[..., 2] < left)
    above = (top < others[..., 1]) | (others[..., 3] < bottom)
    counts: np.ndarray = (~(beside | above)).sum(axis=1)
    return counts


def _depths(boxes: np.ndarray, room: Bounds) -> np.ndarray:
    """How far each box stands off the nearest edge of the room."""
    gaps = np.stack(
        [
            boxes[:, 0] - room.left,
            boxes[:, 1] - room.bottom,
            room.right - boxes[:, 2],
            room.top - boxes[:, 3],
        ]
    )
    nearest: np.ndarray = gaps.min(axis=0)
    return nearest


def places_in(box: Bounds, places: np.ndarray) -> np.ndarray:
    """Those of the places (n x 2) that lie in a box."""
    x, y = places[:, 0], places[:, 1]
    return places[(x >= box.left) & (x <= box.right) & (y >= box.bottom) & (y <= box.top)]
