"""LongWorks that go on beside the pages: what each has found so far, how long it may go on, and the end of it."""

from __future__ import annotations

import secrets
import time
from collections import OrderedDict
from dataclasses import dataclass, field
from threading import Event, Lock, Thread
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

AT_ONCE: Final = 2
"""LongWorks that may go on beside each other; more would make every page slow."""
REMEMBERED: Final = 24
"""LongWorks whose findings are kept until the workroom closes."""


@dataclass(eq=False)
class LongWork:
    """One piece of work.

    Attributes:
        name: What a link calls it.
        seconds: How long it may go on.
        parts: How many findings it ends with; 0 where only its time ends it.
        label: What it is about, by which a page finds it.
        found: What it has found, the newest last; it only grows.
        fault: What broke it off.
        is_spent: Whether it ended by itself, with nothing left to try.
    """

    name: str
    seconds: float
    began: float
    parts: int = 0
    label: str = ""
    found: list[Any] = field(default_factory=list)
    fault: Exception | None = None
    is_spent: bool = False
    _stop: Event = field(default_factory=Event)
    _over: Event = field(default_factory=Event)

    def keep_going(self) -> bool:
        """Whether it may go on."""
        return not self._stop.is_set() and time.monotonic() - self.began < self.seconds

    def stop(self) -> None:
        """Asks it to stop; what was found stays."""
        self._stop.set()

    @property
    def is_over(self) -> bool:
        """Whether it has ended."""
        return self._over.is_set()

    @property
    def share(self) -> float:
        """How much of it is done, or of its time has passed, from 0 to 1."""
        if self.is_over:
            return 1.0
        done = len(self.found) / self.parts if self.parts else (time.monotonic() - self.began) / self.seconds
        return min(done, 1.0)

    def wait(self, seconds: float) -> bool:
        """Waits for its end; whether it has come."""
        return self._over.wait(seconds)

    def run(self, work: Callable[[Callable[[], bool]], Iterator[Any]]) -> None:
        """Does the work in this thread; between two findings it looks whether it shall stop."""
        try:
            for one in work(self.keep_going):
                self.found.append(one)
                if not self.keep_going():
                    break
            self.is_spent = self.keep_going()
        except Exception as fault:  # noqa: BLE001 - told on its page, which else would wait for ever
            self.fault = fault
        finally:
            self._over.set()


class LongWorks:
    """All work of one kind in a workroom.

    Args:
        remembered: So many of them are kept with what came of them.
    """

    def __init__(self, remembered: int = REMEMBERED) -> None:
        self._known: OrderedDict[str, LongWork] = OrderedDict()
        self._turn = Lock()
        self._remembered = remembered

    def start(
        self,
        work: Callable[[Callable[[], bool]], Iterator[Any]],
        seconds: float,
        parts: int = 0,
        label: str = "",
    ) -> LongWork | None:
        """Starts a piece of work; None where too many are going on."""
        with self._turn:
            if sum(not one.is_over for one in self._known.values()) >= AT_ONCE:
                return None
            started = LongWork(secrets.token_urlsafe(9), seconds, time.monotonic(), parts, label)
            self._known[started.name] = started
            while len(self._known) > self._remembered:
                self._known.popitem(last=False)[1].stop()
        Thread(target=started.run, args=(work,), daemon=True).start()
        return started

    def find(self, name: str) -> LongWork | None:
        """The work of that name."""
        with self._turn:
            return self._known.get(name)

    def about(self, label: str) -> LongWork | None:
        """The newest work with that label."""
        with self._turn:
            return next((one for one in reversed(self._known.values()) if one.label == label), None)

    def end_all(self, seconds: float) -> None:
        """Asks all to stop, waits so long for the end of each, and lets go of what came of them."""
        with self._turn:
            known = tuple(self._known.values())
        self.forget()
        for one in known:
            one.wait(seconds)

    def stop_all(self) -> None:
        """Asks all to stop."""
        with self._turn:
            for one in self._known.values():
                one.stop()

    def forget(self) -> None:
        """Asks all to stop, and lets go of what came of them."""
        with self._turn:
            for one in self._known.values():
                one.stop()
            self._known.clear()
