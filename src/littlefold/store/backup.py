"""A copy of the whole box before it is changed into a newer shape."""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from typing import TYPE_CHECKING, Any

from sqlalchemy import MetaData, select

from littlefold.store.engine import reading

if TYPE_CHECKING:
    from datetime import datetime
    from pathlib import Path

    from sqlalchemy import Engine

    from littlefold.store.address import Address


def back_up(engine: Engine, address: Address, version: str, now: datetime) -> Path:
    """Copies the box into the folder of backups, and returns the file.

    A file is copied as a file that can be opened in its place; of a server every table is written as JSON.
    """
    address.backups.mkdir(mode=0o700, parents=True, exist_ok=True)
    front = address.backups / f"cards-{version}-{now:%Y%m%d-%H%M%S}"
    return _rows(engine, front) if address.file is None else _copy(address.file, front)


def _copy(file: Path, front: Path) -> Path:
    made = front.with_suffix(".sqlite")
    made.touch(mode=0o600)
    with closing(sqlite3.connect(file)) as box, closing(sqlite3.connect(made)) as copy:
        box.backup(copy)
    return made


def _rows(engine: Engine, front: Path) -> Path:
    made, found = front.with_suffix(".json"), MetaData()
    with reading(engine) as connection:
        found.reflect(connection)
        rows: dict[str, list[dict[str, Any]]] = {
            table.name: [dict(row._mapping) for row in connection.execute(select(table))]  # noqa: SLF001 - its public name
            for table in found.sorted_tables
        }
    made.touch(mode=0o600)
    made.write_text(json.dumps(rows, ensure_ascii=False, default=str), encoding="utf-8")
    return made
