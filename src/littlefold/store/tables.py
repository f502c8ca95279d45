"""The tables, as the newest migration leaves them."""

from __future__ import annotations

from typing import Any, Final

from sqlalchemy import (
    Column,
    Date,
    Double,
    ForeignKey,
    ForeignKeyConstraint,
    Integer,
    MetaData,
    String,
    Table,
)

ROWS: Final = MetaData()


def _part(name: str, *columns: Column[Any]) -> Table:
    """A table whose rows belong to one child, in the order of `place`."""
    return Table(
        name,
        ROWS,
        Column("child", Integer, ForeignKey("child.id", ondelete="CASCADE"), primary_key=True),
        Column("place", Integer, primary_key=True),
        *columns,
    )


def _part_of(whole: str, name: str, *columns: Column[Any]) -> Table:
    """A table whose rows belong to one row of a part, in the order of `nth`."""
    return Table(
        name,
        ROWS,
        Column("child", Integer, primary_key=True),
        Column("place", Integer, primary_key=True),
        Column("nth", Integer, primary_key=True),
        *columns,
        ForeignKeyConstraint(("child", "place"), (f"{whole}.child", f"{whole}.place"), ondelete="CASCADE"),
    )


def _words(name: str) -> Column[str]:
    return Column(name, String, nullable=False)


def _length(name: str) -> Column[float]:
    return Column(name, Double, nullable=False)


child = Table(
    "child",
    ROWS,
    Column("id", Integer, primary_key=True),
    Column("key", String, nullable=False, unique=True),
    _words("name"),
    Column("born", Date),
    Column("sex", String),
)

measured = _part("measured", Column("day", Date, nullable=False), _words("taken_by"), _words("over"))
reading = _part_of("measured", "reading", _words("name"), _length("mm"))
own_measurement = _part_of("measured", "own_measurement", _words("name"), _words("recipe"), _words("how"))

note = _part("note", Column("day", Date, nullable=False), _words("text"))

draft = _part(
    "draft",
    Column("made", Date, nullable=False),
    _words("tape"),
    _words("language"),
    _words("pattern_hash"),
    _length("let_down"),
    Column("follows", Integer),
    Column("age_months", Double),
    Column("sex", String),
    _words("nickname"),
    _words("units"),
    Column("region", String),  # nothing where a draft was kept before it was
    Column("us_size", String),
    Column("paper_width", Double),
    Column("paper_height", Double),
    Column("cloth_width", Double),
)
draft_recipe = _part_of("draft", "draft_recipe", _words("name"), _words("text"))
draft_choice = _part_of(
    "draft", "draft_choice", _words("name"), Column("number", Double), Column("word", String)
)
draft_reading = _part_of(
    "draft", "draft_reading", _words("name"), _length("mm"), _words("origin"), _length("spread")
)
draft_finding = _part_of(
    "draft",
    "draft_finding",
    _words("code"),
    _words("severity"),
    _words("message"),
    _words("rule"),
    _words("cure"),
    Column("file", String),
    Column("line", Integer),
    Column("column", Integer),
    Column("piece", String),
    Column("edge", String),
    Column("point", String),
    _words("numbers"),  # as JSON: name, value and unit of each
)
fitting = _part_of("draft", "fitting", Column("day", Date, nullable=False), _words("showed"))

sewing_class = Table(
    "sewing_class",
    ROWS,
    Column("id", Integer, primary_key=True),
    Column("key", String, nullable=False, unique=True),
    _words("name"),
    _words("recipe"),
    Column("sample", String),  # as given, or changed; nothing where it is the maker's own
)


def _of_class(name: str, *columns: Column[Any]) -> Table:
    """A table whose rows belong to one class, in the order of `nth`."""
    return Table(
        name,
        ROWS,
        Column("sewing_class", Integer, ForeignKey("sewing_class.id", ondelete="CASCADE"), primary_key=True),
        Column("nth", Integer, primary_key=True),
        *columns,
    )


pupil = _of_class(
    "pupil", Column("child", Integer, ForeignKey("child.id", ondelete="CASCADE"), nullable=False)
)
class_choice = _of_class("class_choice", _words("name"), _words("word"))

sample_child = Table(
    "sample_child",
    ROWS,
    Column("child", Integer, ForeignKey("child.id", ondelete="CASCADE"), primary_key=True),
    _words("state"),
)
mark = Table("mark", ROWS, Column("name", String, primary_key=True), _words("word"))
