"""Backed up, taken along, put back: all of it, after all was checked; hostile files change nothing."""

from __future__ import annotations

import io
import os
import re
import sqlite3
import zipfile
import zlib
from contextlib import closing
from typing import TYPE_CHECKING

import pytest

from littlefold.web import belongings
from littlefold.web.belongings import LARGEST_FILE
from littlefold.web.own_recipes import NEW, fingerprint
from littlefold.web.recent import read_recent

if TYPE_CHECKING:
    from pathlib import Path

    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

RECIPE = 'recipe mine\ntitle "Mine"\ndrawing body\npoint A at the fold\n'
SETTINGS = {
    "units": "in",
    "tape": "1/8in",
    "paper": "US Letter",
    "region": "us",
    "light": "dark",
    "seam": "2 cm",
}
AGREED = {"agreed": "yes"}
ERASING = {"name": "Mina", "written": "Mina"}


def furnished(client: TestClient, room: Room) -> None:
    for name in ("Mina", "Jo"):
        assert client.post("/children", data={"name": name, "born": "2022-04-01"}).status_code == 303
    assert room.own.save("mine", RECIPE, NEW) is None
    assert client.post("/settings", data=SETTINGS).status_code == 303


def backup_of(client: TestClient) -> tuple[str, bytes]:
    made = client.post("/settings/backup")
    assert made.status_code == 303
    page = client.get(made.headers["location"].partition("#")[0]).text
    name = re.search(r'href="/settings/backups/([^"]+)" download>Take', page)[1]
    return name, client.get(f"/settings/backups/{name}").content


def put_back(client: TestClient, content: bytes, name: str = "kept.zip"):  # the client's own response
    return client.post("/settings/restore", data=AGREED, files={"file": (name, content, "application/zip")})


def changed(client: TestClient, room: Room, *, erased: bool = True) -> None:
    """What may have happened since: a child erased, another come, recipes changed and new, other settings."""
    if erased:
        assert client.post("/child/erase", data=ERASING).status_code == 303
    assert client.post("/children", data={"name": "Kim", "born": "2021-05-01"}).status_code == 303
    assert room.own.save("mine", RECIPE + "# other\n", fingerprint(RECIPE)) is None
    assert room.own.save("another", RECIPE.replace("mine", "another"), NEW) is None
    assert client.post("/settings", data=SETTINGS | {"units": "cm", "seam": ""}).status_code == 303


def children(client: TestClient) -> set[str]:
    return {one["nickname"] if "nickname" in one else one["name"] for one in _cards(client)}


def _cards(client: TestClient) -> list[dict[str, str]]:
    return client.get("/children/cards.json").json()["cards"]


def repacked(content: bytes, changes: dict[str, bytes | None]) -> bytes:
    """A packed file with some of its files changed, added, or left out."""
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as new:
        for name in dict.fromkeys((*old.namelist(), *changes)):
            text = changes[name] if name in changes else old.read(name)
            if text is not None:
                new.writestr(name, text)
    return made.getvalue()


def everything(folder: Path) -> dict[str, bytes]:
    """All of the maker's files but the journal of the box, which reading alone may change."""
    files = (one for one in folder.rglob("*") if one.is_file() and not one.name.endswith(("-wal", "-shm")))
    return {str(one.relative_to(folder)): one.read_bytes() for one in files}


def test_a_backup_holds_cards_recipes_and_settings(client: TestClient, room: Room) -> None:
    furnished(client, room)
    name, content = backup_of(client)
    assert re.fullmatch(r"cards-\d{8}-\d{6}\.sqlite", name)
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        assert set(packed.namelist()) == {
            "cards.sqlite",
            "recipes/mine.recipe",
            "settings.json",
            "recent.json",
        }
        assert packed.read("recipes/mine.recipe").decode() == RECIPE
        assert packed.read("cards.sqlite").startswith(b"SQLite format 3\0")
    beside = name.replace("cards-", "recipes-").replace(".sqlite", ".zip")
    kept = sorted((room.folder / "backups").iterdir())
    assert [one.name for one in kept] == [name, beside]  # nothing half made lies beside them
    assert os.name != "posix" or {one.stat().st_mode & 0o777 for one in kept} == {0o600}


