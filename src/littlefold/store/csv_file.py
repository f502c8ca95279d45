"""Tape readings as a table for a spreadsheet: one line a reading, CSV after RFC 4180, lengths in millimetres.

A cell that a spreadsheet could take for a formula gets an apostrophe before it, which is taken off again on reading.
"""

from __future__ import annotations

import csv
import io
import math
from datetime import date
from typing import TYPE_CHECKING, Final

from littlefold.problem import Place, Problem
from littlefold.store.card import Card, Measured, OwnMeasurement, key_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.body.measurements import Sex

HEADING: Final = ("name", "born", "sex", "set", "day", "by", "over", "measurement", "mm", "recipe", "how")
"""The last two say of a recipe's own measurement whose it is and how it is taken."""

_OLD_HEADING: Final = HEADING[:-2]

_FORMULA: Final = tuple("=+-@\t\r'")
_SEXES: Final[dict[str, Sex | None]] = {"": None, "girl": "girl", "boy": "boy"}


def readings_to_csv(cards: tuple[Card, ...]) -> str:
    """All tape readings of these cards; notes and drafts do not fit into a table."""
    out = io.StringIO()
    table = csv.writer(out)
    table.writerow(HEADING)
    table.writerows([_guarded(cell) for cell in row] for card in cards for row in _rows(card))
    return out.getvalue()


def readings_from_csv(text: str) -> tuple[Card, ...] | tuple[Problem, ...]:
    """The cards in such a table, readings only; or problems, and then no card."""
    try:
        heading, *rows = csv.reader(io.StringIO(text), strict=True)
    except (csv.Error, ValueError):
        return (Problem("readings-unreadable", "This is no table of readings."),)
    if tuple(heading) not in (HEADING, _OLD_HEADING):
        return (Problem("readings-heading", f"The first line of readings is: {','.join(HEADING)}."),)
    cards: dict[str, Card] = {}
    sets: dict[str, dict[str, Measured]] = {}
    problems: list[Problem] = []
    for line, row in enumerate(rows, start=2):
        fault = _take(row, len(heading), cards, sets)
        if fault:
            problems.append(Problem("readings-line", f"Line {line}: {fault}", place=Place(line=line)))
    if problems:
        return tuple(problems)
    return tuple(_with_sets(card, sets.get(key, {})) for key, card in cards.items())


def _rows(card: Card) -> Iterator[tuple[str, ...]]:
    child = (card.name, card.born.isoformat() if card.born else "", card.sex or "")
    if not card.measured:
        yield (*child, *[""] * 8)
    for number, one in enumerate(card.measured, start=1):
        taken = (str(number), one.day.isoformat(), one.by, one.over)
        meanings = {own.name: (own.recipe, own.how) for own in one.own}
        for name, mm in one.readings or (("", math.nan),):
            yield (*child, *taken, name, "" if math.isnan(mm) else repr(mm), *meanings.get(name, ("", "")))


def _take(row: list[str], wide: int, cards: dict[str, Card], sets: dict[str, dict[str, Measured]]) -> str:
    """Takes one line in; returns what is wrong with it."""
    if len(row) != wide:
        return f"it has {len(row)} cells, the heading {wide}."
    name, born, sex, number, day, by, over, measurement, mm, *meaning = map(_plain, row)
    if sex not in _SEXES:
        return f"sex is “{sex}”; it is girl, boy, or empty."
    try:
        card = Card(name, date.fromisoformat(born) if born else None, _SEXES[sex])
        known = cards.setdefault(card.key, card)
        if card != known:
            return f"{name} was born otherwise, or is written otherwise, further up."
        if number:
            readings = ((measurement, float(mm)),) if measurement else ()
            own = (OwnMeasurement(measurement, *meaning),) if any(meaning) else ()
            one = Measured(date.fromisoformat(day), readings, by, over, own)
            return _take_set(one, number, sets.setdefault(key_of(name), {}))
    except ValueError:
        return "a date is not like 2024-03-31, or a length is no number of millimetres."
    return ""


def _take_set(one: Measured, number: str, sets: dict[str, Measured]) -> str:
    old = sets.setdefault(number, Measured(one.day, (), one.by, one.over))
    if (old.day, old.by, old.over) != (one.day, one.by, one.over):
        return f"set {number} has another day or hand further up."
    readings, own = (*old.readings, *one.readings), (*old.own, *one.own)
    sets[number] = Measured(one.day, readings, one.by, one.over, own)
    return ""


def _with_sets(card: Card, sets: dict[str, Measured]) -> Card:
    return Card(card.name, card.born, card.sex, tuple(sets.values()))


def _guarded(cell: str) -> str:
    return f"'{cell}" if cell.startswith(_FORMULA) else cell


def _plain(cell: str) -> str:
    return cell.removeprefix("'")
