"""More hands: processes that draft beside each other, since one process drafts on one core only.

A hand is given a recipe's name and the words of a link, and gives back text.  A draft that was just made is asked for
again by the same words soon (its findings, another of its sheets), so the same hand is asked first, which remembers it.
At each hand those go first for whom something moves: thirty pupils' findings must not keep one slider waiting.
While the hands are still coming in, and where one was lost, the workroom drafts by itself.
"""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, field
from threading import Lock, Thread
from typing import TYPE_CHECKING, Final
from zlib import crc32

from littlefold.web.turns import Pressing, Turns

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable
    from pathlib import Path

    from littlefold.web.room import Room

    Fields = tuple[tuple[str, str], ...]
    Task = Callable[[Room, str, Fields], str]

NOT_OF_THE_DRAFT: Final = frozenset({"on-sheet"})
"""Words of a link that choose what is seen of a draft and leave the draft as it is."""
MOST: Final = 4
"""A hand takes some 150 MB, and a room full of pupils asks for no more."""
ASIDE: Final = 3
"""So many tasks that can wait are taken on at once; who asks then is told to ask again."""
LATER: Final = 10
"""How much a hand for what can wait stands back behind the others."""
SELDOM: Final = (10_000, 10, 10)
"""So many values are made, and so many lesser looks taken, before Python looks for what nobody holds any more; a look
through all that is remembered halts a redraw for several times as long as it takes."""
WARMS_UP: Final = "bib"
"""The recipe on which a hand learns its way about."""


def worth_calling() -> int:
    """How many hands are of use here: one for each core, and none where there is one core alone."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(cores, MOST) if cores > 1 else 0


class Hands:
    """As many processes as were asked for; none at first."""

    def __init__(self, folder: Path | None = None, count: int = 0) -> None:
        self._hands = () if folder is None else tuple(_Hand(folder) for _ in range(count))
        self._aside = _Hand(folder, LATER) if folder is not None and count else None
        self._turn = Lock()
        self._called = False

    def call_in(self) -> None:
        """Begins the processes, which takes them a moment; else they are begun when first there is something to do."""
        if not self._called:
            self._called = True
            for one in self._all():
                one.begin()

    def _all(self) -> tuple[_Hand, ...]:
        return (*self._hands, *((self._aside,) if self._aside else ()))

    def ask(self, room: Room, task: Task, recipe: str, fields: Iterable[tuple[str, str]]) -> str:
        """What a task gives for a recipe and the words of a link, by the hand that has least to do.

        Raises:
            TooLongError: The draft was cut off.
        """
        words = tuple(fields)
        return self._by(self._taken(recipe, words), room, task, recipe, words, pressing=Pressing.MOVING)

    def ask_at_rest(self, room: Room, task: Task, recipe: str, fields: Iterable[tuple[str, str]]) -> str:
        """The same for a task that comes when nothing moves any more: it lets those pass for whom something does.

        Raises:
            TooLongError: The draft was cut off.
        """
        words = tuple(fields)
        return self._by(self._taken(recipe, words), room, task, recipe, words, pressing=Pressing.RESTING)

    def ask_aside(self, room: Room, task: Task, recipe: str, fields: Iterable[tuple[str, str]]) -> str | None:
        """The same for a task that takes long and can wait, kept off those for which someone waits.

        None where enough are being worked on; the asker comes again.

        Raises:
            TooLongError: The draft was cut off.
        """
        with self._turn:
            self.call_in()
            hand = self._aside if self._aside is not None and self._aside.is_ready else None
            if hand is not None:
                if hand.waiting >= ASIDE:
                    return None
                hand.waiting += 1
        return self._by(hand, room, task, recipe, tuple(fields), pressing=Pressing.RESTING)

    def _by(
        self, hand: _Hand | None, room: Room, task: Task, recipe: str, words: Fields, *, pressing: Pressing
    ) -> str:
        """What a hand gives that was counted as busy; what the workroom gives where there is none."""
        if hand is None:
            return task(room, recipe, words)
        try:
            with hand.turns.turn(pressing):
                return hand.pool.submit(_done, task, recipe, words).result()
        except BrokenProcessPool:
            hand.begin()
            return task(room, recipe, words)
        finally:
            with self._turn:
                hand.waiting -= 1

    def _taken(self, recipe: str, words: Fields) -> _Hand | None:
        """The hand for these words, counted as busy; None where none has come in yet."""
        with self._turn:
            self.call_in()
            ready = [one for one in self._hands if one.is_ready]
            if not ready:
                return None
            first = ready[_mark(recipe, words) % len(ready)]
            least = min(ready, key=lambda one: one.waiting)
            hand = least if first.waiting > least.waiting else first
            hand.waiting += 1
            return hand

    @property
    def are_ready(self) -> bool:
        """Whether all have come in."""
        return self._called and all(one.is_ready for one in self._all())

    def close(self) -> None:
        """Sends the hands home."""
        for one in self._all() if self._called else ():
            one.pool.shutdown(wait=False, cancel_futures=True)


@dataclass(slots=True)
class _Hand:
    folder: Path
    stands_back: int = 0
    waiting: int = 0
    turns: Turns = field(default_factory=Turns)
    pool: ProcessPoolExecutor = field(init=False)
    come_in: Future[int] = field(init=False)

    def begin(self) -> None:
        """Calls the process in."""
        context = multiprocessing.get_context("spawn")
        self.pool = ProcessPoolExecutor(1, context, _sit_down, (self.folder, self.stands_back))
        self.come_in = self.pool.submit(os.getpid)

    @property
    def is_ready(self) -> bool:
        return self.come_in.done() and self.come_in.exception() is None


def _mark(recipe: str, words: Fields) -> int:
    """A number that is the same for all that is asked of one draft."""
    said = repr((recipe, sorted(word for word in words if word[0] not in NOT_OF_THE_DRAFT)))
    return crc32(said.encode())


_ROOMS: list[Room] = []
"""Of a hand: the workroom it sits in."""


def _sit_down(folder: Path, stands_back: int) -> None:
    """Begins the work of a hand: it ends with the workroom, not by the keys that close it.

    All that is loaded once is loaded now, and set aside from what Python looks through for what nobody holds.
    """
    from littlefold.web.room import Room  # noqa: PLC0415 - the room knows its hands, and a hand its room
    from littlefold.web.telling import told  # noqa: PLC0415 - the same

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(stands_back)
    _ROOMS.append(Room(folder))
    Thread(target=_end_with_the_workroom, daemon=True).start()
    told(_ROOMS[-1], WARMS_UP, ())
    gc.freeze()
    gc.set_threshold(*SELDOM)


def _end_with_the_workroom() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(0)


def _done(task: Task, recipe: str, words: Fields) -> str:
    return task(_ROOMS[-1], recipe, words)
