"""Backups are made, read and put back, on both databases and from one to the other."""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from alembic import command
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from littlefold.problem import Problem
from littlefold.store import (
    Address,
    Backup,
    Card,
    CardBox,
    ClassBook,
    Holding,
    Restored,
    SewingClass,
    address_of,
    back_up_now,
    backups_of,
    cards_to_json,
    open_box,
    read_backup,
    restore,
)
from littlefold.store.all_rows import all_rows, put_all_rows
from littlefold.store.backup_file import Read
from littlefold.store.engine import connect, reading, writing
from littlefold.store.opening import MIGRATIONS, steps_in
from tests.store.boxes import NOW, opened
from tests.store.children import JO, MINA

if TYPE_CHECKING:
    from collections.abc import Callable

KIM = replace(JO, name="Kim", born=date(2021, 5, 1))


def address_in(environ: dict[str, str]) -> Address:
    address = address_of(environ, Path("/nowhere"))
    assert not isinstance(address, Problem)
    return address


def backed_up(box: CardBox) -> Backup:
    made = back_up_now(box, NOW)
    assert isinstance(made, Backup), made
    return made


def cards_in(environ: dict[str, str]) -> tuple[Card, ...]:
    box = opened(environ)
    try:
        return box.cards()
    finally:
        box.close()


def all_in(environ: dict[str, str]) -> tuple[tuple[Card, ...], tuple[SewingClass, ...]]:
    box = opened(environ)
    try:
        return box.cards(), ClassBook(box.engine).classes()
    finally:
        box.close()


def codes(outcome: Restored | tuple[Problem, ...]) -> list[str]:
    assert isinstance(outcome, tuple), outcome
    return [problem.code for problem in outcome]


def test_a_backup_says_what_it_holds_and_is_for_its_owner_only(box: CardBox) -> None:
    box.add(MINA, JO)
    first, second = backed_up(box), backed_up(box)
    assert first.holds == Holding(("Jo", "Mina"), 2, 1)
    assert first.file != second.file, "a second one in the same second takes nothing away"
    assert first.file.stat().st_mode & 0o77 == 0
    assert set(backups_of(box.address)) == {first.file, second.file}
    read = read_backup(first.file, NOW)
    assert isinstance(read, Read)
    assert read.holds == first.holds


def test_a_box_is_put_back_and_what_it_held_is_kept_beside(box: CardBox, environ: dict[str, str]) -> None:
    box.add(MINA, JO)
    ClassBook(box.engine).add(SewingClass("Monday", "bib", (("width", "20 cm"),), ("Mina", "Jo")))
    then = (box.cards(), ClassBook(box.engine).classes())
    made = backed_up(box)
    box.add(KIM)
    box.change("Mina", lambda card: replace(card, name="Mina B.", notes=(), drafts=()))
    ClassBook(box.engine).remove("Monday")
    later = (box.cards(), ClassBook(box.engine).classes())
    box.close()
    outcome = restore(address_in(environ), made.file, NOW)
    assert isinstance(outcome, Restored), outcome
    assert outcome.holds == made.holds
    assert all_in(environ) == then
    assert outcome.replaced is not None
    assert outcome.replaced.holds.children == ("Jo", "Kim", "Mina B.")
    again = restore(address_in(environ), outcome.replaced.file, NOW)
    assert isinstance(again, Restored)
    assert all_in(environ) == later


def test_a_box_put_back_takes_new_cards(box: CardBox, environ: dict[str, str], tmp_path: Path) -> None:
    """Also where it came from another kind of database, whose numbers run on elsewhere."""
    box.add(MINA, JO)
    made = backed_up(box)
    box.close()
    file_box = {"LITTLEFOLD_DATA": str(tmp_path / "file")}
    assert isinstance(restore(address_in(file_box), made.file, NOW), Restored)
    again = opened(file_box)
    of_file = backed_up(again)
    assert again.add(KIM) == ()
    again.close()
    assert isinstance(restore(address_in(environ), of_file.file, NOW), Restored)
    back = opened(environ)
    assert back.add(KIM) == ()
    assert back.cards() == (JO, KIM, MINA)
    back.close()


def old_box(environ: dict[str, str], *statements: str) -> Path:
    """A box of the first version, brought up to date; returns the backup that was made before."""
    address = address_in(environ)
    engine, steps = connect(address.url), steps_in(MIGRATIONS)
    with writing(engine) as connection:
        steps.attributes["connection"] = connection
        command.upgrade(steps, "0001")
        for statement in statements:
            connection.execute(text(statement))
    engine.dispose()
    opened(environ).close()
    (backup,) = backups_of(address)
    return backup