def test_what_lay_on_the_table_and_the_classes_come_back(client: TestClient, room: Room) -> None:
    furnished(client, room)
    link = {"for-name": "Mina", "for-size": "104"}
    assert client.get("/table/bib", params=link).status_code == 200
    assert client.get("/table/bodice", params=link | {"for-name": "Jo"}).status_code == 200
    a_class = {"name": "Monday", "recipe": "bib", "pupil": ["Mina", "Jo"]}
    assert client.post("/classes", data=a_class).status_code == 303
    before, classes = read_recent(room.folder), client.get("/class", params={"name": "Monday"}).text
    assert [one.who for one in before] == ["Jo", "Mina"]
    content = backup_of(client)[1]
    for file in room.folder.rglob("*"):  # a new machine
        if file.is_file() and not file.name.startswith("cards.sqlite"):
            file.unlink()
    room.keeper.close()
    for file in room.folder.glob("cards.sqlite*"):
        file.unlink()
    assert children(client) == set()
    assert put_back(client, content).status_code == 303
    assert children(client) == {"Mina", "Jo"}
    assert read_recent(room.folder) == before
    assert client.get("/class", params={"name": "Monday"}).text == classes
    assert room.own.text("mine") == RECIPE
    assert room.preferences.units == "in"


def test_an_erased_child_is_in_no_copy_of_what_lay_on_the_table(client: TestClient, room: Room) -> None:
    furnished(client, room)
    for name in ("Mina", "Jo"):
        client.get("/table/bib", params={"for-name": name, "for-size": "104"})
    name = backup_of(client)[0]
    assert client.post("/child/erase", data=ERASING).status_code == 303
    with zipfile.ZipFile(io.BytesIO(client.get(f"/settings/backups/{name}").content)) as packed:
        assert b"Mina" not in packed.read("recent.json")
        assert b"Jo" in packed.read("recent.json")
        assert packed.read("recipes/mine.recipe").decode() == RECIPE
    assert [one.who for one in read_recent(room.folder)] == ["Jo"]


def test_what_is_no_table_in_a_packed_file_changes_nothing(client: TestClient, room: Room) -> None:
    furnished(client, room)
    content = backup_of(client)[1]
    before = everything(room.folder)
    assert put_back(client, repacked(content, {"recent.json": b'{"recipe": 1}'})).status_code == 422
    assert everything(room.folder) == before


def test_an_erased_child_is_in_no_backup_any_more(client: TestClient, room: Room) -> None:
    furnished(client, room)
    name = backup_of(client)[0]
    changed(client, room)
    assert "Mina" not in children(client)
    with zipfile.ZipFile(io.BytesIO(client.get(f"/settings/backups/{name}").content)) as packed:
        assert b"Mina" not in packed.read("cards.sqlite")
    assert not [one for one in room.folder.rglob("*") if one.is_file() and b"Mina" in one.read_bytes()]
    assert client.post("/settings/restore", data=AGREED | {"name": name}).status_code == 303
    assert children(client) == {"Jo"}


@pytest.mark.parametrize("way", ["file", "list"])
def test_what_was_backed_up_is_put_back_whole(client: TestClient, room: Room, way: str) -> None:
    furnished(client, room)
    name, content = backup_of(client)
    before = _cards(client)
    changed(client, room, erased=False)
    assert children(client) != {"Mina", "Jo"}
    done = (
        put_back(client, content)
        if way == "file"
        else client.post("/settings/restore", data=AGREED | {"name": name})
    )
    assert done.status_code == 303
    assert _cards(client) == before
    assert room.own.text("mine") == RECIPE
    assert room.own.names() == ("another", "mine")
    assert (room.preferences.units, room.preferences.seam) == ("in", 20.0)
    assert "was put back" in client.get(done.headers["location"].partition("#")[0]).text


def test_what_was_there_before_can_be_put_back_too(client: TestClient, room: Room) -> None:
    furnished(client, room)
    first = backup_of(client)[0]
    changed(client, room)
    before = _cards(client), room.own.text("mine"), room.preferences
    client.post("/settings/restore", data=AGREED | {"name": first})
    beside = {one.stem.partition("-")[2] for one in (room.folder / "backups").glob("recipes-*.zip")}
    (latest,) = beside - {first.removesuffix(".sqlite").removeprefix("cards-")}
    assert (
        client.post("/settings/restore", data=AGREED | {"name": f"cards-{latest}.sqlite"}).status_code == 303
    )
    assert (_cards(client), room.own.text("mine"), room.preferences) == before


