"""Guided local search: places for all members in a strip of given length, so that none overlap.

One act of the search takes a member that overlaps others, adds up, for every lattice place it may take, how deep
it would lie in each of the others times the weight of that pair, and puts it where the sum is least.  After each
round the pairs that still overlap weigh more.  The same seed makes the same choices.

The idea is guided local search on weighted penetration depth (Egeblad, Nielsen and Odgaard 2007; Umetani et
al. 2009), here over whole sampled windows at once.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from littlefold.lay.strip import Spot, Window, window

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.lay.nofit import NoFitTable
    from littlefold.lay.strip import Layout, Strip

Sums = npt.NDArray[np.float32]

# After a round, the deepest pair weighs this many times more, shallower ones less so.  Larger: the search
# jumps about; smaller: it sits longer in a dead end.
HEAVIER = 1.3

# A pair that no longer overlaps loses this share of its extra weight each round.
FADING = 0.95

# The chance that of two equally good stances the later one is taken.
COIN = 0.5

# Sums this near to the least [mm] are equally good, and chance picks one.
EQUAL = 1e-4


class Search:
    """The changing state of a search: where each member lies, what overlaps, and what each pair weighs."""

    def __init__(self, strip: Strip, table: NoFitTable, rng: np.random.Generator) -> None:
        count = len(strip.members)
        self.strip, self._table, self._rng = strip, table, rng
        self.steps = 0
        self._kinds = [[table.kind(s.shape, s.sign) for s in member.stances] for member in strip.members]
        self._stance, self._row, self._column = [0] * count, [0] * count, [0] * count
        self._weight = np.ones((count, count), dtype=np.float32)
        self._depth = np.zeros((count, count), dtype=np.float32)
        self._placed: list[int] = []
        self._length = 0.0

    # -- where things lie ---------------------------------------------------------------------------------

    def start(self, layout: Layout, length: float) -> None:
        """Take over a layout, moved on to the lattice and inside the length."""
        self._length = length
        self._placed = list(range(len(layout)))
        self._weight[:] = 1.0
        for number, spot in enumerate(layout):
            self._stance[number] = spot.stance
            self._row[number], self._column[number] = self._snap(number, spot)
        for number in self._placed:
            self._measure(number)

    def layout(self) -> Layout:
        """Where each member lies now."""
        lattice = self.strip.lattice
        return tuple(
            Spot(self._stance[k], self._column[k] * lattice.along, self._row[k] * lattice.across)
            if member.fixed_at is None
            else Spot(0, *member.fixed_at)
            for k, member in enumerate(self.strip.members)
        )

    def _snap(self, number: int, spot: Spot) -> tuple[int, int]:
        lattice = self.strip.lattice
        row, column = round(spot.y / lattice.across), round(spot.x / lattice.along)
        if self.strip.members[number].fixed_at is not None:
            return row, column
        places = self._window(number, spot.stance)
        return _nearest(row, places.rows), _nearest(column, places.columns)

    def _window(self, number: int, stance: int) -> Window:
        return window(self.strip, self.strip.members[number].stances[stance], self._length)

    # -- overlap ------------------------------------------------------------------------------------------

    @property
    def overlap(self) -> float:
        """The sum of the depths of all overlapping pairs [mm]."""
        return float(self._depth.sum()) / 2

    @property
    def deepest(self) -> float:
        """The depth of the deepest pair [mm]."""
        return float(self._depth.max(initial=0.0))

    def overlapping(self) -> list[int]:
        """The members that overlap another and can be moved."""
        touched = np.flatnonzero(self._depth.max(axis=1, initial=0.0) > 0)
        return [int(k) for k in touched if self.strip.members[k].fixed_at is None]

    def _measure(self, number: int) -> None:
        row, column, region = self._row[number], self._column[number], self._table.region
        kind = self._kinds[number][self._stance[number]]
        for other in self._placed:
            if other != number:
                no_fit = region(self._kinds[other][self._stance[other]], kind)
                depth = no_fit.at(row - self._row[other], column - self._column[other])
                self._depth[number, other] = self._depth[other, number] = depth

    # -- one act ------------------------------------------------------------------------------------------

    def sums(self, number: int, stance: int, places: Window, others: Iterable[int]) -> Sums:
        """For each place of a stance, the weighted depth in the other members."""
        row, row_step, row_count = places.rows
        column, column_step, column_count = places.columns
        height, width = (row_count - 1) * row_step + 1, (column_count - 1) * column_step + 1
        total = np.zeros((height, width), np.float32)
        kind, weight = self._kinds[number][stance], self._weight[number]
        for other in others:
            region = self._table.region(self._kinds[other][self._stance[other]], kind)
            top, left = self._row[other] + region.row - row, self._column[other] + region.column - column
            r0, r1 = max(top, 0), min(top + region.rows, height)
            c0, c1 = max(left, 0), min(left + region.columns, width)
            if r0 < r1 and c0 < c1:
                part = region.depth[r0 - top : r1 - top, c0 - left : c1 - left]
                total[r0:r1, c0:c1] += part * weight[other]
        return total[::row_step, ::column_step]

    def move(self, number: int) -> None:
        """Put a member where its weighted depth in all others is least; chance decides between equals."""
        others = [k for k in self._placed if k != number]
        best: tuple[float, int, int, int] | None = None
        for stance in range(len(self.strip.members[number].stances)):
            places = self._window(number, stance)
            if places.is_empty:
                continue
            total = self.sums(number, stance, places, others)
            least = float(total.min())
            if (
                best is None
                or least < best[0] - EQUAL
                or (least <= best[0] + EQUAL and self._rng.random() < COIN)
            ):
                row, column = self._choose(total, least, places)
                best = (least, stance, row, column)
        self.steps += 1
        if best is not None:
            _, self._stance[number], self._row[number], self._column[number] = best
            self._measure(number)

    def _choose(self, total: Sums, least: float, places: Window) -> tuple[int, int]:
        equal = np.flatnonzero(total <= least + EQUAL)
        pick = int(equal[self._rng.integers(equal.size)])
        r, c = divmod(pick, total.shape[1])
        return places.rows[0] + r * places.rows[1], places.columns[0] + c * places.columns[1]

    # -- rounds -------------------------------------------------------------------------------------------

    def round(self) -> None:
        """Move every overlapping member once, in an order left to chance, then weigh anew."""
        order = self.overlapping()
        self._rng.shuffle(order)
        for number in order:
            if self._depth[number].max() > 0:
                self.move(number)
        self._weigh()

    def _weigh(self) -> None:
        deepest = self.deepest
        if deepest > 0:
            grown = self._weight * (1 + (HEAVIER - 1) * np.sqrt(self._depth / deepest))
            faded = 1 + (self._weight - 1) * FADING
            self._weight = np.where(self._depth > 0, grown, faded).astype(np.float32)

    def put_first_fit(self, number: int) -> bool:
        """Put a member at the free place nearest to the cut edge; False where there is none."""
        fixed = self.strip.members[number].fixed_at
        if fixed is not None:
            self._row[number], self._column[number] = self._snap(number, Spot(0, *fixed))
            self._placed.append(number)
            return True
        best: tuple[float, int, int, int, int] | None = None
        for stance in range(len(self.strip.members[number].stances)):
            found = self._first_free(number, stance)
            if found is not None and (best is None or found < best):
                best = found
        if best is None:
            return False
        _, _, self._stance[number], self._row[number], self._column[number] = best
        self._placed.append(number)
        self._measure(number)
        return True

    def _first_free(self, number: int, stance: int) -> tuple[float, int, int, int, int] | None:
        places = self._window(number, stance)
        if places.is_empty:
            return None
        free = self.sums(number, stance, places, self._placed) <= 0
        columns = np.flatnonzero(free.any(axis=0))
        if columns.size == 0:
            return None
        row = places.rows[0] + int(np.argmax(free[:, columns[0]])) * places.rows[1]
        column = places.columns[0] + int(columns[0]) * places.columns[1]
        reach = self.strip.reach(self.strip.members[number].stances[stance])[1]
        return column * self.strip.lattice.along + reach, row, stance, row, column

    def clear(self, length: float) -> None:
        """Take everything up, and offer a strip of the given length [mm]."""
        self._length, self._placed = length, []
        self._weight[:], self._depth[:] = 1.0, 0.0


def _nearest(step: int, steps: tuple[int, int, int]) -> int:
    """The allowed step nearest to a wished one; `steps` is (first, step, count), the first if there are none."""
    first, stride, count = steps
    return first + stride * min(max(round((step - first) / stride), 0), max(count - 1, 0))
