"""Work that may take only so long: recipes are anybody's text, and one may be slow on purpose.

The work runs in a thread of its own.  When its time is over the thread is told to end at its next instruction
(CPython's way to raise in another thread), and whoever waits is told that it took too long.

What counts is the time the work itself has computed, where the system counts it for a thread: a machine that is busy
with other things makes no recipe endless.  The cut falls where our own code stands; within an import or the clean-up
of an object (a callback of a weak reference) Python would swallow it, and the work would go on.
"""

from __future__ import annotations

import ctypes
import sys
import time
from threading import BoundedSemaphore, Thread, get_ident
from typing import TYPE_CHECKING, Final, Generic, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable
    from types import FrameType

T = TypeVar("T")

PATIENCE: Final = 8.0
"""How long a draft may take [s]; the slowest shipped one takes a hundredth of it."""
LONGEST: Final = 4
"""So many times as long may it take on a machine that is busy with other things, or when it computes nothing."""
OURS: Final = "littlefold"
GRACE: Final = 2.0
"""So long the cut waits for the work to be in our own code [s]; then it falls anywhere."""
AGAIN: Final = 1.0
"""So long a cut has for the work to be given up in good order, before another is made [s]."""
APART: Final = 0.005
"""Between two looks at where the work is [s]."""
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
        self.clock: int | None = None

    def run(self) -> None:
        """Works, and keeps the outcome or what went wrong."""
        try:
            if hasattr(time, "pthread_getcpuclockid"):
                self.clock = time.pthread_getcpuclockid(get_ident())
            self.outcome = self.work()
        except BaseException as fault:  # noqa: BLE001 - raised again where it is waited for
            self.fault = fault
        finally:
            _PLACES.release()

    def left_of(self, seconds: float) -> float:
        """How much of its time it has not computed yet [s]; nothing where that is not counted, or it has ended."""
        if self.clock is None:
            return 0.0
        try:
            return seconds - time.clock_gettime(self.clock)
        except OSError:  # the thread is gone, and its clock with it
            return 0.0


def within(seconds: float, work: Callable[[], T]) -> T:
    """The outcome of the work.

    Args:
        seconds: How long the work may compute; what waits or is kept waiting has `LONGEST` times as long.
        work: The work.

    Raises:
        TooLongError: It was not done in time.
    """
    if not _PLACES.acquire(timeout=seconds):
        raise TooLongError
    doing = _Work(work)
    thread = Thread(target=doing.run, daemon=True)
    thread.start()
    _wait(thread, doing, seconds)
    if thread.is_alive():
        Thread(target=_cut, args=(thread,), daemon=True).start()
        raise TooLongError
    if doing.fault is not None:
        raise doing.fault
    return doing.outcome  # type: ignore[return-value]  # the work is done, and what it gives is a T


def _wait(thread: Thread, doing: _Work[T], seconds: float) -> None:
    """Waits for the end of the work, or of its time."""
    last = time.monotonic() + LONGEST * seconds
    left = seconds
    while left > 0 and thread.is_alive():
        thread.join(max(left, APART))
        left = min(doing.left_of(seconds), last - time.monotonic())


def _cut(thread: Thread) -> None:
    """Cuts until the work has ended: where a cut was swallowed, another follows."""
    began, next_cut = time.monotonic(), 0.0
    while thread.is_alive() and thread.ident is not None:
        now = time.monotonic()
        where = sys._current_frames().get(thread.ident)  # noqa: SLF001 - the documented way to look at another thread
        if now >= next_cut and (now - began > GRACE or _is_ours(where)):
            ctypes.pythonapi.PyThreadState_SetAsyncExc(ctypes.c_ulong(thread.ident), ctypes.py_object(_Cut))
            next_cut = now + AGAIN
        thread.join(APART)


def _is_ours(frame: FrameType | None) -> bool:
    """Whether a thread that stands there executes our own code: that of the work, not this around it."""
    module = "" if frame is None else str(frame.f_globals.get("__name__", ""))
    return module.partition(".")[0] == OURS and module != __name__
