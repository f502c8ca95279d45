"""A box put back to what a backup holds: everything is read and checked before anything is replaced."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sqlalchemy.exc import DBAPIError

from littlefold.problem import Problem
from littlefold.store.all_rows import put_all_rows
from littlefold.store.backup import Backup, Holding, back_up, holding
from littlefold.store.backup_file import Read, is_sound, read_backup
from littlefold.store.engine import BoxUnavailable, writing
from littlefold.store.opening import open_box

if TYPE_CHECKING:
    from datetime import datetime
    from pathlib import Path

    from littlefold.store.address import Address
    from littlefold.store.box import CardBox


@dataclass(frozen=True, slots=True)
class Restored:
    """What came of restoring.

    Attributes:
        holds: What the box holds now.
        replaced: What it held before, in a file among the backups; None where the old box could not be read.
        damaged: Where the file of a box that could not be read was put; None where there was none.
    """

    holds: Holding
    replaced: Backup | None
    damaged: Path | None = None


def restore(address: Address, file: Path, now: datetime) -> Restored | tuple[Problem, ...]:
    """Puts what a backup holds in place of all that is in the box, whole or not at all.

    Args:
        address: Of the box.
        file: The backup, of a file or of a server, of this version or an older one.
        now: Names the file that keeps what was replaced.
    """
    read = read_backup(file, now)
    if not isinstance(read, Read):
        return read
    try:
        damaged = _put_aside(address, now)
        box = open_box(address, now)
        return (box,) if isinstance(box, Problem) else _replaced(box, read, now, damaged)
    except (BoxUnavailable, DBAPIError, sqlite3.Error, OSError) as fault:
        return (_not_restored(fault),)


def _put_aside(address: Address, now: datetime) -> Path | None:
    """Moves a file that is no sound box out of the way, among the backups; returns where it is."""
    file = address.file
    if file is None or not file.exists() or not file.stat().st_size or _may_be_sound(file):
        return None
    address.backups.mkdir(mode=0o700, parents=True, exist_ok=True)
    aside = address.backups / f"damaged-{now:%Y%m%d-%H%M%S}.sqlite"
    for ending in ("-wal", "-shm", ""):
        part = file.with_name(file.name + ending)
        if part.exists():
            part.rename(aside.with_name(aside.name + ending))
    return aside


def _may_be_sound(file: Path) -> bool:
    try:
        return is_sound(file)
    except sqlite3.OperationalError:
        return True  # another program is using it, which says nothing against it
    except sqlite3.DatabaseError:
        return False


def _replaced(box: CardBox, read: Read, now: datetime, damaged: Path | None) -> Restored:
    """Keeps what is there and puts the backup in its place, with no other writer in between."""
    try:
        with writing(box.engine) as connection:
            old = holding(box.cards())
            kept = back_up(box.engine, box.address, f"replaced-{now:%Y%m%d-%H%M%S}")
            put_all_rows(connection, read.rows)
        now_holds = holding(box.cards())
    finally:
        box.close()
    assert now_holds == read.holds, "a box holds what was put into it"  # noqa: S101 - our own mistake
    return Restored(now_holds, None if damaged else Backup(kept, old), damaged)


def _not_restored(fault: Exception) -> Problem:
    said = fault.strerror if isinstance(fault, OSError) else str(fault).split("\n", 1)[0]
    return Problem("not-restored", f"Nothing was replaced: {said}.")
