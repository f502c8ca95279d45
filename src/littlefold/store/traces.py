"""After a child was erased: no row, no page of the file, no backup that still holds it.

What a disk or a server's own log keeps beyond that is not in this program's reach; docs/cards.md says so.
"""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from typing import TYPE_CHECKING, Any

from littlefold.problem import Problem, Severity
from littlefold.store.engine import PATIENCE

if TYPE_CHECKING:
    from pathlib import Path

    from sqlalchemy import Engine

    from littlefold.store.address import Address


def leave_no_trace(engine: Engine, address: Address, key: str) -> Problem | None:
    """Overwrites what an erased child left behind in the file, and erases it from the backups too.

    Returns:
        That the file could not be swept, because another program was using it.
    """
    swept = True
    if address.file is not None:
        engine.dispose()
        swept = _sweep(address.file)
    for backup in sorted(address.backups.glob("cards-*.sqlite")):
        _erase_from_file(backup, key)
    for backup in sorted(address.backups.glob("cards-*.json")):
        _erase_from_rows(backup, key)
    return None if swept else _not_swept()


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


def _erase_from_rows(backup: Path, key: str) -> None:
    rows: dict[str, list[dict[str, Any]]] = json.loads(backup.read_text("utf-8"))
    children = {row["id"] for row in rows["child"] if row["key"] == key}
    left = {
        table: [row for row in each if row.get("child", row.get("id")) not in children]
        for table, each in rows.items()
    }
    backup.write_text(json.dumps(left, ensure_ascii=False), encoding="utf-8")
