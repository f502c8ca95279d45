"""The sample in the box: laid out once in a new box, and taken away without touching what is the maker's own.

A sample card or class that is changed is remembered as changed, so that it is taken away only where she says so.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from sqlalchemy import delete, func, insert, select, update

from littlefold.store import tables
from littlefold.store.box import put_in
from littlefold.store.class_book import write_class
from littlefold.store.engine import reading, writing

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from littlefold.store.box import CardBox
    from littlefold.store.card import Card
    from littlefold.store.sewing_class import SewingClass

MARK: Final = "sample"
AS_GIVEN, CHANGED = "as given", "changed"


@dataclass(frozen=True, slots=True)
class Sample:
    """What of the sample is in the box: names of children and classes, as they were given and changed since."""

    children: tuple[str, ...] = ()
    changed_children: tuple[str, ...] = ()
    classes: tuple[str, ...] = ()
    changed_classes: tuple[str, ...] = ()

    @property
    def is_there(self) -> bool:
        """Whether any of it is left."""
        return bool(self.children or self.changed_children or self.classes or self.changed_classes)


def is_new(box: CardBox) -> bool:
    """Whether the sample may be laid out: nobody has decided about it, and no card is in the box.

    A box that has cards before the sample was ever offered is marked, so that it stays without one for good.
    """
    with writing(box.engine) as connection:
        if _mark(connection) is not None:
            return False
        empty = not connection.execute(select(func.count()).select_from(tables.child)).scalar_one()
        if not empty:
            connection.execute(insert(tables.mark), {"name": MARK, "word": "not wanted"})
        return empty


def lay_out(box: CardBox, cards: tuple[Card, ...], classes: tuple[SewingClass, ...]) -> bool:
    """Puts the sample in, whole or not at all; whether it did.  It is done once in the life of a box."""
    with writing(box.engine) as connection:
        if _mark(connection) is not None:
            return False
        connection.execute(insert(tables.mark), {"name": MARK, "word": "laid out"})
        for card in cards:
            connection.execute(
                insert(tables.sample_child), {"child": put_in(connection, card), "state": AS_GIVEN}
            )
        for one in classes:
            faults = write_class(connection, one, AS_GIVEN)
            assert not faults, faults  # noqa: S101 - the sample is our own
    return True


def sample_in(box: CardBox) -> Sample:
    """What of the sample is in the box."""
    child, sample, a_class = tables.child, tables.sample_child, tables.sewing_class
    with reading(box.engine) as connection:
        asked = (
            select(child.c.name, sample.c.state)
            .join(sample, sample.c.child == child.c.id)
            .order_by(child.c.key)
        )
        children = [(row.name, row.state) for row in connection.execute(asked)]
        rows = connection.execute(
            select(a_class).where(a_class.c.sample.is_not(None)).order_by(a_class.c.key)
        )
        classes = [(row.name, row.sample) for row in rows]
    return Sample(*_parted(children), *_parted(classes))


def _parted(found: list[tuple[str, str]]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    given = tuple(name for name, state in found if state == AS_GIVEN)
    return given, tuple(name for name, state in found if state != AS_GIVEN)


def take_away(box: CardBox, *, also_changed: bool = False) -> Sample:
    """Takes the sample away; what she changed becomes her own, unless that is to go too.

    Returns:
        What stayed with her.
    """
    found = sample_in(box)
    states = (AS_GIVEN, CHANGED) if also_changed else (AS_GIVEN,)
    sample, a_class = tables.sample_child, tables.sewing_class
    with writing(box.engine) as connection:
        gone = select(sample.c.child).where(sample.c.state.in_(states))
        connection.execute(delete(a_class).where(a_class.c.sample.in_(states)))
        connection.execute(delete(tables.child).where(tables.child.c.id.in_(gone)))
        connection.execute(delete(sample))
        connection.execute(update(a_class).values(sample=None))
        connection.execute(update(tables.mark).filter_by(name=MARK), {"word": "taken away"})
    return Sample() if also_changed else Sample((), found.changed_children, (), found.changed_classes)


def _mark(connection: Connection) -> str | None:
    return connection.execute(select(tables.mark.c.word).filter_by(name=MARK)).scalar_one_or_none()
