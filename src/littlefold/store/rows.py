"""From the parts of a card to rows, and back."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any, Final

from sqlalchemy import delete, insert, select

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.check import Circumstances
from littlefold.problem import Number, Place, Problem, Severity
from littlefold.store import tables
from littlefold.store.card import Card, Fitting, Measured, Note, OwnMeasurement, PastDraft, RecipeText

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sqlalchemy import Connection, Row, Table

Values = dict[str, Any]
Below = tuple[tuple["Table", list[Values]], ...]


@dataclass(frozen=True, slots=True)
class Part:
    """One kind of thing on a card: its table, the tables below it, and how it is written and read.

    Attributes:
        table: Of the things themselves.
        below: The tables of what they consist of.
        written: The row of a thing, and the rows below it in the order of `below`.
        read: The thing, from its row and the rows below it.
    """

    table: Table
    below: tuple[Table, ...]
    written: Callable[[Any], tuple[Values, tuple[list[Values], ...]]]
    read: Callable[[Any, Sequence[Sequence[Any]]], Any]

    def write(self, connection: Connection, child: int, old: Sequence[Any], new: Sequence[Any]) -> None:
        """Writes what differs between what a card had and what it has; things that stayed are left alone."""
        for place in range(max(len(old), len(new))):
            before, after = (things[place] if place < len(things) else None for things in (old, new))
            if before == after:
                continue
            where = {"child": child, "place": place}
            if before is not None:
                connection.execute(delete(self.table).filter_by(**where))
            if after is not None:
                self._insert(connection, where, after)

    def _insert(self, connection: Connection, where: Values, thing: Any) -> None:
        row, below = self.written(thing)
        connection.execute(insert(self.table), where | row)
        for table, rows in zip(self.below, below, strict=True):
            numbered = [where | {"nth": nth} | each for nth, each in enumerate(rows)]
            if numbered:
                connection.execute(insert(table), numbered)

    def read_all(self, connection: Connection, child: int) -> tuple[Any, ...]:
        """All things of this kind on a child's card, in order."""
        rows = connection.execute(select(self.table).filter_by(child=child).order_by(self.table.c.place))
        below = [_by_place(connection, table, child) for table in self.below]
        return tuple(self.read(row, [each.get(row.place, []) for each in below]) for row in rows)


def _by_place(connection: Connection, table: Table, child: int) -> Mapping[int, list[Row[Any]]]:
    found: dict[int, list[Row[Any]]] = {}
    for row in connection.execute(select(table).filter_by(child=child).order_by(table.c.place, table.c.nth)):
        found.setdefault(row.place, []).append(row)
    return found


def _measured(one: Measured) -> tuple[Values, tuple[list[Values], ...]]:
    row = {"day": one.day, "taken_by": one.by, "over": one.over}
    own = [{"name": each.name, "recipe": each.recipe, "how": each.how} for each in one.own]
    return row, ([{"name": name, "mm": mm} for name, mm in one.readings], own)


def _read_measured(row: Any, below: Sequence[Sequence[Any]]) -> Measured:
    readings, own = below
    return Measured(
        row.day,
        tuple((each.name, each.mm) for each in readings),
        row.taken_by,
        row.over,
        tuple(OwnMeasurement(each.name, each.recipe, each.how) for each in own),
    )


def _note(note: Note) -> tuple[Values, tuple[list[Values], ...]]:
    return {"day": note.day, "text": note.text}, ()


def _read_note(row: Any, _: Sequence[Sequence[Any]]) -> Note:
    return Note(row.day, row.text)


