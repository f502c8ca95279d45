"""After a child was erased: no row, no page of the file, no backup that still holds it.

What a disk or a server's own log keeps beyond that is not in this program's reach; docs/cards.md says so.
"""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from typing import TYPE_CHECKING, Any

from littlefold.problem import Problem, Severity
from littlefold.store.card import key_of
from littlefold.store.engine import PATIENCE

if TYPE_CHECKING:
    from pathlib import Path

    from sqlalchemy import Engine

    from littlefold.store.address import Address


def leave_no_trace(engine: Engine, address: Address, key: str) -> Problem | None:
    """Overwrites what an erased child left behind in the file, and erases it from the backups too.

    Returns:
        That the file could not be swept, because another program was using it, or that damaged boxes lie about.
    """
    swept = True
    if address.file is not None:
        engine.dispose()
        swept = _sweep(address.file)
    unsearched = not_searchable(address)
    for backup in (one for one in _copies(address) if one not in unsearched):
        _erase_from(backup, key)
    if not swept:
        return _not_swept()
    return _may_be_in(unsearched) if unsearched else None


def not_searchable(address: Address) -> tuple[Path, ...]:
    """The files among the backups that may hold cards and cannot be searched: boxes put aside, copies that are damaged."""
    aside = sorted(address.backups.glob("damaged-*.sqlite"))
    return (*aside, *(copy for copy in _copies(address) if not _can_be_searched(copy)))


def remove_not_searchable(address: Address) -> Problem | None:
    """Removes these files; why one could not be removed, or None."""
    try:
        for file in not_searchable(address):
            for ending in ("-wal", "-shm", ""):
                file.with_name(file.name + ending).unlink(missing_ok=True)
    except OSError as fault:
        return Problem("damaged-not-removed", f"{fault.filename} could not be removed: {fault.strerror}.")
    return None


def _copies(address: Address) -> tuple[Path, ...]:
    return tuple(sorted((*address.backups.glob("cards-*.sqlite"), *address.backups.glob("cards-*.json"))))


def _can_be_searched(copy: Path) -> bool:
    """Whether all its cards can be found in a copy of the box."""
    try:
        if copy.suffix == ".json":
            return isinstance(json.loads(copy.read_text("utf-8")), dict)
        with closing(sqlite3.connect(copy)) as box:
            box.execute("SELECT key FROM child LIMIT 1").fetchall()
            return bool(box.execute("PRAGMA integrity_check").fetchall() == [("ok",)])
    except (OSError, ValueError, RecursionError, sqlite3.DatabaseError):
        return False


def _may_be_in(files: tuple[Path, ...]) -> Problem:
    said = " and ".join(map(str, files))
    one = len(files) == 1
    return Problem(
        "erased-not-from-damaged",
        f"The child is erased, but {said} {'is' if one else 'are'} damaged, cannot be searched and may still hold it. "
        f"Remove {'that file' if one else 'those files'} when you no longer need {'it' if one else 'them'}.",
        Severity.WARNING,
    )


def _not_swept() -> Problem:
    return Problem(
        "erased-not-swept",
        "The child is erased, but another program is using the box, so traces may be left in its file until that program "
        "is closed and another card is erased.",
        Severity.WARNING,
    )


def _sweep(file: Path) -> bool:
    """Writes the file anew without what was deleted; whether that could be done."""
    with closing(sqlite3.connect(file, timeout=PATIENCE, isolation_level=None)) as box:
        box.execute("PRAGMA secure_delete = on")
        try:
            box.execute("VACUUM")
        except sqlite3.OperationalError:
            return False
        busy, _, _ = box.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
        return not busy


def _erase_from(copy: Path, key: str) -> None:
    if copy.suffix == ".json":
        _erase_from_json(copy, key)
    else:
        _erase_from_file(copy, key)


def _erase_from_file(backup: Path, key: str) -> None:
    with closing(sqlite3.connect(backup, isolation_level=None)) as box:
        box.execute("PRAGMA foreign_keys = on")
        box.execute("PRAGMA secure_delete = on")
        box.execute("DELETE FROM child WHERE key = ?", (key,))
    _sweep(backup)


def _erase_from_json(backup: Path, key: str) -> None:
    """Out of a file of cards, or out of a server's rows."""
    document: dict[str, Any] = json.loads(backup.read_text("utf-8"))
    left = _without_card(document, key) if "format" in document else _without_rows(document, key)
    backup.write_text(json.dumps(left, ensure_ascii=False), encoding="utf-8")


def _without_card(document: dict[str, Any], key: str) -> dict[str, Any]:
    return document | {"cards": [card for card in document["cards"] if key_of(card["name"]) != key]}


def _without_rows(rows: dict[str, list[dict[str, Any]]], key: str) -> dict[str, Any]:
    children = {row["id"] for row in rows["child"] if row["key"] == key}
    return {
        table: [row for row in each if row.get("id" if table == "child" else "child") not in children]
        for table, each in rows.items()
    }