def test_cards_alone_are_put_back_and_the_rest_stays(client: TestClient, room: Room) -> None:
    furnished(client, room)
    with zipfile.ZipFile(io.BytesIO(backup_of(client)[1])) as packed:
        cards = packed.read("cards.sqlite")
    changed(client, room)
    assert put_back(client, cards, "cards.sqlite").status_code == 303
    assert children(client) == {"Mina", "Jo"}  # from a copy that was taken along before
    assert "# other" in (room.own.text("mine") or "")
    assert room.preferences.units == "cm"


def test_a_damaged_box_is_put_aside_for_a_backup(client: TestClient, room: Room) -> None:
    furnished(client, room)
    content = backup_of(client)[1]
    room.keeper.close()
    (room.folder / "cards.sqlite").write_bytes(b"SQLite format 3\0" + b"\xff" * 8000)
    page = client.get("/settings")
    assert page.status_code == 200
    assert "cannot be opened" in page.text
    assert put_back(client, content).status_code == 303
    assert children(client) == {"Mina", "Jo"}


def bomb() -> bytes:
    """A file that says it is small and unpacks to far more than a workroom holds."""
    made = io.BytesIO()
    with (
        zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as packed,
        packed.open("cards.sqlite", "w") as inner,
    ):
        for _ in range(300):
            inner.write(b"\0" * 1_000_000)
    return made.getvalue()


def lying_bomb() -> bytes:
    """The same, with a directory that says 100 bytes."""
    return bomb().replace((300_000_000).to_bytes(4, "little"), (100).to_bytes(4, "little"))


