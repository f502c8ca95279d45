"""The lines that part two pieces: one for each pair of convex parts.

Two convex polygons do not overlap exactly if the way from the one to the other lies beyond an edge of the sum of
the one and the reversed other.  The edge beyond which the way lies furthest gives a straight line that both can
be moved along without meeting.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from littlefold.lay.convex import Fan
from littlefold.lay.nofit import REVERSED

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.lay.convex import Points
    from littlefold.lay.nofit import Sign
    from littlefold.lay.strip import Stance, Strip


@dataclass(frozen=True, slots=True)
class Side:
    """The second member stays beyond a line: normal . (second - first) >= offset."""

    first: int
    second: int
    normal: tuple[float, float]
    offset: float


@dataclass(frozen=True, slots=True)
class _Edges:
    """All edges of all sums of convex parts of two stances; the edges of sum k begin at `starts[k]`."""

    normals: Points
    offsets: npt.NDArray[np.float64]
    starts: npt.NDArray[np.int64]

    def nearest(self, way: Points) -> Iterator[tuple[int, float]]:
        """For each sum, the edge beyond which the way lies furthest, and how far [mm]."""
        beyond = self.normals @ way - self.offsets
        ends = np.append(self.starts[1:], beyond.size)
        furthest = np.maximum.reduceat(beyond, self.starts)
        for start, end, most in zip(self.starts, ends, furthest, strict=True):
            yield int(start + np.argmax(beyond[start:end])), float(most)


class Partings:
    """The parting lines of the members of a strip; the edges that were worked out are kept."""

    def __init__(self, strip: Strip) -> None:
        self._strip = strip
        self._fans: dict[tuple[int, Sign], tuple[Fan, ...]] = {}
        self._edges: dict[tuple[int, Sign, int, Sign], _Edges] = {}

    def sides(self, i: int, j: int, stances: tuple[Stance, Stance], way: Points, near: float) -> list[Side]:
        """The lines between members i and j for parts that are nearer to each other than `near` [mm]."""
        if self._far(stances, way, near):
            return []
        edges = self._edges_of(*stances)
        return [
            Side(i, j, (float(edges.normals[k, 0]), float(edges.normals[k, 1])), float(edges.offsets[k]))
            for k, beyond in edges.nearest(way)
            if beyond < near
        ]

    def _far(self, stances: tuple[Stance, Stance], way: Points, near: float) -> bool:
        sizes = [self._strip.shapes[stance.shape].size for stance in stances]
        return bool(np.hypot(*way) > sizes[0] + sizes[1] + near)

    def _edges_of(self, first: Stance, second: Stance) -> _Edges:
        key = (first.shape, first.sign, second.shape, second.sign)
        if key not in self._edges:
            back = second.sign.times(REVERSED)
            self._edges[key] = _all_edges(
                [
                    a.plus(b)
                    for a in self._fans_of(first.shape, first.sign)
                    for b in self._fans_of(second.shape, back)
                ]
            )
        return self._edges[key]

    def _fans_of(self, shape: int, sign: Sign) -> tuple[Fan, ...]:
        key = (shape, sign)
        if key not in self._fans:
            self._fans[key] = tuple(Fan.of(part * sign.factors()) for part in self._strip.shapes[shape].parts)
        return self._fans[key]


def _all_edges(sums: list[Points]) -> _Edges:
    normals, offsets, starts, count = [], [], [], 0
    for corners in sums:
        along = np.roll(corners, -1, axis=0) - corners
        length = np.hypot(along[:, 0], along[:, 1])
        keep = length > 0
        out = np.column_stack((along[:, 1], -along[:, 0]))[keep] / length[keep, None]
        normals.append(out)
        offsets.append(np.einsum("ij,ij->i", out, corners[keep]))
        starts.append(count)
        count += len(out)
    return _Edges(np.concatenate(normals), np.concatenate(offsets), np.array(starts, dtype=np.int64))
