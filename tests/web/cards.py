"""An invented child's card, for tests of the pages about children."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

MINA = {"name": "Mina", "born": "2022-08-14", "sex": "girl"}
SET = {
    "name": "Mina",
    "day": "2026-02-20",
    "stature": "100",
    "chest": "54 cm",
    "waist": "52",
    "head": "19 7/8 in",
}


def with_mina(client: TestClient, *sets: dict[str, str]) -> None:
    assert client.post("/children", data=MINA).status_code == 303
    for one in sets:
        assert client.post("/child/measure", data=one).status_code == 303


def record(client: TestClient, name: str = "Mina") -> dict[str, object]:
    return json.loads(client.get("/children/cards.json", params={"name": name}).text)["cards"][0]
