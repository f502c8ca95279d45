"""Every row of a box, whatever its shape: taken out as plain values, and put in.

The tables are asked for, not known, so that this holds for every version of the box and for all that is kept in it.
"""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Any, Final

from sqlalchemy import Date, MetaData, insert, select, text

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sqlalchemy import Connection, Table

Rows = dict[str, list[dict[str, Any]]]

VERSION: Final = "alembic_version"
"""The table that says which shape the others have."""


def all_rows(connection: Connection) -> Rows:
    """The rows of every table by its name; a table comes after those that it refers to."""
    return {
        table.name: [dict(row._mapping) for row in connection.execute(select(table))]  # noqa: SLF001 - its public name
        for table in _tables(connection)
    }


def put_all_rows(connection: Connection, rows: Mapping[str, list[dict[str, Any]]]) -> None:
    """Puts rows in place of all that are there; days may be written as in ISO 8601.

    Raises:
        KeyError: The box has a table that the rows do not tell of, or a row a column that the box does not have.
    """
    tables = [table for table in _tables(connection) if table.name != VERSION]
    for table in reversed(tables):
        connection.execute(table.delete())
    for table in tables:
        typed = [_typed(table, row) for row in rows[table.name]]
        if typed:
            connection.execute(insert(table), typed)
        if connection.dialect.name == "postgresql" and "id" in table.c and typed:
            _count_on(connection, table)


def _tables(connection: Connection) -> list[Table]:
    shape = MetaData()
    shape.reflect(connection)
    return shape.sorted_tables


def _typed(table: Table, row: Mapping[str, Any]) -> dict[str, Any]:
    return {
        name: date.fromisoformat(value)
        if isinstance(value, str) and isinstance(table.c[name].type, Date)
        else value
        for name, value in row.items()
    }


def _count_on(connection: Connection, table: Table) -> None:
    """The next row gets a number that none has."""
    counter = f"pg_get_serial_sequence('{table.name}', 'id')"
    connection.execute(text(f"SELECT setval({counter}, (SELECT max(id) FROM {table.name}))"))  # noqa: S608 - a table's name
