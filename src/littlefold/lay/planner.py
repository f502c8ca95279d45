"""The own planner: a first layout at once, then better ones for as long as it is asked to go on.

Search on the lattice until nothing overlaps, or so little that settling drives it out; settle; shorten the strip
and go on.  When a search stays stuck, the strip is shortened by less, and two members of the least bad layout change
places.  The same strip, seed and number of rounds give the same layouts.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from littlefold.lay.nofit import NoFitTable
from littlefold.lay.search import Search
from littlefold.lay.settle import Settler
from littlefold.lay.strip import length_of

if TYPE_CHECKING:
    from littlefold.lay.settle import Settled
    from littlefold.lay.strip import Layout, Strip

# The strip is shortened by this share after an improvement, and by half as much after each failure, down to the
# least.  Larger steps: the search fails more often; smaller: it creeps.
MOST_SHORTENED = 0.01
LEAST_SHORTENED = 0.001

# After a layout from elsewhere it is shortened by this at first: such layouts are good already.
NEARLY_LEAST = 0.002

# Overlaps no deeper than this many lattice steps are left to settling.  Larger: linear programmes are wasted on
# layouts that do not hold; smaller: layouts that hold are passed by.
SHALLOW = 1.5

# After this many rounds without a layout the search has failed.
PATIENCE = 250


@dataclass(frozen=True, slots=True)
class Found:
    """A layout without overlap, and the length of strip that it takes [mm]."""

    layout: Layout
    length: float


class Planner:
    """Plans one strip; the state of one search, not to be shared.

    `least` [mm] is a length under which no layout can be: nearer to it than one step the search is done.
    """

    def __init__(self, strip: Strip, seed: int, least: float = 0.0) -> None:
        self.strip = strip
        self._least = least
        self._rng = np.random.default_rng(seed)
        self._search = Search(strip, NoFitTable([s.parts for s in strip.shapes], strip.lattice), self._rng)
        self._settler = Settler(strip)
        self._best: Found | None = None
        self._start: Layout = ()
        self._near: Layout = ()
        self._rounds, self._all_rounds = 0, 0
        self._shorten, self._target = MOST_SHORTENED, 0.0
        self._lowest = self._tried = np.inf

    @property
    def steps(self) -> int:
        """How much has been done: members moved, and one for each round."""
        return self._search.steps + self._all_rounds

    @property
    def is_done(self) -> bool:
        """Whether no layout can be shorter than the best by more than the least step."""
        return self._best is not None and self._best.length * (1 - LEAST_SHORTENED) <= self._least

    def first(self) -> Layout | None:
        """All members put down one by one, the fold first, then the large ones; None where one finds no place."""
        search, members = self._search, self.strip.members
        search.clear(self._ample_length())
        order = sorted(range(len(members)), key=self._urgency)
        return search.layout() if all(search.put_first_fit(number) for number in order) else None

    def _ample_length(self) -> float:
        """A strip in which all members fit one after the other, whatever is fixed in it [mm]."""
        spare = 2 * self.strip.lattice.along
        members = self.strip.members
        loose = sum(max(self.strip.shapes[s.shape].extent + spare for s in m.stances) for m in members)
        repeats = sum(max((s.along_phase or (0, 0))[1] for s in m.stances) for m in members)
        fixed = max(
            (m.fixed_at[0] + self.strip.reach(m.stances[0])[1] for m in members if m.fixed_at), default=0.0
        )
        return loose + repeats + fixed

    def _urgency(self, number: int) -> tuple[int, float]:
        member = self.strip.members[number]
        freedom = min(stance.high - stance.low for stance in member.stances)
        rank = 0 if member.fixed_at else 1 if freedom < self.strip.lattice.across else 2
        return rank, -self.strip.shapes[member.stances[0].shape].area

    def begin(self, layout: Layout) -> Found | None:
        """Settle a first layout; the search goes on from there.  None where it cannot be freed of overlap."""
        return self._take(self._settler.settle(layout))

    def is_worth_settling(self, layout: Layout, shorter: float) -> bool:
        """Whether a layout from elsewhere is shorter than the best by a share, so that settling it pays."""
        best = np.inf if self._best is None else self._best.length
        return length_of(self.strip, layout) <= best * (1 - shorter)

    def adopt(self, layout: Layout) -> Found | None:
        """Settle a layout from elsewhere and go on from it, if it holds and is shorter than the best so far."""
        settled = self._settler.settle(layout)
        if self._best is not None and settled.length >= self._best.length:
            return None
        self._shorten = min(self._shorten, NEARLY_LEAST)
        return self._take(settled)

    def _take(self, settled: Settled) -> Found | None:
        if not settled.is_clean:
            return None
        self._best = Found(settled.layout, settled.length)
        self._aim(settled.layout)
        return self._best

    def _aim(self, start: Layout) -> None:
        """Begin to search for a strip that is shorter than the best."""
        assert self._best is not None, "a search goes on from a layout"  # noqa: S101 - our own mistake
        self._target = max(self._best.length * (1 - self._shorten), self._least)
        self._search.start(start, self._target)
        self._near, self._rounds = start, 0
        self._lowest = self._tried = np.inf

    def advance(self) -> Found | None:
        """One round of the search; a layout if the round found a better one."""
        search = self._search
        search.round()
        self._rounds, self._all_rounds = self._rounds + 1, self._all_rounds + 1
        if search.overlap < self._lowest:
            self._lowest, self._near = search.overlap, search.layout()
        found = self._settle_if_shallow()
        if found is None and self._rounds >= PATIENCE:
            self._shorten = max(self._shorten / 2, LEAST_SHORTENED)
            self._aim(self._shaken(self._near))
        return found

    def _settle_if_shallow(self) -> Found | None:
        search, lattice = self._search, self.strip.lattice
        if search.deepest > SHALLOW * max(lattice.along, lattice.across) or search.overlap >= self._tried:
            return None
        self._tried = search.overlap
        settled = self._settler.settle(search.layout(), self._target)
        return self._take(self._settler.settle(settled.layout)) if settled.is_clean else None

    def _shaken(self, layout: Layout) -> Layout:
        """A layout with the places of two members exchanged."""
        loose = [k for k, member in enumerate(self.strip.members) if member.fixed_at is None]
        if len(loose) < 2:  # noqa: PLR2004 - two are needed to change places
            return layout
        a, b = (int(k) for k in self._rng.choice(loose, 2, replace=False))
        spots = list(layout)
        spots[a] = replace(spots[a], x=layout[b].x, y=layout[b].y)
        spots[b] = replace(spots[b], x=layout[a].x, y=layout[a].y)
        return tuple(spots)
