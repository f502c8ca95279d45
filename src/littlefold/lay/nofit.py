"""Where two pieces may not stand to each other: no-fit regions sampled on a lattice.

Piece A stands with its reference point at the origin.  The no-fit region of B is the set of places of B's
reference point at which the two overlap.  It is the union of the sums of A's convex parts with B's reversed convex
parts, tested exactly at the points of a lattice; inside, each lattice point carries the distance to the
nearest free one, which is how deep the pieces lie in each other.

    . . . . . .        . . . . . .
    . # # # . .   ->   . 1 1 1 . .      depth in lattice steps, times the step [mm]
    . # # # # .        . 1 2 2 1 .
    . . # # . .        . . 1 1 . .
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
from scipy import ndimage

from littlefold.lay.convex import Fan

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.convex import Points

Depth = npt.NDArray[np.float32]

# A lattice point this near to the edge of a region [mm] counts as outside: pieces may touch.
TOUCH = 1e-6


@dataclass(frozen=True, slots=True)
class Lattice:
    """The places that a search looks at: steps along the cloth and across it [mm]."""

    along: float
    across: float


@dataclass(frozen=True, slots=True)
class Sign:
    """A piece as it is (1, 1), turned end for end (-1, -1), or mirrored along or across the cloth."""

    along: int
    across: int

    @property
    def code(self) -> int:
        """A number from 0 to 3."""
        return (self.along < 0) + 2 * (self.across < 0)

    def times(self, other: Sign) -> Sign:
        """One after the other."""
        return Sign(self.along * other.along, self.across * other.across)

    def factors(self) -> Points:
        """What the coordinates are multiplied by."""
        return np.array((self.along, self.across), dtype=np.float64)


SIGNS = tuple(Sign(along, across) for across in (1, -1) for along in (1, -1))
PLAIN = Sign(1, 1)
REVERSED = Sign(-1, -1)


@dataclass(frozen=True, slots=True)
class Region:
    """A sampled no-fit region: `depth[0, 0]` belongs to the way (`row`, `column`) from A to B."""

    depth: Depth
    row: int
    column: int
    rows: int
    columns: int

    @classmethod
    def of(cls, depth: Depth, row: int, column: int) -> Region:
        """The region of a sampled rectangle."""
        return cls(depth, row, column, *depth.shape)

    def signed(self, sign: Sign) -> Region:
        """The region seen in a mirror along, across, or both."""
        row = self.row if sign.across > 0 else -(self.row + self.rows - 1)
        column = self.column if sign.along > 0 else -(self.column + self.columns - 1)
        return Region.of(self.depth[:: sign.across, :: sign.along], row, column)

    def at(self, row: int, column: int) -> float:
        """The depth for a way from A to B in lattice steps; zero outside the sampled rectangle."""
        r, c = row - self.row, column - self.column
        return float(self.depth[r, c]) if 0 <= r < self.rows and 0 <= c < self.columns else 0.0


class NoFitTable:
    """The no-fit regions of all pairs of shapes, worked out when first asked for and kept.

    A shape is a tuple of convex parts about its reference point.  All mirrored and turned stances of two
    shapes follow from four regions of the pair, so only these are sampled.
    """

    def __init__(self, shapes: Sequence[Sequence[Points]], lattice: Lattice) -> None:
        self.lattice = lattice
        self._shapes = shapes
        self._fans: dict[tuple[int, Sign], tuple[Fan, ...]] = {}
        self._sampled: dict[tuple[int, int, Sign], Region] = {}
        kinds = len(SIGNS) * len(shapes)
        self._signed: list[list[Region | None]] = [[None] * kinds for _ in range(kinds)]

    @staticmethod
    def kind(shape: int, sign: Sign) -> int:
        """The number of a shape in a sign, by which `region` asks."""
        return len(SIGNS) * shape + sign.code

    def region(self, standing: int, moving: int) -> Region:
        """Where the second kind may not stand to the first."""
        found = self._signed[standing][moving]
        if found is None:
            found = self._signed[standing][moving] = self._work_out(standing, moving)
        return found

    def _work_out(self, standing: int, moving: int) -> Region:
        first, first_sign = standing // len(SIGNS), SIGNS[standing % len(SIGNS)]
        second, second_sign = moving // len(SIGNS), SIGNS[moving % len(SIGNS)]
        relative = first_sign.times(second_sign)
        if first <= second:
            return self._sample(first, second, relative).signed(first_sign)
        # B may not stand to A by d where A may not stand to B by -d.
        return self._sample(second, first, relative).signed(second_sign.times(REVERSED))

    def _sample(self, first: int, second: int, relative: Sign) -> Region:
        key = (first, second, relative)
        if key not in self._sampled:
            reversed_sign = relative.times(REVERSED)
            sums = [
                a.plus(b) for a in self._fans_of(first, PLAIN) for b in self._fans_of(second, reversed_sign)
            ]
            self._sampled[key] = sample(sums, self.lattice)
        return self._sampled[key]

    def _fans_of(self, shape: int, sign: Sign) -> tuple[Fan, ...]:
        key = (shape, sign)
        if key not in self._fans:
            self._fans[key] = tuple(Fan.of(part * sign.factors()) for part in self._shapes[shape])
        return self._fans[key]


def sample(convex: Sequence[Points], lattice: Lattice) -> Region:
    """The depth, at the points of a lattice, of a union of convex polygons given from their lowest corner."""
    corners = np.concatenate(convex)
    row = floor(corners[:, 1].min() / lattice.across) - 1
    column = floor(corners[:, 0].min() / lattice.along) - 1
    rows = ceil(corners[:, 1].max() / lattice.across) + 2 - row
    columns = ceil(corners[:, 0].max() / lattice.along) + 2 - column
    crossings = np.zeros((rows, columns + 1), dtype=np.int32)
    for polygon in convex:
        _mark(crossings, polygon, lattice, (row, column))
    inside = np.cumsum(crossings, axis=1)[:, :columns] > 0
    steps = (lattice.across, lattice.along)
    depth = ndimage.distance_transform_edt(inside, sampling=steps).astype(np.float32)
    return Region.of(depth, row, column)


def _mark(
    crossings: npt.NDArray[np.int32], polygon: Points, lattice: Lattice, origin: tuple[int, int]
) -> None:
    """Count the polygon in where each row enters it, and out where the row leaves it."""
    top = int(np.argmax(polygon[:, 1]))
    low, high = polygon[0, 1] + TOUCH, polygon[top, 1] - TOUCH
    rows = np.arange(ceil(low / lattice.across), floor(high / lattice.across) + 1)
    if rows.size == 0:
        return
    heights = rows * lattice.across
    right = polygon[: top + 1]
    left = np.concatenate((polygon[top:], polygon[:1]))[::-1]
    ends = np.interp(heights, right[:, 1], right[:, 0]) - TOUCH
    starts = np.interp(heights, left[:, 1], left[:, 0]) + TOUCH
    enter = np.ceil(starts / lattice.along).astype(np.int64) - origin[1]
    leave = np.floor(ends / lattice.along).astype(np.int64) + 1 - origin[1]
    some = leave > enter
    np.add.at(crossings, (rows[some] - origin[0], enter[some]), 1)
    np.add.at(crossings, (rows[some] - origin[0], leave[some]), -1)
