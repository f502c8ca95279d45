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
    from collections.abc import Iterator, Sequence

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
    """All edges of all sums of convex parts of two stances; those of sum k stand from `starts[k]` to `ends[k]`."""

    normals: Points
    offsets: npt.NDArray[np.float64]
    starts: npt.NDArray[np.int64]
    ends: npt.NDArray[np.int64]

    def nearest(self, way: Points, near: float) -> Iterator[int]:
        """For each sum that the way is not further beyond than `near` [mm], the edge beyond which it lies furthest."""
        beyond = self.normals @ way - self.offsets
        close = np.flatnonzero(np.maximum.reduceat(beyond, self.starts) < near)
        for start, end in zip(self.starts[close].tolist(), self.ends[close].tolist(), strict=True):
            yield start + int(beyond[start:end].argmax())


class Partings:
    """The parting lines of the members of a strip; the edges that were worked out are kept."""

    def __init__(self, strip: Strip) -> None:
        self._strip = strip
        self._sizes = np.array([shape.size for shape in strip.shapes])
        self._fans: dict[tuple[int, Sign], tuple[Fan, ...]] = {}
        self._edges: dict[tuple[int, Sign, int, Sign], _Edges] = {}

    def near_pairs(self, stances: Sequence[Stance], places: Points, near: float) -> Iterator[tuple[int, int]]:
        """The pairs of members that may be nearer to each other than `near` [mm], told from their sizes alone."""
        sizes = self._sizes[[stance.shape for stance in stances]]
        apart = np.hypot(*(places[:, None, :] - places[None, :, :]).transpose(2, 0, 1))
        close = np.triu(apart <= sizes[:, None] + sizes[None, :] + near, k=1)
        yield from zip(*(ends.tolist() for ends in np.nonzero(close)), strict=True)

    def sides(self, i: int, j: int, stances: Sequence[Stance], places: Points, near: float) -> list[Side]:
        """The lines between members i and j for parts that are nearer to each other than `near` [mm]."""
        edges = self._edges_of(stances[i], stances[j])
        return [
            Side(i, j, (float(edges.normals[k, 0]), float(edges.normals[k, 1])), float(edges.offsets[k]))
            for k in edges.nearest(places[j] - places[i], near)
        ]

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
    ends = np.array([*starts[1:], count], dtype=np.int64)
    return _Edges(np.concatenate(normals), np.concatenate(offsets), np.array(starts, dtype=np.int64), ends)
