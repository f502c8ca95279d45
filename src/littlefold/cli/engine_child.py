"""The child process in which the outside packing engine runs: a task comes in as JSON, answers go out one a line.

Nothing of ours is imported here, so that the child is at work a tenth of a second after it was asked.
"""

from __future__ import annotations

import json
import sys
import threading
import time
from datetime import timedelta
from typing import Any

# The engine's names for reports of layouts without overlap.
WITHOUT_OVERLAP = ("ExplFeas", "CmprFeas", "Final")

# How often the child looks for better answers [s].
LISTEN = 0.05

# Of the time, this share goes into finding ever shorter layouts, the rest into pushing the best of them together;
# these are the engine's own shares.
TO_EXPLORE = 0.8

# With less time than this [s] the engine finds nothing.
LEAST = 0.5


def solve(asked: dict[str, Any]) -> None:
    """Solve one task until a moment of the clock, and speak every improvement."""
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
        early_termination=False, num_workers=asked["workers"], seed=task["seed"]
    )
    left = max(LEAST, asked["until"] - time.time())
    config.exploration_time = timedelta(seconds=left * TO_EXPLORE)
    config.compression_time = timedelta(seconds=left * (1 - TO_EXPLORE))
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
    """Speak the newest layout without overlap; the engine also reports ones that still have some."""
    feasible = [
        solution for kind, solution in progress.drain() if str(kind).split(".")[-1] in WITHOUT_OVERLAP
    ]
    if feasible:
        _speak(feasible[-1])


def _speak(solution: Any) -> None:
    placed = [(p.id, p.rotation, p.translation[0], p.translation[1]) for p in solution.placed_items]
    sys.stdout.write(json.dumps({"length": solution.width, "placed": placed}) + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    solve(json.load(sys.stdin))
