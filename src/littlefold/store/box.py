"""The card box: cards in, cards out, each change whole or not at all.

Every change reads, revises and writes within one transaction that nobody else's can come between, so that two writers
never undo each other's work.
"""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from typing import TYPE_CHECKING, Any

from sqlalchemy import delete, insert, select, update

from littlefold.problem import Problem
from littlefold.store import tables
from littlefold.store.allowed import LONGEST_NAME, faults_of
from littlefold.store.card import Card, key_of
from littlefold.store.engine import reading, writing
from littlefold.store.rows import read_card, write_parts
from littlefold.store.traces import leave_no_trace

if TYPE_CHECKING:
    from collections.abc import Callable

    from sqlalchemy import Connection, Engine, Row

    from littlefold.store.address import Address


@dataclass(frozen=True, slots=True)
class CardBox:
    """All cards at one address, opened by `open_box`; `remarks` tell what opening it did, such as a backup."""

    engine: Engine
    address: Address
    remarks: tuple[Problem, ...] = ()

    def names(self) -> tuple[str, ...]:
        """The names of all children, in alphabetical order."""
        with reading(self.engine) as connection:
            rows = connection.execute(select(tables.child.c.name, tables.child.c.key))
            return tuple(row.name for row in sorted(rows, key=lambda row: row.key))

    def cards(self) -> tuple[Card, ...]:
        """All cards, as they stood at one moment, in alphabetical order."""
        with reading(self.engine) as connection:
            rows = sorted(connection.execute(select(tables.child)), key=lambda row: row.key)
            return tuple(read_card(connection, row) for row in rows)

    def card(self, name: str) -> Card | Problem:
        """The card of a child."""
        with reading(self.engine) as connection:
            row = _row(connection, key_of(name))
            if row is not None:
                return read_card(connection, row)
        return self._unknown(name)

    def add(self, *cards: Card) -> tuple[Problem, ...]:
        """Puts new cards in, all or none; the problems say why none was."""
        faults = tuple(fault for card in cards for fault in faults_of(card))
        if faults:
            return faults
        with writing(self.engine) as connection:
            faults = _twice(cards) or _there_already(connection, cards)
            for card in () if faults else cards:
                put_in(connection, card)
        return faults

    def change(self, name: str, revise: Callable[[Card], Card | Problem]) -> Card | tuple[Problem, ...]:
        """Changes a card, and returns it as it is kept.

        Args:
            name: Of the child.
            revise: The card as it should be, from the card as it is; or why it cannot be.
        """
        with writing(self.engine) as connection:
            row = _row(connection, key_of(name))
            if row is None:
                return (self._unknown(name),)
            old = read_card(connection, row)
            new = revise(old)
            if isinstance(new, Problem):
                return (new,)
            faults = faults_of(new) or _taken_by_another(connection, old, new)
            if not faults:
                _update(connection, row.id, old, new)
        return faults or new

    def erase(self, name: str) -> Problem | None:
        """Erases all that is known of a child, here and in the backups."""
        with writing(self.engine) as connection:
            row = _row(connection, key_of(name))
            if row is not None:
                connection.execute(delete(tables.child).filter_by(id=row.id))
        if row is None:
            return self._unknown(name)
        return leave_no_trace(self.engine, self.address, row.key)

    def close(self) -> None:
        """Lets go of the database."""
        self.engine.dispose()

    def _unknown(self, name: str) -> Problem:
        names = self.names()
        near = get_close_matches(key_of(name), [key_of(each) for each in names], n=1)
        guess = next((f"Did you mean “{each}”?" for each in names if near and key_of(each) == near[0]), "")
        listed = guess or (f"The cards are: {', '.join(names)}." if names else "The box is empty.")
        return Problem("child-not-known", f"There is no card of “{name[:LONGEST_NAME]}”. {listed}")


def _row(connection: Connection, key: str) -> Row[Any] | None:
    return connection.execute(select(tables.child).filter_by(key=key)).one_or_none()


def put_in(connection: Connection, card: Card) -> int:
    """Writes a new card within a transaction; the number of its row."""
    added = connection.execute(insert(tables.child), _child(card)).inserted_primary_key
    assert added is not None, "every child gets a number"  # noqa: S101 - our own mistake
    number: int = added[0]
    write_parts(connection, number, Card(card.name), card)
    return number


def _update(connection: Connection, child: int, old: Card, new: Card) -> None:
    if _child(old) != _child(new):
        connection.execute(update(tables.child).filter_by(id=child), _child(new))
    if old != new:  # what came as a sample and was changed is the maker's own from now on
        connection.execute(update(tables.sample_child).filter_by(child=child), {"state": "changed"})
    write_parts(connection, child, old, new)


def _child(card: Card) -> dict[str, Any]:
    return {"key": card.key, "name": card.name, "born": card.born, "sex": card.sex}


def _twice(cards: tuple[Card, ...]) -> tuple[Problem, ...]:
    keys = [card.key for card in cards]
    return tuple(_taken(card.name) for number, card in enumerate(cards) if card.key in keys[:number])


def _there_already(connection: Connection, cards: tuple[Card, ...]) -> tuple[Problem, ...]:
    return tuple(_taken(card.name) for card in cards if _row(connection, card.key) is not None)


def _taken_by_another(connection: Connection, old: Card, new: Card) -> tuple[Problem, ...]:
    return () if old.key == new.key else _there_already(connection, (new,))


def _taken(name: str) -> Problem:
    return Problem("child-known", f"There is a card of “{name}” already. Add a letter or a second name.")