def _draft(draft: PastDraft) -> tuple[Values, tuple[list[Values], ...]]:
    plain = ("made", "tape", "language", "pattern_hash", "let_down", "follows", "units")
    body = {"age_months": draft.body.age_months, "sex": draft.body.sex, "nickname": draft.body.nickname}
    readings = [
        {"name": name, "mm": reading.mm, "origin": reading.origin.value, "spread": reading.spread_mm}
        for name, reading in draft.body.readings
    ]
    return {name: getattr(draft, name) for name in plain} | body | _around(draft.around), (
        [{"name": recipe.name, "text": recipe.text} for recipe in draft.recipes],
        [_choice(name, value) for name, value in draft.choices],
        readings,
        [{"day": fitting.day, "showed": fitting.showed} for fitting in draft.fittings],
        [_finding(problem) for problem in draft.findings],
    )


def _around(found: Circumstances | None) -> Values:
    if found is None:
        return dict.fromkeys(("region", "us_size", "paper_width", "paper_height", "cloth_width"))
    width, height = found.paper or (None, None)
    known = {"region": found.region, "us_size": found.us_size, "cloth_width": found.cloth_width}
    return known | {"paper_width": width, "paper_height": height}


def _read_around(row: Any) -> Circumstances | None:
    if row.region is None:
        return None
    paper = None if row.paper_width is None else (row.paper_width, row.paper_height)
    return Circumstances(row.region, row.us_size, paper, row.cloth_width)


def _finding(problem: Problem) -> Values:
    plain = ("code", "message", "rule", "cure")
    numbers = [[number.name, number.value, number.unit] for number in problem.numbers]
    return (
        {name: getattr(problem, name) for name in plain}
        | {"severity": problem.severity.value, "numbers": json.dumps(numbers, ensure_ascii=False)}
        | asdict(problem.place)
    )


def _read_finding(row: Any) -> Problem:
    return Problem(
        row.code,
        row.message,
        Severity(row.severity),
        Place(row.file, row.line, row.column, row.piece, row.edge, row.point),
        tuple(Number(*number) for number in json.loads(row.numbers)),
        row.rule,
        row.cure,
    )


def _choice(name: str, value: float | str) -> Values:
    word = value if isinstance(value, str) else None
    return {"name": name, "number": None if word is not None else float(value), "word": word}


def _read_draft(row: Any, below: Sequence[Sequence[Any]]) -> PastDraft:
    recipes, choices, readings, fittings, findings = below
    return PastDraft(
        made=row.made,
        recipes=tuple(RecipeText(each.name, each.text) for each in recipes),
        body=Measurements(
            tuple((each.name, Reading(each.mm, Origin(each.origin), each.spread)) for each in readings),
            row.age_months,
            row.sex,
            row.nickname,
        ),
        choices=tuple((each.name, each.number if each.word is None else each.word) for each in choices),
        tape=row.tape,
        language=row.language,
        pattern_hash=row.pattern_hash,
        let_down=row.let_down,
        follows=row.follows,
        fittings=tuple(Fitting(each.day, each.showed) for each in fittings),
        units=row.units,
        around=_read_around(row),
        findings=tuple(map(_read_finding, findings)),
    )


MEASURED: Final = Part(tables.measured, (tables.reading, tables.own_measurement), _measured, _read_measured)
NOTES: Final = Part(tables.note, (), _note, _read_note)
DRAFTS: Final = Part(
    tables.draft,
    (tables.draft_recipe, tables.draft_choice, tables.draft_reading, tables.fitting, tables.draft_finding),
    _draft,
    _read_draft,
)


def write_parts(connection: Connection, child: int, old: Card, new: Card) -> None:
    """Writes what differs between two states of one card, the row of the child apart."""
    MEASURED.write(connection, child, old.measured, new.measured)
    NOTES.write(connection, child, old.notes, new.notes)
    DRAFTS.write(connection, child, old.drafts, new.drafts)


def read_card(connection: Connection, row: Any) -> Card:
    """The whole card of a child, from the child's row."""
    return Card(
        row.name,
        row.born,
        row.sex,
        MEASURED.read_all(connection, row.id),
        NOTES.read_all(connection, row.id),
        DRAFTS.read_all(connection, row.id),
    )
