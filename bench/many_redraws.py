"""(m) Memory of the workroom after many redraws, all different: it stays what it was."""

from __future__ import annotations

import os
from concurrent.futures import ThreadPoolExecutor
from http.client import HTTPConnection
from pathlib import Path
from typing import TYPE_CHECKING

from bench.served import Served, asked, served
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from collections.abc import Iterator

REDRAWS, WARM = 10_000, 2_000
LINES = 3
RESTS = 10
"""After so many redraws a slider rests, and what was found is asked for."""
GROWTH = 1.05
"""More than this from the warm workroom to the last redraw is growth."""
PAGE = os.sysconf("SC_PAGE_SIZE")


def resident(process: int) -> int:
    """Memory of a process and all it began [bytes]."""
    return sum(int(Path(f"/proc/{one}/statm").read_text().split()[1]) * PAGE for one in _family(process))


def _family(process: int) -> Iterator[int]:
    yield process
    for task in Path(f"/proc/{process}/task").iterdir():
        for child in (task / "children").read_text().split():
            yield from _family(int(child))


def redraw(room: Served, begin: int, count: int) -> None:
    """So many redraws, over several lines, through all garments."""
    with ThreadPoolExecutor(LINES) as lines:
        list(lines.map(lambda first: _some(room, begin + first, count), range(LINES)))


def _some(room: Served, first: int, count: int) -> None:
    line = HTTPConnection("127.0.0.1", room.port, timeout=60)
    names = shipped_names()
    for k in range(first, first + count, LINES):
        girth = 500 + (k % 1500) / 10
        name, words = names[k % len(names)], f"chest={girth:g}&hip={girth + 40:g}&for-name={k}"
        links = (f"/draw/{name}/moving.svg?{words}", f"/table/{name}/told.json?{words}")
        for link in links if k % RESTS == 0 else links[:1]:
            status, _ = asked(line, link)
            if status != 200:
                raise AssertionError(f"{link}: {status}")
    line.close()


def report(redraws: int = REDRAWS) -> None:
    """Prints the memory when warm, and after each fifth of the redraws."""
    warm = min(WARM, redraws // 5)
    print(
        f"\n(m) memory of the server and its hands in {redraws} redraws; goal no growth after the first {warm}"
    )
    with served() as room:
        redraw(room, 0, warm)
        begin = resident(room.process)
        print(f"after {warm:6d}: {begin / 1e6:.0f} MB")
        done = warm
        while done < redraws:
            count = min(warm, redraws - done)
            redraw(room, done, count)
            done += count
            now = resident(room.process)
            print(f"after {done:6d}: {now / 1e6:.0f} MB")
        print(f"{now / begin:.3f} times{'' if now <= GROWTH * begin else '  missed'}")


if __name__ == "__main__":
    report()
