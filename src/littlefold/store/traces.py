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
        That the file could not be swept, because another program was using it, or that a damaged box lies about.
    """
    swept = True
    if address.file is not None:
        engine.dispose()
        swept = _sweep(address.file)
    for backup in sorted(address.backups.glob("cards-*.sqlite")):
        _erase_from_file(backup, key)
    for backup in sorted(address.backups.glob("cards-*.json")):
        _erase_from_json(backup, key)
    if not swept:
        return _not_swept()
    damaged = sorted(address.backups.glob("damaged-*.sqlite"))
    return _may_be_in(damaged[0]) if damaged else None


def _may_be_in(damaged: Path) -> Problem:
    return Problem(
        "erased-not-from-damaged",
        f"The child is erased, but {damaged} is a damaged box that cannot be searched and may still hold it. Remove that "
        "file when you no longer need it.",
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
