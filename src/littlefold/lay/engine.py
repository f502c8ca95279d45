"""The outside engine: what is asked of it, and what it answers.

The engine packs closed shapes into a strip of given height.  It runs in a process of its own that can be stopped;
whoever stands at the edge (command line, web) gives an object that starts it.  Here is only the conversation, and
the fences round it: exact fits are given a hair of room, shapes are checked before they are sent, and
whatever comes back is settled and verified like any other layout.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator


@dataclass(frozen=True, slots=True)
class Item:
    """A shape that is wanted `demand` times, in any of some turns [degrees, counter-clockwise about (0, 0)]."""

    name: str
    ring: tuple[tuple[float, float], ...]
    demand: int
    degrees: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Task:
    """What the engine is asked: a strip of a height [mm], for so many seconds, with a seed.

    The seconds count from the asking, the start of the engine with them.
    """

    height: float
    items: tuple[Item, ...]
    seconds: float
    seed: int


@dataclass(frozen=True, slots=True)
class Placed:
    """Where one copy of an item lies: turned, then moved."""

    name: str
    degrees: float
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Answer:
    """A layout of the engine and the length of strip that it takes [mm]."""

    length: float
    placed: tuple[Placed, ...]


class Engine(Protocol):
    """Something that answers tasks, better and better, and can be stopped."""

    def answers(self, task: Task, wait: float, keep_going: Callable[[], bool]) -> Iterator[Answer | None]:
        """The newest answer whenever it is asked for; None while there is none.

        `wait` [s] is how long it may wait for an answer before it says None: nothing for a caller with other work.
        """
