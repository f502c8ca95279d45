from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

import pytest
from fastapi.testclient import TestClient

from littlefold.web.app import make_app
from littlefold.web.room import Room

if TYPE_CHECKING:
    from pathlib import Path

HOME = "http://127.0.0.1:8765"


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
