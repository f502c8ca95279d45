"""Connections that lose nothing: how SQLite and PostgreSQL are asked to keep what they were given.

SQLite is told to wait until the disk has it (`synchronous = full`), to overwrite what is deleted (`secure_delete`),
and to let readers go on beside one writer (`journal_mode = wal`).  A writing transaction begins as one, so that it never
finds at its end that another came between.
"""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING, Any, Final

from sqlalchemy import create_engine, event, text
from sqlalchemy.exc import OperationalError

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sqlalchemy import URL, Connection, Engine

# Seconds that a writer waits for another; longer than any card takes to write.
PATIENCE: Final = 20

# Writers of one PostgreSQL box take turns under this number, which means nothing else.
TURN: Final = 0x4C464442

_PRAGMAS: Final = (
    f"PRAGMA busy_timeout = {PATIENCE * 1000}",
    "PRAGMA journal_mode = wal",
    "PRAGMA synchronous = full",
    "PRAGMA foreign_keys = on",
    "PRAGMA secure_delete = on",
)


def connect(url: URL) -> Engine:
    """An engine for the database at an address; nothing is opened yet."""
    if url.get_backend_name() != "sqlite":
        return create_engine(url, isolation_level="READ COMMITTED")
    engine = create_engine(url, connect_args={"timeout": PATIENCE})
    event.listen(engine, "connect", _set_up)
    event.listen(engine, "begin", _begin)
    return engine


class BoxUnavailable(Exception):
    """The box cannot be read or written now: the disk is full, another program holds it, the server is gone.

    Nothing that was kept is lost by it.
    """


@contextmanager
def reading(engine: Engine) -> Iterator[Connection]:
    """A transaction that sees the box as it stood at one moment; raises `BoxUnavailable`."""
    level = {"isolation_level": "REPEATABLE READ"} if engine.dialect.name == "postgresql" else {}
    with _told(), engine.connect().execution_options(**level) as connection, connection.begin():
        yield connection


@contextmanager
def writing(engine: Engine) -> Iterator[Connection]:
    """A transaction that no other writer comes between; kept as a whole at its end, or not at all; raises `BoxUnavailable`."""
    asked = {"littlefold_writes": True}
    with _told(), engine.connect().execution_options(**asked) as connection, connection.begin():
        if engine.dialect.name == "postgresql":
            connection.execute(text("SELECT pg_advisory_xact_lock(:turn)"), {"turn": TURN})
        yield connection


@contextmanager
def _told() -> Iterator[None]:
    try:
        yield
    except OperationalError as fault:
        raise BoxUnavailable(str(fault.orig).strip().split("\n", 1)[0]) from fault


def _set_up(connection: Any, _: object) -> None:
    connection.isolation_level = None  # the driver begins no transactions of its own
    for pragma in _PRAGMAS:
        connection.execute(pragma)


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get("littlefold_writes")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
