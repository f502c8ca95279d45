"""Work that may take only so long: recipes are anybody's text, and one may be slow on purpose.

The work runs in a thread of its own.  When its time is over the thread is told to end at its next instruction
(CPython's way to raise in another thread), and whoever waits is told that it took too long.
"""

from __future__ import annotations

import ctypes
from threading import BoundedSemaphore, Thread
from typing import TYPE_CHECKING, Final, Generic, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")

PATIENCE: Final = 8.0
"""How long a draft may take [s]; the slowest shipped one takes a hundredth of it."""
AT_ONCE: Final = 32
"""So many drafts may be worked on at once; who comes then waits, and no longer than for the draft itself."""

_PLACES = BoundedSemaphore(AT_ONCE)


class TooLongError(Exception):
    """The work was cut off."""


class _Cut(BaseException):
    """Raised inside the work; not an Exception, so that nothing on the way catches it."""


class _Work(Generic[T]):
    """A piece of work and what came of it."""

    def __init__(self, work: Callable[[], T]) -> None:
        self.work = work
        self.outcome: T | None = None
        self.fault: BaseException | None = None

    def run(self) -> None:
        """Works, and keeps the outcome or what went wrong."""
        try:
            self.outcome = self.work()
        except BaseException as fault:  # noqa: BLE001 - raised again where it is waited for
            self.fault = fault
        finally:
            _PLACES.release()


def within(seconds: float, work: Callable[[], T]) -> T:
    """The outcome of the work.

    Raises:
        TooLongError: It was not done in time.
    """
    if not _PLACES.acquire(timeout=seconds):
        raise TooLongError
    doing = _Work(work)
    thread = Thread(target=doing.run, daemon=True)
    thread.start()
    thread.join(seconds)
    if thread.is_alive():
        _cut(thread)
        raise TooLongError
    if doing.fault is not None:
        raise doing.fault
    return doing.outcome  # type: ignore[return-value]  # the work is done, and what it gives is a T


def _cut(thread: Thread) -> None:
    if thread.ident is not None:
        ctypes.pythonapi.PyThreadState_SetAsyncExc(ctypes.c_ulong(thread.ident), ctypes.py_object(_Cut))