OLD_ROWS = (
    "INSERT INTO child (id, key, name, born, sex) VALUES (7, 'jo', 'Jo', '2022-08-14', 'boy')",
    "INSERT INTO measured VALUES (7, 0, '2026-01-31', 'Edda', 'vest')",
    "INSERT INTO reading VALUES (7, 0, 0, 'chest', 565.15)",
    "INSERT INTO note VALUES (7, 0, '2026-02-01', 'Ä „note“')",
)


def test_what_was_copied_before_a_migration_can_be_put_back(environ: dict[str, str], tmp_path: Path) -> None:
    backup = old_box(environ, *OLD_ROWS)
    (jo,) = cards_in(environ)
    assert (jo.born, jo.sex, jo.notes[0].text) == (date(2022, 8, 14), "boy", "Ä „note“")
    assert jo.measured[0].readings == (("chest", 565.15),)
    box = opened(environ)
    box.change("Jo", lambda card: replace(card, notes=()))
    box.close()
    assert isinstance(restore(address_in(environ), backup, NOW), Restored)
    assert cards_in(environ) == (jo,)
    elsewhere = {"LITTLEFOLD_DATA": str(tmp_path / "elsewhere")}
    fresh = restore(address_in(elsewhere), backup, NOW)
    assert isinstance(fresh, Restored), "from a server to a file, and into a place where no box was"
    assert cards_in(elsewhere) == (jo,)


def test_a_backup_of_an_erased_child_no_longer_holds_it(box: CardBox, environ: dict[str, str]) -> None:
    box.add(MINA, JO)
    made = backed_up(box)
    box.erase("Mina")
    box.close()
    assert b"Mina" not in made.file.read_bytes()
    assert b"Jo" in made.file.read_bytes()
    assert isinstance(restore(address_in(environ), made.file, NOW), Restored)
    assert cards_in(environ) == (JO,)


def version(number: str, **rows: list[dict[str, Any]]) -> bytes:
    return json.dumps({"alembic_version": [{"version_num": number}], **rows}).encode()


ROWS_OF_0001: dict[str, list[dict[str, Any]]] = {
    "child": [{"id": 1, "key": "jo", "name": "Jo", "born": None, "sex": None}],
    "note": [],
    "reading": [],
}
SPOILT = {
    "cut short": version("0001")[:-9],
    "of another program": b'{"format": "recipes/1"}',
    "an export": cards_to_json((JO,)).encode(),
    "a list": b"[1, 2]",
    "a poem": b"Es war einmal",
    "no text": bytes(range(128, 256)),
    "nested": b"[" * 100_000,
    "newer": version("9999", child=[]),
    "a table less": version("0001", **ROWS_OF_0001),
    "another column": version("0001", **ROWS_OF_0001 | {"measured": [], "child": [{"id": 1, "shoe": 20}]}),
    "a day that is none": version(
        "0001", **ROWS_OF_0001 | {"measured": [], "child": [ROWS_OF_0001["child"][0] | {"born": "soon"}]}
    ),
    "a note of nobody": version(
        "0001",
        **ROWS_OF_0001
        | {"measured": [], "note": [{"child": 9, "place": 0, "day": "2026-01-01", "text": "?"}]},
    ),
    "nobody's name": version(
        "0001", **ROWS_OF_0001 | {"measured": [], "child": [ROWS_OF_0001["child"][0] | {"name": " "}]}
    ),
    "no version": json.dumps({"alembic_version": [], "child": []}).encode(),
    "a version that is none": json.dumps({"alembic_version": [{"version_num": None}]}).encode(),
    "tables that are none": json.dumps({"alembic_version": 3}).encode(),
    "no box": b"SQLite format 3\0" + b"?" * 500,
    "nothing": b"",
}


def test_the_rows_that_are_spoilt_below_are_sound_without_it(tmp_path: Path) -> None:
    file = tmp_path / "given.json"
    file.write_bytes(version("0001", **ROWS_OF_0001 | {"measured": []}))
    read = read_backup(file, NOW)
    assert isinstance(read, Read), read
    assert read.holds.children == ("Jo",)


@pytest.mark.parametrize("how", SPOILT)
def test_nothing_is_replaced_by_a_file_that_is_not_sound(tmp_path: Path, how: str) -> None:
    environ = {"LITTLEFOLD_DATA": str(tmp_path)}
    box = opened(environ)
    box.add(MINA)
    box.close()
    file = tmp_path / "given.json"
    file.write_bytes(SPOILT[how])
    assert codes(restore(address_in(environ), file, NOW))
    assert cards_in(environ) == (MINA,)
    assert backups_of(address_in(environ)) == ()


