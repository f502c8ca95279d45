"""What is left between the pieces: rectangles that can still be used, and what fits into them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
import shapely

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.lay.lay import Lay
    from littlefold.lay.ways import Zone

# The cloth is looked at in squares of this side [mm]; a rectangle may be up to two squares smaller than it could.
CELL = 5.0

LEAST_SIDE = 50.0
"""Rectangles with a side under this [mm] are not counted as usable; common practice, no source."""

MOST_RECTANGLES = 8


@dataclass(frozen=True, slots=True)
class Leftover:
    """A rectangle of cloth that is left: `x`, `y` its corner on the spread, `layers` how many of it there are [mm]."""

    x: float
    y: float
    length: float
    width: float
    layers: int


@dataclass(frozen=True, slots=True)
class Wanted:
    """Something that could be cut from what is left: a rectangle along the grain [mm]."""

    name: str
    length: float
    width: float
    either_way: bool = False


USUAL = (
    Wanted(
        "bib", 15 * 25.4, 11 * 25.4
    ),  # paper for a child's bib, 15 x 11 in, in a public-domain school text
    Wanted("pocket", 140.0, 120.0),  # from memory
    Wanted(
        "square for bias binding", 174.0, 174.0, either_way=True
    ),  # for a strip of 1000 x 30: sqrt(1000 x 30), rounded up
)


def leftovers(lay: Lay) -> tuple[Leftover, ...]:
    """The largest rectangles left on the spread, the largest first, and the end of the length that is bought.

    They do not overlap each other or any cut, and none crosses from one zone of layers into another.
    """
    shapes = [lay.shape(placement) for placement in lay.placements] + list(lay.holes)
    found = [rest for zone in lay.spread.zones for rest in _in_zone(lay, zone, shapes)]
    found.sort(key=lambda rest: -rest.length * rest.width)
    return tuple(found[:MOST_RECTANGLES])


def fitting(rests: Sequence[Leftover], wanted: Sequence[Wanted] = USUAL) -> tuple[tuple[str, int], ...]:
    """How many of each wanted thing could be cut from what is left, each taken alone."""
    return tuple((want.name, sum(_times(rest, want) * rest.layers for rest in rests)) for want in wanted)


def _times(rest: Leftover, want: Wanted) -> int:
    upright = int(rest.length // want.length) * int(rest.width // want.width)
    across = int(rest.length // want.width) * int(rest.width // want.length)
    return max(upright, across) if want.either_way else upright


def _in_zone(lay: Lay, zone: Zone, shapes: Sequence[shapely.Polygon]) -> Iterator[Leftover]:
    bought = lay.to_buy / lay.spread.sheets
    free = _free_cells(zone, max(lay.length, bought - lay.cloth.end_loss), shapes)
    for _ in range(MOST_RECTANGLES):
        row, column, rows, columns = largest_rectangle(free)
        if min(rows, columns) * CELL < LEAST_SIDE:
            return
        free[row : row + rows, column : column + columns] = False
        yield Leftover(column * CELL, zone.low + row * CELL, columns * CELL, rows * CELL, zone.layers)


def _free_cells(zone: Zone, length: float, shapes: Sequence[shapely.Polygon]) -> npt.NDArray[np.bool_]:
    """Which squares of a zone touch no cut."""
    rows, columns = int(zone.depth // CELL), int(length // CELL)
    x, y = np.meshgrid((np.arange(columns) + 0.5) * CELL, zone.low + (np.arange(rows) + 0.5) * CELL)
    free = np.ones((rows, columns), dtype=np.bool_)
    for shape in shapes:
        free &= ~shapely.contains_xy(shapely.buffer(shape, CELL / 2**0.5), x, y)
    return free


def largest_rectangle(free: npt.NDArray[np.bool_]) -> tuple[int, int, int, int]:
    """The largest rectangle of true cells: row, column, rows, columns; zeros where there is none.

    Row by row, every cell knows how many free cells stand below it; the largest rectangle under such a skyline is
    found with a stack of rising heights, each cell looked at once.
    """
    best = (0, 0, 0, 0)
    heights = [0] * free.shape[1]
    for row, cells in enumerate(free.tolist()):
        heights = [height + 1 if cell else 0 for height, cell in zip(heights, cells, strict=True)]
        column, tall, wide = _under_skyline(heights)
        if tall * wide > best[2] * best[3]:
            best = (row - tall + 1, column, tall, wide)
    return best


def _under_skyline(heights: Sequence[int]) -> tuple[int, int, int]:
    """The largest rectangle under a skyline: first column, height, width."""
    best, rising = (0, 0, 0), list[tuple[int, int]]()
    for column, height in enumerate([*heights, 0]):
        first = column
        while rising and rising[-1][1] >= height:
            first, tall = rising.pop()
            if tall * (column - first) > best[1] * best[2]:
                best = (first, tall, column - first)
        rising.append((first, height))
    return best
