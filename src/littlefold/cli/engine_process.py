"""The outside packing engine in a process of its own.

The engine can only be stopped by a signal, and on input that it does not like it panics past every `except`.  So it
runs in a child: tasks go in as JSON, answers come out one a line, and stopping is ending the child.
"""

from __future__ import annotations

import json
import os
import queue
import subprocess
import sys
import threading
import time
from dataclasses import asdict, dataclass
from typing import IO, TYPE_CHECKING

from littlefold.lay.engine import Answer, Placed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.lay.engine import Task

Lines = queue.SimpleQueue[str]

# Stands behind the last line of the child.
END = ""

CHILD = "littlefold.cli.engine_child"


@dataclass(frozen=True, slots=True)
class ProcessEngine:
    """Answers tasks by a child process; `workers` threads, or None for the cores that are free."""

    workers: int | None = None

    def answers(self, task: Task, wait: float, keep_going: Callable[[], bool]) -> Iterator[Answer | None]:
        """The newest answer, or None while there is none; the child ends when the caller stops listening."""
        command = [sys.executable, "-m", CHILD]
        child = subprocess.Popen(  # noqa: S603 - our own module
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        )
        try:
            lines = self._ask(child, task, self.workers or _free_cores(busy=wait == 0))
            while keep_going():
                line = _newest(lines, wait)
                if line == END:
                    return
                yield None if line is None else _read(line)
        finally:
            child.kill()
            child.communicate()

    def _ask(self, child: subprocess.Popen[str], task: Task, workers: int) -> Lines:
        assert child.stdin is not None  # noqa: S101 - a pipe was asked for
        assert child.stdout is not None  # noqa: S101 - a pipe was asked for
        until = time.time() + task.seconds
        json.dump({"task": asdict(task), "workers": workers, "until": until}, child.stdin)
        child.stdin.close()
        child.stdin = None
        lines: Lines = queue.SimpleQueue()
        threading.Thread(target=_listen, args=(child.stdout, lines), daemon=True).start()
        return lines


def _free_cores(*, busy: bool) -> int:
    """The cores for the engine: all of them, or all but the one on which the caller is busy."""
    return max(1, (os.cpu_count() or 1) - busy)


def _newest(lines: Lines, wait: float) -> str | None:
    """The last line that has come in; None where there is none, END after the last one of all."""
    newest: str | None = None
    try:
        newest = lines.get(timeout=wait) if wait > 0 else lines.get_nowait()
        while newest != END:
            line = lines.get_nowait()
            if line == END:
                lines.put(END)
                return newest
            newest = line
    except queue.Empty:
        pass
    return newest


def _listen(stream: IO[str], lines: Lines) -> None:
    try:
        for line in stream:
            lines.put(line)
    except ValueError:
        pass  # the stream was closed under us: the caller has stopped listening
    lines.put(END)


def _read(line: str) -> Answer:
    found = json.loads(line)
    return Answer(found["length"], tuple(Placed(*placed) for placed in found["placed"]))
