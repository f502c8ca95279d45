"""The search for a lay by the clock: first lays of every way at once, then better ones until the time is up.

Ctrl-C ends the search and keeps the best lay so far; pressed again it ends the command.
"""

from __future__ import annotations

import signal
import time
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from threading import Event, current_thread, main_thread
from typing import TYPE_CHECKING

from littlefold.cli.engine_process import ProcessEngine
from littlefold.lay.asked import pinned
from littlefold.lay.compare import ALL_WAYS, Row, best_of
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.spoken import units_of
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from types import FrameType

    from littlefold.cli.fabric import Fabric
    from littlefold.lay.lay import Lay
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.ways import Way

    Progress = Callable[[Lay], None]

TO_COMPARE = 0.5
"""The share of the time in which the ways are compared; the best of them gets the rest."""

LEAST_FOR_ENGINE = 2.0
"""The outside engine finds nothing in less time [s]."""

# A lay this little longer than its lower bound [mm] is not searched any more.
NO_MATTER = 0.5

# More steps than any clock leaves time for.
NO_END = 10**9


@dataclass(slots=True)
class Patience:
    """Whether to go on: until a moment, and while nobody has asked to stop."""

    until: float
    stopped: Event = field(default_factory=Event)

    def holds(self) -> bool:
        """Whether the search may go on."""
        return not self.stopped.is_set() and time.monotonic() < self.until

    def left(self) -> float:
        """Seconds to go."""
        return 0.0 if self.stopped.is_set() else max(0.0, self.until - time.monotonic())

    def share(self, seconds: float) -> Patience:
        """So many seconds of it from now on."""
        return Patience(min(self.until, time.monotonic() + seconds), self.stopped)


def search(pieces: Sequence[LayPiece], fabric: Fabric, shown: Progress) -> tuple[Row, ...]:
    """The best lay found for the way asked for, or for each way that the cloth can be laid in.

    Args:
        pieces: What is cut from the cloth.
        fabric: The cloth, the way and the time.
        shown: Is told of every better lay.
    """
    ways = (fabric.way,) if fabric.way is not None else tuple(way for way in ALL_WAYS if way.value != "tube")
    with stopping() as stopped:
        patience = Patience(time.monotonic() + fabric.seconds, stopped)
        if fabric.steps is not None:
            patience = Patience(float("inf"), stopped)
        rows = [
            row
            for cloth in fabric.cloths
            for row in _first_rows(pieces, replace(fabric, cloth=cloth), ways, patience, shown)
        ]
        return _bettered(rows, fabric, patience, shown)


@contextmanager
def stopping() -> Iterator[Event]:
    """An event that Ctrl-C sets once; after that Ctrl-C does what it always does."""
    stopped = Event()
    if current_thread() is not main_thread():
        yield stopped  # only the main thread hears signals
        return
    before = signal.getsignal(signal.SIGINT)

    def stop(_number: int, _frame: FrameType | None) -> None:
        stopped.set()
        signal.signal(signal.SIGINT, before)

    signal.signal(signal.SIGINT, stop)
    try:
        yield stopped
    finally:
        signal.signal(signal.SIGINT, before)


@dataclass(frozen=True, slots=True)
class _Tried:
    """A way, prepared for more search, with its best lay so far."""

    row: Row
    prepared: Prepared | None


def _first_rows(
    pieces: Sequence[LayPiece], fabric: Fabric, ways: Sequence[Way], patience: Patience, shown: Progress
) -> list[_Tried]:
    """The first lay of each way; what Ctrl-C cuts short is left out, but one way is always tried."""
    tried: list[_Tried] = []
    for way in ways:
        if tried and patience.stopped.is_set():
            break
        prepared = _prepared(pieces, fabric, way)
        if not isinstance(prepared, Prepared):
            tried.append(_Tried(Row(way, fabric.cloth.width, None, None, prepared), None))
            continue
        row = Row(
            way, fabric.cloth.width, None, prepared.bounds, prepared.bounds.advice(units_of(prepared.cloth))
        )
        tried.append(_Tried(_better(row, lays(prepared, Effort(0, fabric.seed)), shown), prepared))
    return tried


def _prepared(pieces: Sequence[LayPiece], fabric: Fabric, way: Way) -> Prepared | tuple[Problem, ...]:
    pins = pinned(pieces, way, fabric.pins)
    if isinstance(pins, Problem):
        return (pins,)
    return prepare(pieces, fabric.cloth, way, fabric.gap, pins=pins, holes=fabric.holes)


def _bettered(
    tried: Sequence[_Tried], fabric: Fabric, patience: Patience, shown: Progress
) -> tuple[Row, ...]:
    """The rows after the search: every way gets its share of the time, the best one the rest."""
    open_ways = [one for one in tried if one.prepared is not None]
    share = patience.left() * TO_COMPARE / max(1, len(open_ways)) if len(open_ways) > 1 else 0.0
    rows: list[Row] = []
    for one in tried:
        effort = _planner_alone(fabric, patience.share(share))
        rows.append(_searched(one, effort, shown) if effort else one.row)
    best = best_of(rows)
    if best is None or not patience.holds():
        return tuple(rows)
    at = rows.index(best)
    effort = _with_engine(fabric, patience)
    if effort is not None:
        rows[at] = _searched(replace(tried[at], row=best), effort, shown)
    return tuple(rows)


def _planner_alone(fabric: Fabric, patience: Patience) -> Effort | None:
    """The effort for one of many ways; none where there is no time for it."""
    if fabric.steps is not None:
        return Effort(fabric.steps, fabric.seed, lambda: not patience.stopped.is_set())
    return Effort(NO_END, fabric.seed, patience.holds) if patience.holds() else None


def _with_engine(fabric: Fabric, patience: Patience) -> Effort | None:
    """The effort for the best way: the outside engine helps where the clock leaves time for it."""
    if fabric.steps is not None:
        return None
    engine = ProcessEngine() if patience.left() >= LEAST_FOR_ENGINE else None
    return Effort(NO_END, fabric.seed, patience.holds, engine, patience.left())


def _searched(one: _Tried, effort: Effort, shown: Progress) -> Row:
    if one.prepared is None or _cannot_be_shorter(one.row):
        return one.row
    return _better(one.row, lays(one.prepared, effort), shown)


def _cannot_be_shorter(row: Row) -> bool:
    return row.lay is not None and row.bounds is not None and row.lay.length <= row.bounds.most + NO_MATTER


def _better(row: Row, found: Iterator[Lay], shown: Progress) -> Row:
    """The row with the shortest of its lay and those found."""
    for lay in found:
        if row.lay is None or lay.length < row.lay.length:
            row = replace(row, lay=lay)
            shown(lay)
        if _cannot_be_shorter(row):
            break
    return row
