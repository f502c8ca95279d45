"""The workroom as it is opened by `littlefold serve`, for benches that ask it over the network of this machine."""

from __future__ import annotations

import socket
import subprocess
import sys
import tempfile
import time
from contextlib import contextmanager
from dataclasses import dataclass
from http.client import HTTPConnection
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

LITTLEFOLD = Path(sys.executable).with_name("littlefold")
OPENS_WITHIN = 60.0
HANDS_COME_IN = 6.0
"""After the page answers, the processes that draft are still being called in [s]."""


@dataclass(frozen=True, slots=True)
class Served:
    """An open workroom: its port and its process."""

    port: int
    process: int

    @property
    def address(self) -> str:
        """Where a browser finds it."""
        return f"http://127.0.0.1:{self.port}"


@contextmanager
def served() -> Iterator[Served]:
    """Opens a workroom in an empty folder and closes it after the block."""
    with tempfile.TemporaryDirectory() as folder:
        port = _free_port()
        command = [str(LITTLEFOLD), "serve", "--port", str(port), "--folder", folder]
        with subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as running:
            try:
                _wait_for(port)
                time.sleep(HANDS_COME_IN)
                yield Served(port, running.pid)
            finally:
                running.terminate()


def _free_port() -> int:
    with socket.socket() as door:
        door.bind(("127.0.0.1", 0))
        return int(door.getsockname()[1])


def _wait_for(port: int) -> None:
    until = time.monotonic() + OPENS_WITHIN
    while time.monotonic() < until:
        try:
            asked(HTTPConnection("127.0.0.1", port, timeout=OPENS_WITHIN), "/draw/bib.svg")
        except OSError:
            time.sleep(0.2)
        else:
            return
    raise TimeoutError("the workroom did not open")


def asked(line: HTTPConnection, path: str) -> tuple[int, bytes]:
    """Status and content of a page."""
    line.request("GET", path)
    answer = line.getresponse()
    return answer.status, answer.read()


def part(times: list[float], share: float) -> float:
    """The value below which such a share of the times lies."""
    ordered = sorted(times)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))]
