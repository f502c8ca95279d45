"""A real server and a real browser; without Debian's Chromium these tests are skipped, aloud."""

from __future__ import annotations

import socket
import time
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import pytest
import uvicorn

from littlefold.pipeline import Workroom
from littlefold.web.app import make_app
from littlefold.web.room import Room

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from contextlib import AbstractContextManager

    from playwright.sync_api import Browser, Page
    from starlette.types import ASGIApp

    from littlefold.pipeline import Outcome, Wish

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    if not CHROMIUM.exists():
        pytest.skip("Debian's Chromium is not here: no page is tested in a browser")
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where there is a browser

    with sync_playwright() as play:
        chromium = play.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        yield chromium
        chromium.close()


@dataclass
class Served:
    """A workroom that is open: where, and how slow its drafts are."""

    address: str
    room: Room
    slowness: list[float] = field(default_factory=lambda: [0.0])

    def drafts_take(self, seconds: float) -> None:
        self.slowness[0] = seconds


def opened(room: Room, port: int = 0) -> AbstractContextManager[str]:
    """Serves a workroom while the block runs; its address."""
    return open_door(make_app(room), port)


@contextmanager
def open_door(app: ASGIApp, port: int = 0) -> Iterator[str]:
    """Serves an application while the block runs; its address."""
    door = socket.socket(proto=socket.IPPROTO_TCP)  # said, so that asyncio sends answers without waiting
    door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    door.bind(("127.0.0.1", port))
    server = uvicorn.Server(uvicorn.Config(app, log_level="error"))
    thread = Thread(target=server.run, kwargs={"sockets": [door]}, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.02)
    try:
        yield f"http://127.0.0.1:{door.getsockname()[1]}"
    finally:
        server.should_exit = True
        thread.join(10)
        door.close()


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    slowness = [0.0]
    work = Workroom()

    def fulfil(wish: Wish) -> Outcome:
        time.sleep(slowness[0])
        return work.fulfil(wish)

    room = Room(tmp_path / "own", fulfil=fulfil)
    with opened(room) as address:
        yield Served(address, room, slowness)


@dataclass
class Visit:
    """A page in the browser, with all that it asked for and all that went wrong on it."""

    page: Page
    asked: list[str]
    complaints: list[str]

    def only_here(self) -> bool:
        return all(urlsplit(one).hostname in {"127.0.0.1", None} for one in self.asked)


@pytest.fixture
def visit(browser: Browser, tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[Callable[..., Visit]]:
    pages: list[Visit] = []

    def go(address: str, width: int = 1280, height: int = 800) -> Visit:
        page = browser.new_page(viewport={"width": width, "height": height})
        made = Visit(page, [], [])
        page.on("request", lambda asked: made.asked.append(asked.url))
        page.on("pageerror", lambda fault: made.complaints.append(str(fault)))
        page.on("console", lambda said: said.type == "error" and made.complaints.append(said.text))
        page.goto(address)
        pages.append(made)
        return made

    yield go
    for number, made in enumerate(pages):
        made.page.screenshot(path=str(tmp_path / f"{request.node.name}-{number}.png".replace("/", "-")))
        made.page.close()