HOSTILE = {
    "empty": lambda _: b"",
    "no zip": lambda _: b"PK\x03\x04" + b"nonsense" * 50,
    "cut off": lambda good: good[: len(good) // 2],
    "one byte wrong": lambda good: good[:300] + bytes([good[300] ^ 255]) + good[301:],
    "no cards": lambda good: repacked(good, {"cards.sqlite": None}),
    "two boxes": lambda good: repacked(good, {"cards.json": b"{}"}),
    "no box": lambda good: repacked(good, {"cards.sqlite": b"SQLite format 3\0" + b"\0" * 5000}),
    "empty box": lambda good: repacked(good, {"cards.sqlite": b""}),
    "out of the folder": lambda good: repacked(good, {"../../evil.recipe": b"recipe x"}),
    "out of the recipes": lambda good: repacked(good, {"recipes/../../evil.recipe": b"recipe x"}),
    "from the root": lambda good: repacked(good, {"/evil.recipe": b"recipe x"}),
    "backslashes": lambda good: repacked(good, {"recipes\\evil.recipe": b"recipe x"}),
    "keys": lambda good: repacked(good, {"sharing.json": b"{}"}),
    "over a shipped recipe": lambda good: repacked(good, {"recipes/bib.recipe": b"recipe bib"}),
    "letters that are none": lambda good: repacked(good, {"recipes/mine.recipe": b"\xff\xfe\x00"}),
    "a recipe without end": lambda good: repacked(good, {"recipes/mine.recipe": b"a" * 5_000_000}),
    "settings that are none": lambda good: repacked(good, {"settings.json": b'{"units": "ells"}'}),
    "settings without end": lambda good: repacked(good, {"settings.json": b" " * 1_000_000}),
    "too many": lambda good: repacked(good, {f"recipes/r{k}.recipe": b"" for k in range(2500)}),
    "a bomb": lambda _: bomb(),
    "a bomb that lies": lambda _: lying_bomb(),
    "cards in words": lambda _: b'{"format": "something else"}',
    "deep": lambda _: b"[" * 100_000,
}


def test_a_hostile_file_changes_nothing_at_all(client: TestClient, room: Room) -> None:
    furnished(client, room)
    good = backup_of(client)[1]
    before, cards = everything(room.folder), _cards(client)
    for kind, spoilt in HOSTILE.items():
        refused = put_back(client, spoilt(good))
        assert refused.status_code == 422, kind
        assert 'role="alert"' in refused.text
        assert everything(room.folder) == before, kind
    assert _cards(client) == cards
    assert put_back(client, good).status_code == 303


def test_a_bomb_is_left_where_it_is(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """What a directory says of the size is not believed: unpacking stops at the bound."""
    monkeypatch.setattr(belongings, "LARGEST_CARDS", 1_000_000)
    packed = tmp_path / "bomb.zip"
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as made, made.open("cards.sqlite", "w") as inner:
        for _ in range(50):
            inner.write(b"\0" * 1_000_000)
    with zipfile.ZipFile(packed) as opened:
        assert not belongings._copied(opened, "cards.sqlite", tmp_path / "out")
    assert (tmp_path / "out").stat().st_size <= 1_000_000


def test_a_locked_file_is_refused(client: TestClient, room: Room) -> None:
    furnished(client, room)
    content = bytearray(backup_of(client)[1])
    for signature, at in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        place = content.find(signature)
        while place >= 0:  # the flag that says a password is needed (PKWARE, APPNOTE.TXT, 4.4.4, bit 0)
            content[place + at] |= 1
            place = content.find(signature, place + 4)
    assert put_back(client, bytes(content)).status_code == 422


def test_a_box_with_a_trap_in_it_springs_nothing(client: TestClient, room: Room, tmp_path: Path) -> None:
    """A stranger's box may have triggers; only its rows are taken."""
    furnished(client, room)
    content = backup_of(client)[1]
    trapped = tmp_path / "cards.sqlite"
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        trapped.write_bytes(packed.read("cards.sqlite"))
    with closing(sqlite3.connect(trapped)) as box:
        box.execute("CREATE TRIGGER trap AFTER INSERT ON child BEGIN DELETE FROM child; END")
        box.commit()
    put_back(client, repacked(content, {"cards.sqlite": trapped.read_bytes()}))
    assert client.post("/children", data={"name": "Kim", "born": "2021-05-01"}).status_code == 303
    assert children(client) == {"Mina", "Jo", "Kim"}


def test_only_backups_are_handed_out(client: TestClient, room: Room) -> None:
    furnished(client, room)
    backup_of(client)
    for name in ("..%2Fsharing.json", "%2e%2e%2fsettings.json", "none.zip", "..%5cx", "%00", "cards.sqlite"):
        assert client.get(f"/settings/backups/{name}").status_code == 404, name
        assert client.post("/settings/restore", data=AGREED | {"name": name}).status_code == 422, name


def test_a_link_among_the_backups_leads_nowhere(client: TestClient, room: Room, tmp_path: Path) -> None:
    furnished(client, room)
    backup_of(client)
    secret = tmp_path / "secret"
    secret.write_text("not yours")
    (room.folder / "backups" / "cards-20260101-000000.sqlite").symlink_to(secret)
    assert client.get("/settings/backups/cards-20260101-000000.sqlite").status_code == 404


def test_nothing_is_replaced_unasked(client: TestClient, room: Room) -> None:
    furnished(client, room)
    name, content = backup_of(client)
    for sent in ({"name": name}, {"name": name, "agreed": ""}):
        assert client.post("/settings/restore", data=sent).status_code == 422
    assert client.post("/settings/restore", files={"file": ("a.zip", content)}).status_code == 422
    assert client.post("/settings/restore", data=AGREED).status_code == 422


def test_more_than_a_backup_can_be_is_refused_before_it_is_read(client: TestClient) -> None:
    length = {"content-length": str(LARGEST_FILE + 200_000)}
    assert client.post("/settings/restore", content=b"x", headers=length).status_code == 413


def test_a_lesser_form_stays_small(client: TestClient) -> None:
    assert (
        client.post("/children/import", content=b"x", headers={"content-length": "3000000"}).status_code
        == 413
    )


def test_zlib_would_unpack_the_bomb() -> None:
    """The bomb above is one: a thousandth of what it unpacks to."""
    assert len(bomb()) < 300_000_000 / 500
    assert len(zlib.compress(b"\0" * 1_000_000)) < 2000
