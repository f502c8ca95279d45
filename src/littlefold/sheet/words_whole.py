"""Labels kept whole: a block of words that the edge of a page would cut moves aside, within its own piece."""

from __future__ import annotations

from dataclasses import replace
from functools import reduce
from itertools import groupby
from typing import TYPE_CHECKING

import numpy as np

from littlefold.drawing import Drawing, Label, label_bounds
from littlefold.geometry import Bounds, Vector
from littlefold.sheet.grid import cut_words, sample
from littlefold.sheet.occupied import OUTWARD, occupied

if TYPE_CHECKING:
    from littlefold.drawing import Mark
    from littlefold.sheet.grid import Grid
    from littlefold.sheet.occupied import Occupied

# How far a block may go each way, and from try to try [mm].
FURTHEST, STEP = 160.0, 2.0

# Bare paper kept round a block [mm]; on its way it may come nearer to lines, but crosses none.
AIR = 1.0

_STEPS = np.arange(-FURTHEST, FURTHEST + STEP / 2, STEP)
_MOVES = np.stack([axis.ravel() for axis in np.meshgrid(_STEPS, _STEPS)], axis=1)
MOVES = _MOVES[np.argsort(np.hypot(_MOVES[:, 0], _MOVES[:, 1]), kind="stable")]
"""All ways to go (n x 2) [mm], the shortest first."""


def words_whole(drawing: Drawing, grid: Grid) -> Drawing:
    """The drawing with each block of words on one page, where there is room for it in its piece.

    A block is a run of labels of one name.  It goes across first and then up or down, over bare paper only, so
    that it never leaves the outline it stands in.
    """
    runs = [tuple(run) for _, run in groupby(drawing.marks, key=_block)]
    if len(grid.printed) <= 1 or all(_is_whole(run, grid) for run in runs):
        return drawing
    moved = [run if _is_whole(run, grid) else _moved(run, drawing, grid) for run in runs]
    return Drawing(tuple(mark for run in moved for mark in run), drawing.title)


def _block(mark: Mark) -> object:
    """What holds marks together: the name of a label; any other mark stands alone."""
    return mark.name if isinstance(mark, Label) else id(mark)


def _box(run: tuple[Mark, ...]) -> Bounds | None:
    labels = [mark for mark in run if isinstance(mark, Label)]
    return reduce(Bounds.union, map(label_bounds, labels)) if len(labels) > 1 else None


def _is_whole(run: tuple[Mark, ...], grid: Grid) -> bool:
    """Whether a run is no block of words, or none that pages would cut."""
    box = _box(run)
    return box is None or cut_words(grid, (box,)) == 0


def _moved(run: tuple[Mark, ...], drawing: Drawing, grid: Grid) -> tuple[Mark, ...]:
    box = _box(run)
    assert box is not None  # noqa: S101 - only blocks are moved
    own = {id(mark) for mark in run}
    places = sample(Drawing(tuple(mark for mark in drawing.marks if id(mark) not in own)))
    others = occupied(places[~_inside(box, places)])
    start = np.array((box.left, box.bottom, box.right, box.top))
    ways = MOVES[_are_whole(start + np.tile(MOVES, 2) + AIR * OUTWARD, grid)]
    free = np.flatnonzero(_are_free(start, ways, others))
    if len(free) == 0:
        return run
    way = Vector(*ways[free[0]].tolist())
    return tuple(replace(mark, at=mark.at + way) for mark in run if isinstance(mark, Label))


def _inside(box: Bounds, places: np.ndarray) -> np.ndarray:
    """Which places lie in a box: where the block stands already, nothing is in its way."""
    x, y = places[:, 0], places[:, 1]
    within: np.ndarray = (x >= box.left) & (x <= box.right) & (y >= box.bottom) & (y <= box.top)
    return within


def _are_whole(boxes: np.ndarray, grid: Grid) -> np.ndarray:
    """Which boxes (n x 4) lie on one page of the grid, clear of the lines on which pages meet."""
    step = np.array((grid.across - grid.overlap, grid.down - grid.overlap))
    start = np.array((grid.left, grid.top))
    down = np.array((1.0, -1.0))
    low = np.floor((boxes[:, :2] - start) * down / step)
    high = np.floor((boxes[:, 2:] - start) * down / step)
    return np.asarray(np.all(low == high, axis=1))


def _are_free(start: np.ndarray, ways: np.ndarray, others: Occupied) -> np.ndarray:
    """Which ways lead from a box (4) over bare paper to a place with air round it."""
    across = start + np.stack([ways[:, 0], 0 * ways[:, 0]] * 2, axis=1)
    ends = start + np.tile(ways, 2)
    met = others.within(_swept(np.broadcast_to(start, across.shape), across))
    met = met + others.within(_swept(across, ends)) + others.within(ends + AIR * OUTWARD)
    return np.asarray(met == 0)


def _swept(boxes: np.ndarray, others: np.ndarray) -> np.ndarray:
    """The boxes round two at a time."""
    low = np.minimum(boxes[:, :2], others[:, :2])
    return np.concatenate([low, np.maximum(boxes[:, 2:], others[:, 2:])], axis=1)
