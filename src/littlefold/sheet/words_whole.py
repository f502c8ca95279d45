"""Labels kept whole: a block of words that the edge of a page would cut moves aside, within its own piece."""

from __future__ import annotations

from dataclasses import replace
from functools import reduce
from itertools import groupby, product
from typing import TYPE_CHECKING

import numpy as np

from littlefold.drawing import Drawing, Label, label_bounds
from littlefold.geometry import Bounds, Vector
from littlefold.sheet.grid import cut_words, sample
from littlefold.sheet.occupied import occupied

if TYPE_CHECKING:
    from littlefold.drawing import Mark
    from littlefold.sheet.grid import Grid
    from littlefold.sheet.occupied import Occupied

# How far a block may go each way, and from try to try [mm].
FURTHEST, STEP = 160.0, 5.0

# Bare paper kept round a block [mm]; on its way it may come nearer to lines, but crosses none.
AIR = 1.0

MOVES = tuple(
    sorted(
        (
            Vector(float(x), float(y))
            for x, y in product(np.arange(-FURTHEST, FURTHEST + 1, STEP), repeat=2)
            if x or y
        ),
        key=lambda way: way.length,
    )
)
"""All ways to go, the shortest first."""


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
    whole = [way for way in MOVES if cut_words(grid, (_shifted(box, way).grown(AIR),)) == 0]
    free = _free(box, whole, others)
    way = next((way for way, is_free in zip(whole, free, strict=True) if is_free), None)
    if way is None:
        return run
    return tuple(replace(mark, at=mark.at + way) for mark in run if isinstance(mark, Label))


def _inside(box: Bounds, places: np.ndarray) -> np.ndarray:
    """Which places lie in a box: where the block stands already, nothing is in its way."""
    x, y = places[:, 0], places[:, 1]
    within: np.ndarray = (x >= box.left) & (x <= box.right) & (y >= box.bottom) & (y <= box.top)
    return within


def _free(box: Bounds, ways: list[Vector], others: Occupied) -> list[bool]:
    """Which ways lead over bare paper to a place with air round it."""
    if not ways:
        return []
    across = [box.union(_shifted(box, Vector(way.x, 0.0))) for way in ways]
    up = [_shifted(box, Vector(way.x, 0.0)).union(_shifted(box, way)) for way in ways]
    ends = [_shifted(box, way).grown(AIR) for way in ways]
    met = sum(others.within(_as_rows(boxes)) for boxes in (across, up, ends))
    return [bool(count == 0) for count in np.asarray(met)]


def _as_rows(boxes: list[Bounds]) -> np.ndarray:
    return np.array([(box.left, box.bottom, box.right, box.top) for box in boxes])


def _shifted(box: Bounds, way: Vector) -> Bounds:
    return Bounds(box.left + way.x, box.bottom + way.y, box.right + way.x, box.top + way.y)
