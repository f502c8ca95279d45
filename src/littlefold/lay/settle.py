"""Settling a lay: all pieces pushed together by linear programming, in exact coordinates.

Kept beyond its parting lines (`parting`), every pair of near pieces gives linear inequalities, so the shortest
strip in the neighbourhood of a layout is a linear programme; solved a few times with fresh lines it settles.  The
lattice of the search is left behind, gaps become exact, and rows that bind a piece (the fold, a stripe) stay as
they are.  Small overlaps are driven out on the way.

After the compaction of Li and Milenkovic (1995).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
from scipy import optimize, sparse

from littlefold.lay.parting import Partings
from littlefold.lay.strip import Spot, length_of

if TYPE_CHECKING:
    from littlefold.lay.parting import Side
    from littlefold.lay.strip import Layout, Stance, Strip

# How far a piece may be moved by one linear programme, as a share of the height of the strip.
TRUST = 0.08

# A millimetre of overlap costs as much as this many millimetres of strip.
OVERLAP_PRICE = 30.0

# Overlap deeper than this [mm] after settling means that the layout does not hold.
CLEAN = 1e-5

# Settling stops when one more linear programme shortens the strip by less than this share of its length.
STILL = 2e-5


@dataclass(frozen=True, slots=True)
class Settled:
    """A layout after settling, the strip it takes, and the deepest overlap left in it [mm]."""

    layout: Layout
    length: float
    overlap: float

    @property
    def is_clean(self) -> bool:
        """Whether no two members overlap."""
        return self.overlap <= CLEAN


class Settler:
    """Settles layouts of one strip."""

    def __init__(self, strip: Strip) -> None:
        self.strip = strip
        self._partings = Partings(strip)

    def settle(self, layout: Layout, longest: float | None = None, rounds: int = 6) -> Settled:
        """The layout pushed together; if `longest` [mm] is given, into that length, overlapping if it must."""
        now = Settled(layout, length_of(self.strip, layout), np.inf)
        for _ in range(rounds):
            after = self._once(now.layout, longest)
            if after is None or (now.is_clean and not after.is_clean):
                return now
            gain = now.length - after.length
            still = gain < STILL * now.length and after.overlap >= now.overlap - CLEAN
            now = after
            if still:
                return now
        return now

    def _once(self, layout: Layout, longest: float | None) -> Settled | None:
        trust = TRUST * self.strip.height
        stances = [m.stances[s.stance] for m, s in zip(self.strip.members, layout, strict=True)]
        sides = self._sides(layout, stances, trust)
        programme = _Programme(len(layout), sides)
        for k, stance in enumerate(stances):
            if not self.strip.members[k].hole:
                programme.end_before(k, self.strip.reach(stance)[1])
        bounds = [
            bound for k in range(len(layout)) for bound in self._bounds(k, layout[k], stances[k], trust)
        ]
        return self._taken(layout, programme.solve(bounds, longest))

    def _sides(self, layout: Layout, stances: list[Stance], trust: float) -> list[Side]:
        near = 2 * 2**0.5 * trust
        places = np.array([(spot.x, spot.y) for spot in layout])
        return [
            side
            for i, j in self._partings.near_pairs(stances, places, near)
            for side in self._partings.sides(i, j, stances, places, near)
        ]

    def _bounds(self, k: int, spot: Spot, stance: Stance, trust: float) -> tuple[Bound, Bound]:
        if self.strip.members[k].fixed_at is not None:
            return (spot.x, spot.x), (spot.y, spot.y)
        left, _ = self.strip.reach(stance)
        x = max(left, spot.x - trust)
        low, high = max(stance.low, spot.y - trust), min(stance.high, spot.y + trust)
        return (
            (spot.x, spot.x) if stance.along_phase else (x, max(x, spot.x + trust)),
            (spot.y, spot.y) if stance.across_phase else (min(low, high), high),
        )

    def _taken(self, layout: Layout, solution: npt.NDArray[np.float64] | None) -> Settled | None:
        if solution is None:
            return None
        moved = tuple(
            Spot(spot.stance, float(solution[2 * k]), float(solution[2 * k + 1]))
            for k, spot in enumerate(layout)
        )
        overlap = float(solution[2 * len(layout) + 1 :].max(initial=0.0))
        return Settled(moved, length_of(self.strip, moved), overlap)


Bound = tuple[float | None, float | None]


class _Programme:
    """The linear programme: unknowns are x and y of each member, the length, and the overlap of each near pair."""

    def __init__(self, count: int, sides: list[Side]) -> None:
        pairs = sorted({(side.first, side.second) for side in sides})
        self._length = 2 * count
        self._pairs = {pair: 2 * count + 1 + k for k, pair in enumerate(pairs)}
        self._entries: list[tuple[int, int, float]] = []
        self._above: list[float] = []
        for side in sides:
            self._part(side)

    def _part(self, side: Side) -> None:
        row, a, b = len(self._above), 2 * side.first, 2 * side.second
        nx, ny = side.normal
        self._entries += [(row, a, nx), (row, a + 1, ny), (row, b, -nx), (row, b + 1, -ny)]
        self._entries.append((row, self._pairs[side.first, side.second], -1.0))
        self._above.append(-side.offset)

    def end_before(self, member: int, reach: float) -> None:
        """The member, which reaches so far to the right [mm], ends before the strip does."""
        row = len(self._above)
        self._entries += [(row, 2 * member, 1.0), (row, self._length, -1.0)]
        self._above.append(-reach)

    def solve(self, bounds: list[Bound], longest: float | None) -> npt.NDArray[np.float64] | None:
        """The unknowns of the shortest strip; None where there is none."""
        count = self._length + 1 + len(self._pairs)
        cost = np.zeros(count)
        cost[self._length], cost[self._length + 1 :] = 1.0, OVERLAP_PRICE
        rows, columns, values = zip(*self._entries, strict=True)
        matrix = sparse.csr_array((values, (rows, columns)), shape=(len(self._above), count))
        free = [*bounds, (0.0, longest), *[(0.0, None)] * len(self._pairs)]
        found = optimize.linprog(cost, A_ub=matrix, b_ub=np.array(self._above), bounds=free, method="highs")
        return None if found.x is None else np.asarray(found.x, dtype=np.float64)
