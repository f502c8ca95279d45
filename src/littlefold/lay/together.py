"""The own planner and the outside engine at one question, with all that they find.

Where the engine is the better searcher it gets all cores for one search: measured, that comes to more than one search in
each core, however few the pieces (docs/lay.md).  The last of the time is kept for settling what it found.  Elsewhere
both work side by side.
"""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass, replace
from math import inf
from typing import TYPE_CHECKING

from littlefold.lay.strip import length_of

if TYPE_CHECKING:
    from collections.abc import Generator, Iterator

    from littlefold.lay.conversation import Asked
    from littlefold.lay.place import Effort
    from littlefold.lay.planner import Found, Planner
    from littlefold.lay.strip import Layout

# With more members than this on the fold the engine searches alone, and the planner settles what it finds.
MANY = 32

# An answer of the engine is settled at once if it is shorter by this share than the last one was before it was settled:
# settling takes time from the search, the more so the more members there are (a crowd waits for the larger share).
CROWD = 48
SHORTER = 0.001
MUCH_SHORTER = 0.003

# An answer is settled even if it is this much longer than the best: settling wins as much as that.
LONGER = -0.01

# How long to wait for an answer of the engine when there is nothing else to do [s].
WAIT = 0.1

# What is kept of the time for settling the last answers: so much for each member, and at least so much in all [s].  On
# the public sets a layout was settled in 2 to 5 ms a member, and the engine overruns its seconds by 0.1 to 0.5.
KEPT_EACH = 0.01
KEPT_AT_LEAST = 0.3


def seconds_for_engine(seconds: float, members: int) -> float:
    """The seconds that the engine is told when so many are left for so many members."""
    return seconds - min(seconds / 2, max(KEPT_AT_LEAST, KEPT_EACH * members))


def searched(
    planner: Planner, layout: Layout, asked: Asked | None, effort: Effort
) -> Iterator[tuple[Found, str]]:
    """All that planner and engine find from a first layout on, with the name of the one that found it."""
    alone = asked is not None and (asked.comb is None or len(planner.strip.members) > MANY)
    with closing(_heard(asked, effort, alone=alone)) as heard:
        next(heard, None)  # the engine sets to work while the first layout is settled
        found = planner.begin(layout)
        if found is None:
            return
        yield found, "planner"
        settling = _Settling(planner)
        if alone:
            shorter = MUCH_SHORTER if len(planner.strip.members) > CROWD else SHORTER
            for answer in heard:
                yield from settling.of(answer, shorter)
        yield from _side_by_side(settling, heard, effort)


def _side_by_side(
    settling: _Settling, heard: Iterator[_Heard | None], effort: Effort
) -> Iterator[tuple[Found, str]]:
    planner = settling.planner
    last: _Heard | None = None
    while planner.steps < effort.steps and not planner.is_done and effort.keep_going():
        better = planner.advance()
        if better is not None:
            yield better, "planner"
        answer = next(heard, None)
        last = answer or last
        yield from settling.of(answer, SHORTER)
    if last is not None:
        yield from settling.of(replace(last, is_last=True), SHORTER)


@dataclass(slots=True)
class _Settling:
    """Settles the engine's layouts, each if it is shorter than those before it were as the engine left them."""

    planner: Planner
    least: float = inf

    def of(self, heard: _Heard | None, shorter: float) -> Iterator[tuple[Found, str]]:
        """The layout, settled, if that comes out shorter than the best."""
        if heard is None or not (heard.is_last or self._is_shorter(heard.layout, shorter)):
            return
        if not self.planner.is_worth_settling(heard.layout, LONGER):
            return
        self.least = min(self.least, self._length(heard.layout))
        adopted = self.planner.adopt(heard.layout)
        if adopted is not None:
            yield adopted, "engine"

    def _is_shorter(self, layout: Layout, shorter: float) -> bool:
        return self._length(layout) <= self.least * (1 - shorter)

    def _length(self, layout: Layout) -> float:
        return length_of(self.planner.strip, layout)


@dataclass(frozen=True, slots=True)
class _Heard:
    """A layout of the engine, and whether it is the last of its search."""

    layout: Layout
    is_last: bool


def _heard(asked: Asked | None, effort: Effort, *, alone: bool) -> Generator[_Heard | None]:
    """What the engine finds, None while it finds nothing, its last layout again when it has ended.

    Nothing at all where there is no engine for it.
    """
    if asked is None or effort.engine is None:
        return
    last: Layout | None = None
    for answer in effort.engine.answers(asked.task, WAIT if alone else 0.0, effort.keep_going):
        if answer is not None:
            last = asked.layout(answer)
        yield None if answer is None or last is None else _Heard(last, is_last=False)
    if last is not None:
        yield _Heard(last, is_last=True)
