"""A card as a person reads it in a terminal, and as data."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from rich.table import Table
from rich.text import Text

from littlefold.body.by_age import said_age
from littlefold.body.register import REGISTER
from littlefold.body.tape import say_length
from littlefold.store import cards_to_json

if TYPE_CHECKING:
    from datetime import date

    from rich.console import Console

    from littlefold.store import Card, PastDraft

NEWEST = 4  # sets of readings that are shown beside each other


def card_record(card: Card, today: date) -> dict[str, Any]:
    """A card as data: as in its file, and the age of today."""
    record: dict[str, Any] = json.loads(cards_to_json((card,)))["cards"][0]
    return record | {"age_months_today": card.age(today)}


def print_card(card: Card, today: date, console: Console) -> None:
    """Prints a card: who, the newest readings beside each other, notes, drafts."""
    age = card.age(today)
    who = (card.name, f"born {card.born}" if card.born else "", said_age(age) if age else "", card.sex or "")
    console.print(Text(", ".join(filter(None, who)), "bold"))
    if card.measured:
        console.print(_readings(card))
    for own in {each.name: each for one in card.day_by_day() for each in one.own}.values():
        console.print(Text(f"{own.name}, for {own.recipe}: {own.how}"))
    for note in card.notes:
        console.print(Text(f"{note.day}  {note.text}"))
    for number, draft in enumerate(card.drafts, start=1):
        console.print(Text(f"draft {number}  {_draft(draft)}"))
        for fitting in draft.fittings:
            console.print(Text(f"          {fitting.day}  {fitting.showed}", "italic"))


def _readings(card: Card) -> Table:
    newest = sorted(card.measured, key=lambda one: one.day)[-NEWEST:]
    table = Table(pad_edge=False)
    table.add_column("")
    for one in newest:
        taken = " ".join(filter(None, (one.by and f"by {one.by}", one.over and f"over {one.over}")))
        table.add_column(Text("\n".join(filter(None, (one.day.isoformat(), taken)))), justify="right")
    sets = [dict(one.readings) for one in newest]
    names = [name for name in REGISTER if any(name in one for one in sets)]
    names += [name for one in sets for name in one if name not in REGISTER]
    for name in dict.fromkeys(names):
        title = REGISTER[name].title if name in REGISTER else name
        table.add_row(title, *(say_length(one[name]) if name in one else "" for one in sets))
    return table


def _draft(draft: PastDraft) -> str:
    chosen = ", ".join(
        f"{name} {value if isinstance(value, str) else f'{value:g}'}" for name, value in draft.choices
    )
    after = f"after the fitting of draft {draft.follows}" if draft.follows else ""
    hem = f"{say_length(draft.let_down)} left in the hem" if draft.let_down else ""
    return "; ".join(filter(None, (f"{draft.made}  {draft.recipes[0].name}", chosen, after, hem)))
