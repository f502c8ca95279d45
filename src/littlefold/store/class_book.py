"""The classes of the box: in, out and changed, each change whole or not at all."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from sqlalchemy import delete, insert, select, update

from littlefold.problem import Problem
from littlefold.store import tables
from littlefold.store.allowed import LONGEST_NAME
from littlefold.store.card import key_of
from littlefold.store.engine import reading, writing
from littlefold.store.sewing_class import SewingClass, class_faults

if TYPE_CHECKING:
    from collections.abc import Callable

    from sqlalchemy import Connection, Engine, Row

Problems = tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class ClassBook:
    """The classes that are kept with the cards of one box."""

    engine: Engine

    def classes(self) -> tuple[SewingClass, ...]:
        """All classes, in alphabetical order."""
        with reading(self.engine) as connection:
            rows = sorted(connection.execute(select(tables.sewing_class)), key=lambda row: row.key)
            return tuple(_read(connection, row) for row in rows)

    def one(self, name: str) -> SewingClass | Problem:
        """The class of that name."""
        with reading(self.engine) as connection:
            row = _row(connection, key_of(name))
            return _unknown(name) if row is None else _read(connection, row)

    def add(self, new: SewingClass) -> Problems:
        """Puts a new class in; the problems say why it was not."""
        faults = class_faults(new)
        if faults:
            return faults
        with writing(self.engine) as connection:
            if _row(connection, new.key) is not None:
                return (_there(new.name),)
            return write_class(connection, new)

    def change(
        self, name: str, revise: Callable[[SewingClass], SewingClass | Problem]
    ) -> SewingClass | Problems:
        """Changes a class, and returns it as it is kept."""
        with writing(self.engine) as connection:
            row = _row(connection, key_of(name))
            if row is None:
                return (_unknown(name),)
            old = _read(connection, row)
            new = revise(old)
            if isinstance(new, Problem):
                return (new,)
            faults = (
                class_faults(new) or _taken(connection, old, new) or _rewrite(connection, row.id, old, new)
            )
            return faults or new

    def remove(self, name: str) -> Problem | None:
        """Removes a class; the cards of its pupils stay."""
        with writing(self.engine) as connection:
            row = _row(connection, key_of(name))
            if row is not None:
                connection.execute(delete(tables.sewing_class).filter_by(id=row.id))
        return _unknown(name) if row is None else None


def write_class(connection: Connection, new: SewingClass, sample: str | None = None) -> Problems:
    """Writes a new class within a transaction; the problems say which pupils have no card, and nothing is written."""
    children, faults = _children(connection, new)
    if not faults:
        row = {"key": new.key, "name": new.name, "recipe": new.recipe, "sample": sample}
        added = connection.execute(insert(tables.sewing_class), row).inserted_primary_key
        assert added is not None, "every class gets a number"  # noqa: S101 - our own mistake
        _write_parts(connection, added[0], new, children)
    return faults


def _rewrite(connection: Connection, number: int, old: SewingClass, new: SewingClass) -> Problems:
    children, faults = _children(connection, new)
    if faults or old == new:
        return faults
    row: dict[str, Any] = {"key": new.key, "name": new.name, "recipe": new.recipe}
    connection.execute(update(tables.sewing_class).filter_by(id=number), row)
    changed = update(tables.sewing_class).where(
        tables.sewing_class.c.id == number, tables.sewing_class.c.sample.is_not(None)
    )
    connection.execute(changed, {"sample": "changed"})
    for part in (tables.pupil, tables.class_choice):
        connection.execute(delete(part).filter_by(sewing_class=number))
    _write_parts(connection, number, new, children)
    return ()


def _write_parts(connection: Connection, number: int, new: SewingClass, children: tuple[int, ...]) -> None:
    pupils = [{"sewing_class": number, "nth": nth, "child": child} for nth, child in enumerate(children)]
    choices = [
        {"sewing_class": number, "nth": nth, "name": name, "word": word}
        for nth, (name, word) in enumerate(new.choices)
    ]
    for part, rows in ((tables.pupil, pupils), (tables.class_choice, choices)):
        if rows:
            connection.execute(insert(part), rows)


def _children(connection: Connection, one: SewingClass) -> tuple[tuple[int, ...], Problems]:
    """The numbers of the pupils' cards, and a problem for each that has none."""
    known = {row.key: row.id for row in connection.execute(select(tables.child.c.key, tables.child.c.id))}
    missing = tuple(name for name in one.pupils if key_of(name) not in known)
    found = dict.fromkeys(known[key_of(name)] for name in one.pupils if key_of(name) in known)
    return tuple(found), tuple(
        Problem("child-not-known", f"There is no card of “{name[:LONGEST_NAME]}”.") for name in missing
    )


def _row(connection: Connection, key: str) -> Row[Any] | None:
    key = key.replace("\0", "")  # no database holds such a sign
    return connection.execute(select(tables.sewing_class).filter_by(key=key)).one_or_none()


def _read(connection: Connection, row: Row[Any]) -> SewingClass:
    pupil, child, choice = tables.pupil, tables.child, tables.class_choice
    names = connection.execute(
        select(child.c.name)
        .join(pupil, pupil.c.child == child.c.id)
        .filter(pupil.c.sewing_class == row.id)
        .order_by(pupil.c.nth)
    )
    chosen = connection.execute(select(choice).filter_by(sewing_class=row.id).order_by(choice.c.nth))
    choices = tuple((one.name, one.word) for one in chosen)
    return SewingClass(row.name, row.recipe, choices, tuple(one.name for one in names))


def _taken(connection: Connection, old: SewingClass, new: SewingClass) -> Problems:
    is_taken = old.key != new.key and _row(connection, new.key) is not None
    return (_there(new.name),) if is_taken else ()


def _there(name: str) -> Problem:
    return Problem("class-twice", f"There is a class “{name}” already. Take another name.")


def _unknown(name: str) -> Problem:
    return Problem("class-not-known", f"There is no class “{name[:LONGEST_NAME]}”.")
