"""Counting how much of a drawing lies in each of many boxes, quickly."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

CELL = 1.0
"""The side of the squares in which points are counted [mm].  Larger: boxes reach further than they are."""

OUTWARD = np.array((-1.0, -1.0, 1.0, 1.0))
"""What makes a box (left, bottom, right, top) larger on all sides."""


@dataclass(frozen=True, slots=True)
class Occupied:
    """How many points lie left of and below each line of a raster (columns x rows), from a lower left corner [mm]."""

    left: float
    bottom: float
    sums: np.ndarray

    def within(self, boxes: np.ndarray) -> np.ndarray:
        """How many points lie in each box (m x 4: left, bottom, right, top), boxes widened to whole squares."""
        columns, rows = (size - 1 for size in self.sums.shape)
        left = np.clip(np.floor((boxes[:, 0] - self.left) / CELL).astype(int), 0, columns)
        right = np.clip(np.floor((boxes[:, 2] - self.left) / CELL).astype(int) + 1, 0, columns)
        bottom = np.clip(np.floor((boxes[:, 1] - self.bottom) / CELL).astype(int), 0, rows)
        top = np.clip(np.floor((boxes[:, 3] - self.bottom) / CELL).astype(int) + 1, 0, rows)
        counts: np.ndarray = (
            self.sums[right, top] - self.sums[left, top] - self.sums[right, bottom] + self.sums[left, bottom]
        )
        return counts


def occupied(places: np.ndarray) -> Occupied:
    """The raster of some points (n x 2) [mm]."""
    if len(places) == 0:
        return Occupied(0.0, 0.0, np.zeros((1, 1), dtype=int))
    left, bottom = places.min(axis=0)
    cells = np.floor((places - (left, bottom)) / CELL).astype(int)
    columns, rows = cells.max(axis=0) + 1
    counts = np.bincount(cells[:, 0] * rows + cells[:, 1], minlength=columns * rows).reshape(columns, rows)
    sums = np.zeros((columns + 1, rows + 1), dtype=np.int32)
    counts.cumsum(axis=0, out=sums[1:, 1:])
    sums.cumsum(axis=1, out=sums)
    return Occupied(float(left), float(bottom), sums)