SPOILS: dict[str, Callable[[sqlite3.Connection], object]] = {
    "another program's": lambda raw: raw.executescript("DROP TABLE alembic_version"),
    "newer": lambda raw: raw.executescript("UPDATE alembic_version SET version_num = '9999'"),
    "a reading of no set": lambda raw: raw.executescript(
        "PRAGMA foreign_keys = off; INSERT INTO reading VALUES (1, 9, 0, 'chest', 560.0)"
    ),
    "a length that is none": lambda raw: raw.executescript("UPDATE reading SET mm = -1"),
    "an origin that is none": lambda raw: raw.executescript("UPDATE draft_reading SET origin = 'told'"),
}


@pytest.mark.parametrize("how", SPOILS)
def test_a_copied_box_that_is_not_sound_replaces_nothing(tmp_path: Path, how: str) -> None:
    other, here = ({"LITTLEFOLD_DATA": str(tmp_path / name)} for name in ("other", "here"))
    box = opened(other)
    box.add(MINA)
    box.close()
    file = address_in(other).file
    assert file is not None
    with closing(sqlite3.connect(file)) as raw:
        SPOILS[how](raw)
        raw.commit()
    box = opened(here)
    box.add(JO)
    box.close()
    assert codes(restore(address_in(here), file, NOW))
    assert cards_in(here) == (JO,)


def test_a_box_in_use_is_copied_with_what_its_program_still_holds(tmp_path: Path) -> None:
    other, here = ({"LITTLEFOLD_DATA": str(tmp_path / name)} for name in ("other", "here"))
    box = opened(other)
    box.add(MINA)
    file = address_in(other).file
    assert file is not None
    assert file.with_name("cards.sqlite-wal").stat().st_size > 0, "else this test shows nothing"
    assert isinstance(restore(address_in(here), file, NOW), Restored)
    box.close()
    assert cards_in(here) == (MINA,)


def test_a_damaged_box_is_put_aside_and_its_place_taken(tmp_path: Path) -> None:
    environ = {"LITTLEFOLD_DATA": str(tmp_path)}
    box = opened(environ)
    box.add(MINA)
    made = backed_up(box)
    box.close()
    file = tmp_path / "cards.sqlite"
    half = file.read_bytes()[: file.stat().st_size // 2]
    file.write_bytes(half)
    outcome = restore(address_in(environ), made.file, NOW)
    assert isinstance(outcome, Restored), outcome
    assert outcome.damaged is not None
    assert outcome.damaged.read_bytes() == half
    assert outcome.replaced is None
    assert cards_in(environ) == (MINA,)
    box = opened(environ)
    told = box.erase("Mina")
    box.close()
    assert isinstance(told, Problem)
    assert told.code == "erased-not-from-damaged"
    assert str(outcome.damaged) in told.message


def test_a_newer_box_is_not_replaced(box: CardBox, environ: dict[str, str]) -> None:
    box.add(MINA)
    made = backed_up(box)
    with writing(box.engine) as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    box.close()
    assert codes(restore(address_in(environ), made.file, NOW)) == ["card-box-newer"]
    assert isinstance(open_box(address_in(environ), NOW), Problem)


def test_what_cannot_be_kept_beside_is_not_replaced(box: CardBox, environ: dict[str, str]) -> None:
    box.add(MINA)
    made = backed_up(box)
    box.erase("Mina")
    box.add(JO)
    box.close()
    file = made.file.rename(made.file.parent.with_name(made.file.name))
    made.file.parent.rmdir()
    made.file.parent.write_text("in the way")
    assert codes(restore(address_in(environ), file, NOW)) == ["not-restored"]
    assert cards_in(environ) == (JO,)


def test_rows_that_break_off_half_way_leave_what_was_there(box: CardBox) -> None:
    """All is replaced within one transaction."""
    box.add(MINA, KIM)
    with reading(box.engine) as connection:
        rows = all_rows(connection)
    rows["note"] = [{"child": 999, "place": 0, "day": "2026-01-01", "text": "of nobody"}]
    with pytest.raises(IntegrityError), writing(box.engine) as connection:
        put_all_rows(connection, rows)
    assert box.cards() == (KIM, MINA)


def test_a_folder_that_cannot_be_written_is_told(box: CardBox, tmp_path: Path) -> None:
    (tmp_path / "backups").write_text("in the way")
    told = back_up_now(box, NOW)
    assert isinstance(told, Problem)
    assert told.code == "backup-not-made"
    read = read_backup(tmp_path / "nothing.json", NOW)
    assert isinstance(read, tuple)
    assert read[0].code == "backup-unreadable"
