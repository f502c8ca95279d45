"""Finding the place on a page where a check mark or a caption disturbs the drawing least."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.geometry import Bounds, Point

if TYPE_CHECKING:
    import numpy as np

# The places that are tried along an edge, as parts of the spare room: the corners and the middle first.
SHARES = (0.0, 1.0, 0.5, 0.25, 0.75)

# A box at the edge disturbs less than one in the midst; each millimetre away from it counts like a
# hundredth of a point of the drawing covered, so it only decides between places that cover the same.
AWAY = 0.01

# What a box that touches another box of the sheet costs: more than any drawing.
TAKEN = 1e6


def least_disturbing(
    width: float, height: float, room: Bounds, places: np.ndarray, taken: tuple[Bounds, ...]
) -> Bounds:
    """The best place in a room for a box [mm], given points of the drawing (n x 2) and boxes there."""
    return min(
        _candidates(width, height, room),
        key=lambda box: points_in(box, places) + _clash(box, taken) + _depth(box, room),
    )


def _candidates(width: float, height: float, room: Bounds) -> list[Bounds]:
    """Boxes along the four edges, and a coarse raster of the inside."""
    spare_x, spare_y = room.width - width, room.height - height
    corners = (Point(room.left + u * spare_x, room.bottom + v * spare_y) for v in SHARES for u in SHARES)
    return [Bounds(p.x, p.y, p.x + width, p.y + height) for p in corners]


def points_in(box: Bounds, places: np.ndarray) -> float:
    """How many of the places (n x 2) lie in a box."""
    x, y = places[:, 0], places[:, 1]
    inside = (x >= box.left) & (x <= box.right) & (y >= box.bottom) & (y <= box.top)
    return float(inside.sum())


def _clash(box: Bounds, taken: tuple[Bounds, ...]) -> float:
    return TAKEN * sum(box.overlaps(other) for other in taken)


def _depth(box: Bounds, room: Bounds) -> float:
    """How far the box stands off the nearest edge of the room."""
    gaps = (box.left - room.left, room.right - box.right, box.bottom - room.bottom, room.top - box.top)
    return AWAY * min(gaps)
