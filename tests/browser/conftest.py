"""A real server and a real browser; without Debian's Chromium these tests are skipped, aloud.

What a click leads to comes in its own time: a test waits for what the page shall show (`expect`, `wait_for`) before
it looks at anything else or goes elsewhere.  A picture of every window at the end of its test is left in
build/screenshots.
"""

from __future__ import annotations

import re
import socket
import time
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING, Any
from urllib.parse import urlsplit

import pytest
import uvicorn
from playwright.sync_api import expect, sync_playwright

from littlefold.pipeline import Workroom
from littlefold.web import telling
from littlefold.web.app import make_app
from littlefold.web.room import Room

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from contextlib import AbstractContextManager

    from playwright.sync_api import Browser, Page, Request
    from starlette.types import ASGIApp

    from littlefold.pipeline import Glimpse, Outcome, Wish

CHROMIUM = Path("/usr/bin/chromium")
HERE = Path(__file__).parent
DAY = date(2026, 3, 2)
"""On which every test takes place: the children in them are as old as their readings say."""
SCREENSHOTS = Path(__file__).parents[2] / "build" / "screenshots"
PATIENCE = 60.0
"""How long a page may take for one thing, on a machine that has much else to do [s]."""
CALM = 0.4
"""A page that has asked for nothing so long asks for nothing more by itself; the longest of its own rests is 0.25 [s]."""
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
LOST = ["TimeoutError", "Locator expected"]
"""What Playwright says when the browser did not do a thing within `PATIENCE`."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Has a test run once more if it failed by waiting alone, and only then; the end of the run says which did.

    Once in some thousand tests Chromium loses a key or a frame on a busy machine, which no page can help.  A page that is
    at fault fails both times.
    """
    for item in items:
        if item.path.parent == HERE:
            item.add_marker(pytest.mark.flaky(reruns=1, only_rerun=LOST))


@pytest.fixture(autouse=True)
def _unhurried(monkeypatch: pytest.MonkeyPatch) -> None:
    """Cures are sought to the end, however busy the machine."""
    monkeypatch.setattr(telling, "WAIT", PATIENCE)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    if not CHROMIUM.exists():
        pytest.skip("Debian's Chromium is not here: no page is tested in a browser")
    expect.set_options(timeout=PATIENCE * 1000)
    with sync_playwright() as play:
        chromium = play.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        yield chromium
        chromium.close()


class Slow(Workroom):
    """A pipeline that is as slow as a test needs it."""

    seconds = 0.0

    def fulfil(self, wish: Wish) -> Outcome:
        time.sleep(self.seconds)
        return super().fulfil(wish)

    def glimpse(self, wish: Wish, sheet: str | None) -> Glimpse:
        time.sleep(self.seconds)
        return super().glimpse(wish, sheet)


@dataclass
class Served:
    """A workroom that is open: where, and how slow its drafts are."""

    address: str
    room: Room
    slow: Slow

    def drafts_take(self, seconds: float) -> None:
        self.slow.seconds = seconds


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
        assert thread.is_alive(), "the server did not start"
        time.sleep(0.02)
    try:
        yield f"http://127.0.0.1:{door.getsockname()[1]}"
    finally:
        server.should_exit = True
        thread.join(PATIENCE)
        door.close()


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    slow = Slow()
    room = Room(tmp_path / "own", slow, today=lambda: DAY)
    with opened(room) as address:
        yield Served(address, room, slow)


@pytest.fixture
def window(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Callable[..., Page]]:
    """Opens a window that shares nothing with another; at the end a picture of it is left, and it is closed."""
    with ExitStack() as to_close:
        contexts = []

        def open_one(**ways: Any) -> Page:
            context = browser.new_context(**ways)
            to_close.callback(context.close)
            context.set_default_timeout(PATIENCE * 1000)
            contexts.append(context)
            return context.new_page()

        yield open_one
        called = re.sub(r"[^\w.-]+", "-", f"{request.node.path.stem}.{request.node.name}")
        for number, page in enumerate(page for context in contexts for page in context.pages):
            page.screenshot(path=SCREENSHOTS / f"{called}-{number}.png")


@dataclass
class Visit:
    """A page in the browser, with all that it asked for and all that went wrong on it."""

    page: Page
    asked: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)
    unanswered: set[Request] = field(default_factory=set)

    def only_here(self) -> bool:
        return all(urlsplit(one).hostname in {"127.0.0.1", None} for one in self.asked)

    def watch(self) -> None:
        """Begins to note what the page asks for and what goes wrong."""
        self.page.on("request", self._ask)
        for end in ("requestfinished", "requestfailed"):
            self.page.on(end, self._hear)
        self.page.on("pageerror", lambda fault: self.complaints.append(str(fault)))
        self.page.on("console", lambda said: said.type == "error" and self.complaints.append(said.text))

    def _ask(self, asked: Request) -> None:
        self.asked.append(asked.url)
        if asked.is_navigation_request():
            self.unanswered.clear()  # the page that waited for them goes
        self.unanswered.add(asked)

    def _hear(self, asked: Request) -> None:
        self.unanswered.discard(asked)

    def come_to_rest(self) -> None:
        """Waits until every question of the page is answered and it asks no more: until it has told all it knows."""
        began = last = time.monotonic()
        while last - began < PATIENCE and time.monotonic() - last < CALM:
            self.page.wait_for_timeout(50)
            if self.unanswered:
                last = time.monotonic()
        assert not self.unanswered


@pytest.fixture
def visit(window: Callable[..., Page]) -> Callable[..., Visit]:
    """Opens a page in a window of its own."""

    def go(address: str, width: int = 1280, height: int = 800, **ways: Any) -> Visit:
        made = Visit(window(viewport={"width": width, "height": height}, **ways))
        made.watch()
        made.page.goto(address)
        return made

    return go


def wait_told(page: Page, words: str = "") -> None:
    """Waits until the drafting table has been told of the draft that is on it, and that draft has `words` in its link."""
    page.wait_for_function(
        "words => document.getElementById('wish').dataset.told?.includes(words)", arg=words
    )
