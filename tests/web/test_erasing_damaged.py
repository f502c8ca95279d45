"""Damaged boxes and copies, which no search for a child can read, when she is erased."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

ERASING = {"name": "Mina", "written": "Mina"}


def with_two(client: TestClient) -> None:
    for name in ("Mina", "Jo"):
        assert client.post("/children", data={"name": name, "born": "2022-04-01"}).status_code == 303


def names(client: TestClient) -> set[str]:
    return {one["name"] for one in client.get("/children/cards.json").json()["cards"]}


def damaged(room: Room) -> tuple[Path, Path]:
    """A box put aside and a copy that is damaged: what no search of a database reads."""
    folder = room.folder / "backups"
    folder.mkdir(exist_ok=True)
    aside, copy = folder / "damaged-20260101-000000.sqlite", folder / "cards-20260101-000000.sqlite"
    for file in (aside, copy):
        file.write_bytes(b"SQLite format 3\0" + b"Mina" * 2000)
    return aside, copy


def test_erasing_names_damaged_files_and_deletes_them_if_wanted(client: TestClient, room: Room) -> None:
    with_two(client)
    files = damaged(room)
    page = client.get("/child/erase", params={"name": "Mina", "again": "yes"}).text
    assert all(str(file) in page for file in files)
    assert 'name="damaged"' in page
    gone = client.post("/child/erase", data=ERASING | {"damaged": "yes"})
    assert gone.headers["location"] == "/children?done=erased"
    assert not any(file.exists() for file in files)
    assert names(client) == {"Jo"}
    assert not [one for one in room.folder.rglob("*") if one.is_file() and b"Mina" in one.read_bytes()]


def test_damaged_files_that_are_kept_are_told_after_erasing(client: TestClient, room: Room) -> None:
    with_two(client)
    files = damaged(room)
    gone = client.post("/child/erase", data=ERASING)
    assert gone.headers["location"] == "/children?done=erased-not-from-damaged"
    assert "may still hold it" in client.get(gone.headers["location"]).text
    assert all(file.exists() for file in files)
    assert names(client) == {"Jo"}
    page = client.get("/child/erase", params={"name": "Jo", "again": "yes"}).text
    assert 'name="damaged"' in page


def test_without_damaged_files_nothing_is_asked_of_them(client: TestClient) -> None:
    with_two(client)
    assert client.post("/settings/backup").status_code == 303
    page = client.get("/child/erase", params={"name": "Mina", "again": "yes"}).text
    assert 'name="damaged"' not in page
