"""`littlefold child`: cards made, looked at, added to, taken out and in again."""

from __future__ import annotations

import os
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from littlefold.body.plausible import examine
from littlefold.body.tape import read_length
from littlefold.cli.ages import read_day
from littlefold.cli.box import the_box
from littlefold.cli.card_words import card_record, print_card
from littlefold.cli.files import read_text, write_whole
from littlefold.cli.words import (
    aside,
    count_words,
    print_document,
    print_findings,
    refused,
    to_person,
)
from littlefold.problem import Problem, has_errors
from littlefold.store import (
    Card,
    CardBox,
    Fitting,
    Note,
    address_of,
    birth_fault,
    cards_from_json,
    cards_to_json,
    data_folder,
    not_searchable,
    readings_from_csv,
    readings_to_csv,
    remove_not_searchable,
)

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import date

    from littlefold.body.measurements import Sex

Problems = tuple[Problem, ...]


def today() -> date:
    """The day it is here."""
    return datetime.now(tz=UTC).astimezone().date()


def refuse(*problems: Problem, as_data: bool = False) -> int:
    """Says what cannot be done; the exit status for it."""
    return refused(problems, as_data=as_data)


def add_child(name: str, born: str | None, sex: Sex | None) -> int:
    """Makes a card; returns the exit status."""
    birthday = None if born is None else _birthday(born)
    if isinstance(birthday, Problem):
        return refuse(birthday)
    return with_box(lambda box: box.add(Card(name, birthday, sex)), f"There is a card of {name} now.")


def list_children(*, as_data: bool) -> int:
    """Lists the cards."""
    with the_box() as box:
        cards = box if isinstance(box, Problem) else box.cards()
    if isinstance(cards, Problem):
        return refuse(cards, as_data=as_data)
    if as_data:
        print_document([card_record(card, today()) for card in cards])
        return 0
    console = to_person()
    for card in cards:
        newest = card.latest()
        measured = f"measured {newest.day}" if newest else "not measured yet"
        console.print(f"{card.name:<20} {measured}, {count_words(len(card.drafts), 'draft')}", markup=False)
    if not cards:
        console.print("The box is empty. `littlefold child add NAME` makes the first card.")
    return 0


def show_child(name: str, *, as_data: bool) -> int:
    """Shows a card."""
    card = the_card(name)
    if isinstance(card, Problem):
        return refuse(card, as_data=as_data)
    if as_data:
        print_document(card_record(card, today()))
    else:
        print_card(card, today(), to_person())
    return 0


def check_child(name: str) -> int:
    """Looks at the newest readings of a card for slips."""
    card = the_card(name)
    if isinstance(card, Problem):
        return refuse(card)
    found = examine(card.body())
    print_findings(found, to_person())
    return 1 if has_errors(found) else 0


def note_child(name: str, text: str) -> int:
    """Puts a note on a card."""
    return change_card(name, lambda card: card.with_note(Note(today(), text)), "Noted.")


def fit_child(name: str, number: int, showed: str, let_down: str | None) -> int:
    """Keeps what a fitting showed, and what is left in the hem."""
    left = None if let_down is None else read_length(let_down)
    if isinstance(left, Problem):
        return refuse(left)

    def fitted(card: Card) -> Card | Problem:
        if not 1 <= number <= len(card.drafts):
            return no_draft(card, number)
        return card.with_fitting(number, Fitting(today(), showed), left)

    return change_card(name, fitted, "The fitting is kept.")


def no_draft(card: Card, number: int) -> Problem:
    """That a card has no draft of that number."""
    return Problem(
        "draft-not-known", f"{card.name} has {len(card.drafts)} drafts; there is no draft {number}."
    )


def export_children(names: tuple[str, ...], out: Path) -> int:
    """Writes cards into one file: readings alone where it ends in .csv, else all, as JSON."""
    with the_box() as box:
        if isinstance(box, Problem):
            return refuse(box)
        found = tuple(box.card(name) for name in names) if names else box.cards()
    cards = tuple(card for card in found if isinstance(card, Card))
    if len(cards) < len(found):
        return refuse(*(fault for fault in found if isinstance(fault, Problem)))
    text = readings_to_csv(cards) if out.suffix == ".csv" else cards_to_json(cards)
    fault = write_whole(out, text.encode("utf-8"))
    if fault is not None:
        return refuse(fault)
    out.chmod(0o600)
    aside().print(f"{count_words(len(cards), 'card')} written: {out}", markup=False)
    return 0


def import_children(file: Path) -> int:
    """Takes the cards of a file in, all or none."""
    text = read_text(file)
    if isinstance(text, Problem):
        return refuse(text)
    found = readings_from_csv(text) if file.suffix == ".csv" else cards_from_json(text)
    cards = tuple(card for card in found if isinstance(card, Card))
    if len(cards) < len(found):
        return refuse(*(fault for fault in found if isinstance(fault, Problem)))
    return with_box(lambda box: box.add(*cards), f"{count_words(len(cards), 'card')} taken in.")


def erase_child(name: str, *, damaged_too: bool) -> int:
    """Erases a child, and with it the damaged boxes that cannot be searched for it, where that is wanted."""
    from littlefold.web.forgetting import forget_everywhere

    def erased(box: CardBox) -> Problems:
        card = box.card(name)
        if isinstance(card, Problem):
            return (card,)
        kept = remove_not_searchable(box.address) if damaged_too else None
        fault = box.erase(name)
        forget_everywhere(data_folder(os.environ, Path.home()), name)
        return tuple(one for one in (kept, fault) if one is not None)

    return with_box(erased, f"Nothing is left of {name} in the box and its backups.")


def damaged_boxes() -> tuple[Path, ...]:
    """The damaged files beside the box that may hold cards and that erasing cannot reach."""
    address = address_of(os.environ, Path.home())
    return () if isinstance(address, Problem) else not_searchable(address)


def correct_child(name: str, new_name: str | None, born: str | None, sex: Sex | None) -> int:
    """Corrects what stands at the head of a card."""
    birthday = None if born is None else _birthday(born)
    if isinstance(birthday, Problem):
        return refuse(birthday)

    def corrected(card: Card) -> Card | Problem:
        fault = None if birthday is None else birth_fault(birthday, today(), card)
        return fault or replace(
            card, name=new_name or card.name, born=birthday or card.born, sex=sex or card.sex
        )

    return change_card(name, corrected, "Corrected.")


def the_card(name: str) -> Card | Problem:
    """The card of a child."""
    with the_box() as box:
        return box if isinstance(box, Problem) else box.card(name)


def with_box(work: Callable[[CardBox], Problems], done: str) -> int:
    """Does some work with the box and says so; the exit status."""
    with the_box() as box:
        faults = (box,) if isinstance(box, Problem) else work(box)
    if faults:
        return refuse(*faults)
    aside().print(done, markup=False)
    return 0


def change_card(name: str, revise: Callable[[Card], Card | Problem], done: str) -> int:
    """Changes a card and says so; the exit status."""

    def changed(box: CardBox) -> Problems:
        found = box.change(name, revise)
        return found if isinstance(found, tuple) else ()

    return with_box(changed, done)


def _birthday(text: str) -> date | Problem:
    day = read_day(text)
    return day if isinstance(day, Problem) else birth_fault(day, today()) or day
