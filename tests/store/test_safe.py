"""Nothing that was kept is lost: kills, newer boxes, backups before migrations."""

from __future__ import annotations

import json
import os
import shutil
import sqlite3
import subprocess
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from alembic import command
from alembic.script import ScriptDirectory
from sqlalchemy import event, text

from littlefold.problem import Problem
from littlefold.store import (
    Address,
    BoxUnavailable,
    CardBox,
    Measured,
    Note,
    OwnMeasurement,
    address_of,
    open_box,
)
from littlefold.store.engine import connect, writing
from littlefold.store.opening import MIGRATIONS, steps_in
from tests.store.boxes import NOW, opened
from tests.store.children import JO, MINA

ROOT = Path(__file__).parents[2]
KILLS = 220
KILLS_ON_SERVER = 40  # each round opens four connections to it, with their checks of the version


@pytest.mark.slow
def test_a_kill_loses_nothing_that_was_kept(environ: dict[str, str]) -> None:
    """On SQLite and on a PostgreSQL, whose writer is killed and whose server goes on."""
    kills = KILLS_ON_SERVER if "LITTLEFOLD_DATABASE" in environ else KILLS
    words = [sys.executable, "-m", "tests.store.killing", environ["LITTLEFOLD_DATA"], str(kills)]
    surroundings = {name: value for name, value in os.environ.items() if name != "LITTLEFOLD_DATABASE"}
    done = subprocess.run(
        words,
        cwd=ROOT,
        env=surroundings | environ,
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    tally = json.loads(done.stdout)
    assert tally["kills"] == kills
    assert tally["said"] >= kills


def _address(environ: dict[str, str]) -> Address:
    address = address_of(environ, Path("/nowhere"))
    assert not isinstance(address, Problem)
    return address


def _old_box(environ: dict[str, str], version: str = "0001") -> Address:
    """A box as an older version kept it, the first where none is named, with Jo and Kim in it."""
    address, engine = _address(environ), connect(_address(environ).url)
    steps = steps_in(MIGRATIONS)
    with writing(engine) as connection:
        steps.attributes["connection"] = connection
        command.upgrade(steps, version)
        connection.execute(text("INSERT INTO child (key, name) VALUES ('jo', 'Jo'), ('kim', 'Kim')"))
    engine.dispose()
    return address


def test_an_old_box_is_backed_up_and_brought_up_to_date(environ: dict[str, str]) -> None:
    address = _old_box(environ)
    box = opened(environ)
    assert box.card("Jo") == JO
    assert box.add(MINA) == ()
    assert [remark.code for remark in box.remarks] == ["card-box-backed-up"]
    (backup,) = address.backups.iterdir()
    assert str(backup) in box.remarks[0].message
    assert backup.stat().st_mode & 0o77 == 0
    if backup.suffix == ".sqlite":
        with sqlite3.connect(backup) as old:
            assert old.execute("SELECT name FROM child ORDER BY name").fetchall() == [("Jo",), ("Kim",)]
            assert old.execute("SELECT version_num FROM alembic_version").fetchall() == [("0001",)]
        old.close()
    else:
        rows = json.loads(backup.read_text())
        assert [row["name"] for row in rows["child"]] == ["Jo", "Kim"]
        assert rows["alembic_version"] == [{"version_num": "0001"}]
    box.close()
    again = opened(environ)
    assert again.remarks == (), "once"
    again.close()


def test_readings_of_before_recipes_own_were_described_stay(environ: dict[str, str]) -> None:
    address, engine = _old_box(environ, "0004"), connect(_address(environ).url)
    with writing(engine) as connection:
        for row in (
            "measured SELECT id, 0, DATE '2026-01-31', 'Edda', ''",
            "reading SELECT id, 0, 0, 'front_length', 290.0",
        ):
            said = row.replace("DATE ", "") if engine.dialect.name == "sqlite" else row
            connection.execute(text(f"INSERT INTO {said} FROM child WHERE key = 'jo'"))
    engine.dispose()
    box = opened(environ)
    read = Measured(date(2026, 1, 31), (("front_length", 290.0),), "Edda")
    assert box.card("Jo") == replace(JO, measured=(read,))
    assert len(list(address.backups.iterdir())) == 1, "a copy of the box as it was"
    own = OwnMeasurement("front_length", "top", "Over the chest")
    described = replace(read, own=(own,))
    box.change("Jo", lambda card: replace(card, measured=(described,)))
    assert box.card("Jo") == replace(JO, measured=(described,))
    box.close()


def test_an_erased_child_is_erased_from_the_backups(environ: dict[str, str]) -> None:
    address = _old_box(environ)
    box = opened(environ)
    (backup,) = address.backups.iterdir()
    assert b"Kim" in backup.read_bytes()
    box.erase("Kim")
    assert b"Kim" not in backup.read_bytes()
    assert b"Jo" in backup.read_bytes()
    box.close()


def test_a_newer_box_is_refused_and_left_alone(environ: dict[str, str]) -> None:
    box = opened(environ)
    box.add(JO)
    with writing(box.engine) as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    box.close()
    address = _address(environ)
    before = None if address.file is None else address.file.read_bytes()
    refused = open_box(address, NOW)
    assert isinstance(refused, Problem)
    assert refused.code == "card-box-newer"
    assert "newer" in refused.message
    assert not address.backups.exists()
    assert address.file is None or address.file.read_bytes() == before


def test_a_migration_that_fails_changes_nothing(environ: dict[str, str], tmp_path: Path) -> None:
    opened(environ).close()
    newest = ScriptDirectory.from_config(steps_in(MIGRATIONS)).get_current_head()
    broken = tmp_path / "broken"
    shutil.copytree(MIGRATIONS, broken, ignore=shutil.ignore_patterns("__pycache__"))
    (broken / "versions" / "broken.py").write_text(
        "from alembic import op\nimport sqlalchemy as sa\n"
        "revision = 'broken'\ndown_revision = 'NEWEST'\n"
        "def upgrade():\n"
        "    op.create_table('half', sa.Column('a', sa.Integer))\n"
        "    op.execute('DROP TABLE note')\n"
        "    op.execute('INSERT INTO nowhere VALUES (1)')\n".replace("NEWEST", newest or "")
    )
    refused = open_box(_address(environ), NOW, broken)
    assert isinstance(refused, Problem)
    assert refused.code == "card-box-not-opened"
    box = opened(environ)
    assert isinstance(box, CardBox)
    assert box.add(MINA) == ()
    assert box.card("Mina") == MINA
    with box.engine.connect() as connection:
        assert "half" not in connection.dialect.get_table_names(connection)
    box.close()


def test_a_full_disk_loses_nothing(tmp_path: Path) -> None:
    environ = {"LITTLEFOLD_DATA": str(tmp_path)}
    box = opened(environ)
    box.add(MINA)
    box.engine.dispose()
    event.listen(
        box.engine, "connect", lambda raw, _: raw.execute("PRAGMA max_page_count = 1")
    )  # as large as it is
    bulky = replace(JO, notes=tuple(Note(date(2026, 1, 1), "x" * 9000) for _ in range(60)))
    with pytest.raises(BoxUnavailable, match="full"):
        box.add(bulky)
    box.close()
    again = opened(environ)
    assert again.cards() == (MINA,)
    again.close()


def test_a_child_is_erased_while_another_program_reads(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("littlefold.store.traces.PATIENCE", 0.1)
    environ = {"LITTLEFOLD_DATA": str(tmp_path)}
    box = opened(environ)
    box.add(MINA, JO)
    with sqlite3.connect(tmp_path / "cards.sqlite", isolation_level=None) as other:
        other.execute("BEGIN")
        other.execute("SELECT * FROM child").fetchall()
        told = box.erase("Mina")
        other.execute("COMMIT")
    other.close()
    assert isinstance(told, Problem)
    assert told.code == "erased-not-swept"
    assert box.names() == ("Jo",)
    box.close()


@pytest.mark.parametrize("content", [b"no database, but a poem", b"SQLite format 3\0" + b"?" * 500])
def test_a_file_that_is_no_box_is_refused_in_words(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "cards.sqlite"
    file.write_bytes(content)
    refused = open_box(_address({"LITTLEFOLD_DATA": str(tmp_path)}), NOW)
    assert isinstance(refused, Problem)
    assert str(file) in refused.message
    assert file.read_bytes() == content


def test_a_folder_that_cannot_be_made_is_refused_in_words(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    refused = open_box(_address({"LITTLEFOLD_DATA": str(tmp_path / "file")}), NOW)
    assert isinstance(refused, Problem)
    assert refused.code == "card-box-not-opened"


def test_a_server_that_does_not_answer_is_refused_in_words(tmp_path: Path) -> None:
    environ = {
        "LITTLEFOLD_DATA": str(tmp_path),
        "LITTLEFOLD_DATABASE": f"postgresql://room@/x?host={tmp_path}",
    }
    refused = open_box(_address(environ), NOW)
    assert isinstance(refused, Problem)
    assert refused.code == "card-box-not-opened"
