"""Whose turn it is: one after the other, the more pressing first, and among equals who came first."""

from __future__ import annotations

from contextlib import contextmanager
from enum import IntEnum
from heapq import heappop, heappush
from itertools import count
from threading import Condition
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator


class Pressing(IntEnum):
    """How pressing something is; the lower number goes first."""

    MOVING = 0
    """A slider moves under somebody's finger."""
    RESTING = 1
    """Nothing moves, and what was found may come a moment later."""


class Turns:
    """A place at which one thread at a time may be."""

    def __init__(self) -> None:
        self._waiting: list[tuple[Pressing, int]] = []
        self._numbers = count()
        self._is_free = True
        self._changed = Condition()

    @property
    def in_line(self) -> int:
        """How many wait for their turn."""
        return len(self._waiting)

    @contextmanager
    def turn(self, pressing: Pressing) -> Iterator[None]:
        """Waits until the place is free and nobody more pressing waits; frees it in the end."""
        mine = (pressing, next(self._numbers))
        with self._changed:
            heappush(self._waiting, mine)
            self._changed.wait_for(lambda: self._is_free and self._waiting[0] == mine)
            heappop(self._waiting)
            self._is_free = False
        try:
            yield
        finally:
            with self._changed:
                self._is_free = True
                self._changed.notify_all()
