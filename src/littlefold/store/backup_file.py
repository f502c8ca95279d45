"""A backup read into a box of its own in a scratch folder, brought up to date there, and checked.

A backup may come from a file or from a server, and from any older version; the same steps that bring a box up to date
bring its copy up to date.
"""

from __future__ import annotations

import json
import shutil
import sqlite3
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any, Final

from alembic import command
from alembic.util.exc import CommandError
from sqlalchemy.exc import DBAPIError, StatementError

from littlefold.problem import Problem
from littlefold.store.address import FOLDER_SETTING, address_of
from littlefold.store.all_rows import VERSION, Rows, all_rows, put_all_rows
from littlefold.store.allowed import faults_of
from littlefold.store.backup import Holding, holding
from littlefold.store.engine import BoxUnavailable, connect, reading, writing
from littlefold.store.json_file import EXPORTS
from littlefold.store.opening import MIGRATIONS, open_box, steps_in

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from datetime import datetime

    from littlefold.store.address import Address
    from littlefold.store.box import CardBox

_SQLITE: Final = (
    b"SQLite format 3\0"  # the first bytes of every SQLite file (SQLite, Database File Format, 1.3.1)
)
_UNREADABLE: Final = (
    DBAPIError,
    StatementError,
    sqlite3.Error,
    CommandError,
    BoxUnavailable,
    ValueError,
    LookupError,
    TypeError,
    AttributeError,
)  # what wrong content makes of reading it


@dataclass(frozen=True, slots=True)
class Read:
    """A backup, read and checked: what it holds, and every row in today's shape."""

    holds: Holding
    rows: Rows


def read_backup(file: Path, now: datetime) -> Read | tuple[Problem, ...]:
    """What a backup holds, each card fit to be kept; or why it cannot be taken."""
    try:
        with TemporaryDirectory(prefix="littlefold-") as folder:
            return _read(file, Path(folder), now)
    except OSError as fault:
        return (Problem("backup-unreadable", f"{file} cannot be read: {fault.strerror}."),)
    except _UNREADABLE:
        return (_damaged(file),)


def _read(file: Path, folder: Path, now: datetime) -> Read | tuple[Problem, ...]:
    scratch = _scratch(folder)
    if _is_box(file):
        if not is_sound(_copied(file, folder / "cards.sqlite")):
            return (_damaged(file),)
    else:
        rows = _rows_in(file)
        if isinstance(rows, Problem):
            return (rows,)
        _rebuild(rows, scratch)
    with _opened(scratch, now) as box:
        return (_not_opened(file, box),) if isinstance(box, Problem) else _checked(box)


def _checked(box: CardBox) -> Read | tuple[Problem, ...]:
    cards = box.cards()
    with reading(box.engine) as connection:
        rows = all_rows(connection)
    faults = tuple(fault for card in cards for fault in faults_of(card))
    return faults or Read(holding(cards), rows)


def _is_box(file: Path) -> bool:
    with file.open("rb") as opened:
        return opened.read(len(_SQLITE)) == _SQLITE


def _copied(file: Path, copy: Path) -> Path:
    """The box in a file, with what a program that has it open has not yet put into it."""
    if not file.with_name(f"{file.name}-wal").exists():
        return Path(shutil.copyfile(file, copy))
    with closing(sqlite3.connect(file)) as box, closing(sqlite3.connect(copy)) as into:
        box.backup(into)
    return copy


def is_sound(file: Path) -> bool:
    """Whether a file is a box, and whole.

    Raises:
        sqlite3.OperationalError: Another program is using it.
        sqlite3.DatabaseError: It is no SQLite file, or a broken one.
    """
    with closing(sqlite3.connect(file)) as raw:
        versions = raw.execute("SELECT name FROM sqlite_master WHERE name = ?", (VERSION,)).fetchall()
        sound = raw.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        return bool(versions) and sound and not raw.execute("PRAGMA foreign_key_check").fetchall()


def _rows_in(file: Path) -> Mapping[str, list[dict[str, Any]]] | Problem:
    """The rows of a server."""
    text = file.read_text("utf-8")
    try:
        document = json.loads(text)
    except (json.JSONDecodeError, RecursionError):
        return _damaged(file) if text.lstrip().startswith("{") else _no_backup(file)
    if isinstance(document, dict) and VERSION in document:
        return document
    is_export = isinstance(document, dict) and str(document.get("format")).startswith(EXPORTS)
    return _an_export(file) if is_export else _no_backup(file)


def _rebuild(rows: Mapping[str, list[dict[str, Any]]], scratch: Address) -> None:
    """Makes a box of the shape that these rows had, and puts them into it."""
    (version,) = rows[VERSION]
    steps, engine = steps_in(MIGRATIONS), connect(scratch.url)
    try:
        with writing(engine) as connection:
            steps.attributes["connection"] = connection
            command.upgrade(steps, version["version_num"])
            put_all_rows(connection, rows)
    finally:
        engine.dispose()


def _scratch(folder: Path) -> Address:
    address = address_of({FOLDER_SETTING: str(folder)}, folder)
    assert not isinstance(address, Problem), "a folder is an address"  # noqa: S101 - our own mistake
    return address


@contextmanager
def _opened(address: Address, now: datetime) -> Iterator[CardBox | Problem]:
    box = open_box(address, now)
    try:
        yield box
    finally:
        if not isinstance(box, Problem):
            box.close()


def _not_opened(file: Path, fault: Problem) -> Problem:
    return _newer(file) if fault.code == "card-box-newer" else _damaged(file)


def _no_backup(file: Path) -> Problem:
    return Problem(
        "backup-not-understood",
        f"{file.name} is no backup of the card box. Choose a file cards-….sqlite or cards-….json from the folder of "
        "backups.",
    )


def _an_export(file: Path) -> Problem:
    return Problem(
        "backup-is-export",
        f"{file.name} is an export of cards and no backup of the whole box. Import takes its cards in beside those that "
        "are there.",
    )


def _damaged(file: Path) -> Problem:
    return Problem("backup-damaged", f"{file.name} is damaged. Nothing was replaced; try an older backup.")


def _newer(file: Path) -> Problem:
    return Problem(
        "backup-newer", f"{file.name} was made by a newer Littlefold. Nothing was replaced; use that one."
    )
