"""(d) From the start of `littlefold recipes` to its first line, as a person waits for it."""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

GOAL, ROUNDS = 0.6, 7
LITTLEFOLD = Path(sys.executable).with_name("littlefold")


def first_line() -> float:
    """Seconds until the first line stands on standard output."""
    started = time.perf_counter()
    with subprocess.Popen([LITTLEFOLD, "recipes"], stdout=subprocess.PIPE) as running:
        assert running.stdout is not None  # noqa: S101 - a pipe was asked for
        line = running.stdout.readline()
        waited = time.perf_counter() - started
        running.stdout.read()
    assert line.strip()  # noqa: S101 - a list without a first line is no list
    return waited


def report() -> None:
    """Prints the median of several starts, the first of which warms the disk."""
    first_line()
    middle = statistics.median(first_line() for _ in range(ROUNDS))
    print(f"\n(d) `littlefold recipes` to its first line; goal {GOAL:g} s")
    print(f"median {middle:.2f} s: {middle / GOAL:.2f} times the goal")


if __name__ == "__main__":
    report()
