"""Copies of the whole box, with all that is kept in it: made when asked for, and before every migration.

A file is copied as a file that can be opened in its place; of a server every row is written as JSON.  `restore` puts
either back, into a file or into a server.
"""

from __future__ import annotations

import json
import os
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING

from sqlalchemy.exc import DBAPIError

from littlefold.problem import Problem
from littlefold.store.all_rows import all_rows
from littlefold.store.engine import BoxUnavailable, reading

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from sqlalchemy import Engine

    from littlefold.store.address import Address
    from littlefold.store.box import CardBox
    from littlefold.store.card import Card


@dataclass(frozen=True, slots=True)
class Holding:
    """What a box or a copy of it holds.

    Attributes:
        children: Their names, in alphabetical order.
        sets: Dated sets of readings, of all children together.
        drafts: Past drafts, of all children together.
    """

    children: tuple[str, ...]
    sets: int
    drafts: int


@dataclass(frozen=True, slots=True)
class Backup:
    """A copy of the whole box in one file."""

    file: Path
    holds: Holding


def holding(cards: tuple[Card, ...]) -> Holding:
    """What these cards are, counted."""
    names = tuple(card.name for card in sorted(cards, key=lambda card: card.key))
    return Holding(names, sum(len(card.measured) for card in cards), sum(len(card.drafts) for card in cards))


def back_up_now(box: CardBox, now: datetime) -> Backup | Problem:
    """The whole box in a file in the folder of backups that only its owner can read; or why there is none."""
    try:
        holds = holding(box.cards())
        return Backup(back_up(box.engine, box.address, f"{now:%Y%m%d-%H%M%S}"), holds)
    except (BoxUnavailable, DBAPIError, sqlite3.Error, OSError) as fault:
        said = fault.strerror if isinstance(fault, OSError) else str(fault).split("\n", 1)[0]
        return Problem("backup-not-made", f"The cards could not be backed up: {said}.")


def backups_of(address: Address) -> tuple[Path, ...]:
    """The files in the folder of backups, the newest first."""
    found = [*address.backups.glob("cards-*.json"), *address.backups.glob("cards-*.sqlite")]
    return tuple(sorted(found, key=lambda file: (file.stat().st_mtime_ns, file.name), reverse=True))


def back_up(engine: Engine, address: Address, name: str) -> Path:
    """Copies the box, whatever its shape, into the folder of backups, and returns the file.

    Raises:
        OSError: The disk does not take it.
    """
    file = address.file
    if file is not None:
        return _whole(address.backups, f"cards-{name}", ".sqlite", lambda made: _copy(file, made))
    with reading(engine) as connection:
        text = json.dumps(all_rows(connection), ensure_ascii=False, default=str)
    return _whole(address.backups, f"cards-{name}", ".json", lambda made: made.write_bytes(text.encode()))


def _copy(file: Path, made: Path) -> None:
    with closing(sqlite3.connect(file)) as box, closing(sqlite3.connect(made)) as copy:
        box.backup(copy)


def _whole(folder: Path, name: str, suffix: str, write: Callable[[Path], object]) -> Path:
    """A new file, for its owner alone; under its name it is there with all that belongs in it."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    with NamedTemporaryFile(dir=folder, delete=False) as beside:
        begun = Path(beside.name)
    try:
        write(begun)
        with begun.open("rb+") as written:
            os.fsync(written.fileno())
        return begun.replace(_reserved(folder, name, suffix))
    finally:
        begun.unlink(missing_ok=True)


def _reserved(folder: Path, name: str, suffix: str) -> Path:
    """An empty file of a name that none had."""
    for number in count(1):
        file = folder / f"{name}{f'-{number}' if number > 1 else ''}{suffix}"
        try:
            file.touch(mode=0o600, exist_ok=False)
        except FileExistsError:
            continue
        return file
    raise AssertionError("numbers do not end")
