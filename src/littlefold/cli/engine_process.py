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
from dataclasses import asdict, dataclass
from typing import IO, TYPE_CHECKING, Any

from littlefold.lay.engine import Answer, Placed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.lay.engine import Task

# How often the child looks for better answers [s].
LISTEN = 0.05


@dataclass(frozen=True, slots=True)
class ProcessEngine:
    """Answers tasks by a child process; `workers` threads, or None for all cores."""

    workers: int | None = None

    def answers(self, task: Task, keep_going: Callable[[], bool]) -> Iterator[Answer | None]:
        """Answers as they come, None while there is none; the child ends when the caller stops listening."""
        command = [sys.executable, "-m", __name__]
        child = subprocess.Popen(  # noqa: S603 - our own module
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        )
        try:
            yield from self._conversation(child, task, keep_going)
        finally:
            child.kill()
            child.communicate()

    def _conversation(
        self, child: subprocess.Popen[str], task: Task, keep_going: Callable[[], bool]
    ) -> Iterator[Answer | None]:
        assert child.stdin is not None  # noqa: S101 - a pipe was asked for
        assert child.stdout is not None  # noqa: S101 - a pipe was asked for
        json.dump({"task": asdict(task), "workers": self.workers or os.cpu_count()}, child.stdin)
        child.stdin.close()
        child.stdin = None
        lines: queue.SimpleQueue[str | None] = queue.SimpleQueue()
        threading.Thread(target=_listen, args=(child.stdout, lines), daemon=True).start()
        while keep_going():
            try:
                line = lines.get_nowait()
            except queue.Empty:
                yield None
                continue
            if line is None:
                return
            yield _read(line)


def _listen(stream: IO[str], lines: queue.SimpleQueue[str | None]) -> None:
    try:
        for line in stream:
            lines.put(line)
    except ValueError:
        pass  # the stream was closed under us: the caller has stopped listening
    lines.put(None)


def _read(line: str) -> Answer:
    found = json.loads(line)
    return Answer(found["length"], tuple(Placed(*placed) for placed in found["placed"]))


def _speak(solution: Any) -> None:
    placed = [(p.id, p.rotation, p.translation[0], p.translation[1]) for p in solution.placed_items]
    sys.stdout.write(json.dumps({"length": solution.width, "placed": placed}) + "\n")
    sys.stdout.flush()


def _solve(asked: dict[str, Any]) -> None:
    """Solve one task, and speak every improvement."""
    import spyrrow

    task = asked["task"]
    items = [
        spyrrow.Item(
            item["name"], [tuple(corner) for corner in item["ring"]], item["demand"], item["degrees"]
        )
        for item in task["items"]
    ]
    strip = spyrrow.StripPackingInstance("lay", task["height"], items)
    config = spyrrow.StripPackingConfig(
        early_termination=False,
        total_computation_time=max(2, task["seconds"]),
        num_workers=asked["workers"],
        seed=task["seed"],
    )
    progress = spyrrow.ProgressQueue()
    last: list[Any] = []
    worker = threading.Thread(target=lambda: last.append(strip.solve(config, progress=progress)))
    worker.start()
    while worker.is_alive():
        worker.join(LISTEN)
        _speak_best(progress)
    for solution in last:
        _speak(solution)


def _speak_best(progress: Any) -> None:
    feasible = [
        s for kind, s in progress.drain() if kind.phase_name() == "compressing" or "Infeas" not in str(kind)
    ]
    feasible = [s for s in feasible if s.placed_items]
    if feasible:
        _speak(feasible[-1])


if __name__ == "__main__":
    _solve(json.load(sys.stdin))
