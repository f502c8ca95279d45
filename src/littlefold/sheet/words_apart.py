"""Moving words off each other, as happens to all of them when a drawing is reduced."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import reduce
from itertools import groupby, product
from math import pi
from typing import TYPE_CHECKING

import numpy as np

from littlefold.drawing import Label, Meaning, label_bounds
from littlefold.drawing.words import LEADING
from littlefold.geometry import Bounds, Vector
from littlefold.sheet.occupied import OUTWARD

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

# Who keeps the place: first the letters of points, without which no sentence can be followed, then
# warnings, then the names of things, then measures, then running text.
RANKS = (Meaning.LETTER, Meaning.NEW, Meaning.CAUTION, Meaning.TITLE, Meaning.GUIDE, Meaning.TEXT)
KEPT = frozenset({Meaning.LETTER, Meaning.NEW, Meaning.CAUTION})
"""Never left out, even where no free place is found."""

# How far words may go from their place, in heights of a capital, in the order tried.
REACHES = (1.0, 2.0, 3.0, 4.5, 6.0)
WAYS = tuple(Vector.polar(k * pi / 4) for k in (6, 2, 0, 4, 7, 5, 1, 3))

# All places tried, in heights of a capital, and how far they are: the own place first (n x 2, n).
OFFSETS = np.array([(0.0, 0.0), *((way.x * reach, way.y * reach) for reach, way in product(REACHES, WAYS))])
DISTANCES = np.array([0.0, *(reach for reach, _ in product(REACHES, WAYS))])

# A point of a line covered is as bad as this many heights of a capital away from the place.  Larger: words
# leave what they name.  Smaller: lines run through them.
LINE = 0.7

# Bare paper left between words, in heights of a capital.
AIR = 0.15


@dataclass(frozen=True, slots=True)
class Block:
    """Lines of words that stay together."""

    lines: tuple[Label, ...]

    @property
    def box(self) -> Bounds:
        """The rectangle round all lines."""
        return reduce(Bounds.union, (label_bounds(line) for line in self.lines))

    def moved(self, way: Vector) -> Block:
        """The same lines elsewhere."""
        return Block(tuple(replace(line, at=line.at + way) for line in self.lines))


def words_apart(labels: Iterable[Label], lines: np.ndarray) -> tuple[Label, ...]:
    """The same words, each block as near to its place as it finds room; in order of rank.

    `lines` are points along the lines of the drawing (n x 2) [mm], which words keep off where they can.
    """
    blocks = sorted((Block(_stacked(lines)) for lines in _blocks(labels)), key=_rank)
    placed: list[Block] = []
    taken: list[Bounds] = []
    for block in blocks:
        found = _placed(block, taken, lines)
        if found is not None:
            placed.append(found)
            taken.append(found.box)
    return tuple(line for block in placed for line in block.lines)


def _blocks(labels: Iterable[Label]) -> Iterator[tuple[Label, ...]]:
    """Neighbours in the drawing that share a name and a look are lines of one block."""
    for key, lines in groupby(
        labels, key=lambda label: (label.name, label.meaning, label.angle, label.anchor)
    ):
        if key[0] and key[1] is not Meaning.LETTER:
            yield tuple(lines)
        else:
            yield from ((line,) for line in lines)


def _stacked(lines: tuple[Label, ...]) -> tuple[Label, ...]:
    """The lines below the first one, as far apart as their size asks for."""
    first = lines[0]
    down = Vector.polar(first.angle - pi / 2, first.height * LEADING)
    return tuple(replace(line, at=first.at + down * number) for number, line in enumerate(lines))


def _rank(block: Block) -> int:
    meaning = block.lines[0].meaning
    return RANKS.index(meaning) if meaning in RANKS else len(RANKS)


def _placed(block: Block, taken: list[Bounds], lines: np.ndarray) -> Block | None:
    """The block where it is free of the others; None if there is no such place and it may be left out."""
    height, box = block.lines[0].height, block.box
    boxes = np.array((box.left, box.bottom, box.right, box.top)) + height * np.tile(OFFSETS, 2)
    free = np.flatnonzero(_are_free(boxes + AIR * height * OUTWARD, taken))
    if len(free) == 0:
        return block if block.lines[0].meaning in KEPT else None
    costs = DISTANCES[free] + LINE * _covered(boxes[free], lines)
    best = free[int(np.argmin(costs))]
    return block.moved(Vector(*(height * OFFSETS[best]).tolist()))


def _are_free(boxes: np.ndarray, taken: list[Bounds]) -> np.ndarray:
    """Which of the boxes (m x 4) touch none of those taken."""
    others = np.array([(box.left, box.bottom, box.right, box.top) for box in taken]).reshape(-1, 4)
    apart = (boxes[:, None, :2] > others[None, :, 2:]) | (boxes[:, None, 2:] < others[None, :, :2])
    return np.asarray(np.all(np.any(apart, axis=2), axis=1))


def _covered(boxes: np.ndarray, lines: np.ndarray) -> np.ndarray:
    """How many points of the lines lie in each box."""
    low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    near = lines[np.all((lines >= low) & (lines <= high), axis=1)]
    within = (near[None] >= boxes[:, None, :2]) & (near[None] <= boxes[:, None, 2:])
    return np.asarray(np.sum(np.all(within, axis=2), axis=1))
