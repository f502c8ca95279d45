from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, NoReturn

import pytest
from fastapi.testclient import TestClient

from littlefold.web.app import make_app
from littlefold.web.room import Room

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from littlefold.pipeline import Wish

HOME = "http://127.0.0.1:8765"


class Pipeline:
    """A pipeline that does one thing instead of drafting, whatever is wished for."""

    def __init__(self, instead: Callable[[], NoReturn]) -> None:
        self._instead = instead

    def fulfil(self, _: Wish) -> NoReturn:
        self._instead()

    def glimpse(self, _: Wish, __: str | None) -> NoReturn:
        self._instead()


@pytest.fixture(autouse=True)
def _own_box(monkeypatch: pytest.MonkeyPatch) -> None:
    """The cards lie in the folder of the room, whatever database this machine has."""
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)


@pytest.fixture
def room(tmp_path: Path) -> Room:
    return Room(tmp_path / "own", today=lambda: date(2026, 3, 2))


@pytest.fixture
def client(room: Room) -> TestClient:
    return TestClient(make_app(room), base_url=HOME, follow_redirects=False)
