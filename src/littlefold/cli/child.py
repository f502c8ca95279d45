"""`littlefold child`: cards made, looked at, added to, taken out and in again."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from littlefold.body.child import read_reading
from littlefold.body.plausible import examine
from littlefold.body.tape import read_length
from littlefold.cli.ages import read_day
from littlefold.cli.box import the_box
from littlefold.cli.card_words import card_record, print_card
from littlefold.cli.files import read_text, write_whole
from littlefold.cli.words import aside, count_words, print_document, print_findings, to_person
from littlefold.problem import Problem, has_errors
from littlefold.store import (
    Card,
    CardBox,
    Fitting,
    Measured,
    Note,
    cards_from_json,
    cards_to_json,
    readings_from_csv,
    readings_to_csv,
)

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import date
    from pathlib import Path

    from littlefold.body.measurements import Sex

Problems = tuple[Problem, ...]


def today() -> date:
    """The day it is here."""
    return datetime.now(tz=UTC).astimezone().date()


def refuse(*problems: Problem) -> int:
    """Says what cannot be done; the exit status for it."""
    print_findings(problems, aside())
    return 2


def add_child(name: str, born: str | None, sex: Sex | None) -> int:
    """Makes a card; returns the exit status."""
    birthday = None if born is None else _birthday(born)
    if isinstance(birthday, Problem):
        return refuse(birthday)
    return _with_box(lambda box: box.add(Card(name, birthday, sex)), f"There is a card of {name} now.")


def list_children(*, as_data: bool) -> int:
    """Lists the cards."""
    with the_box() as box:
        cards = box if isinstance(box, Problem) else box.cards()
    if isinstance(cards, Problem):
        return refuse(cards)
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
    card = _card(name)
    if isinstance(card, Problem):
        return refuse(card)
    if as_data:
        print_document(card_record(card, today()))
    else:
        print_card(card, today(), to_person())
    return 0


def measure_child(
    name: str, texts: tuple[str, ...], day: str | None, by: str, over: str, *, anyway: bool
) -> int:
    """Puts a set of readings on a card, after they were looked at; what is impossible is kept only if it is meant."""
    taken = today() if day is None else read_day(day)
    pairs = tuple(_reading(text) for text in texts)
    faults = tuple(pair for pair in (*pairs, taken) if isinstance(pair, Problem))
    if faults or isinstance(taken, Problem):
        return refuse(*faults)
    readings = tuple(pair for pair in pairs if not isinstance(pair, Problem))
    card = _card(name)
    if isinstance(card, Problem):
        return refuse(card)
    wrong = (*_twice(readings), *_wrong_day(card, taken))
    if wrong:
        return refuse(*wrong)
    new = Measured(taken, readings, by, over)
    found = examine(card.body(card.on_the_same_day(new)))
    if found:
        print_findings(found, to_person())
    if has_errors(found) and not anyway:
        aside().print("Nothing was kept. Measure again, or say --anyway.")
        return 1
    kept = f"{count_words(len(readings), 'reading')} of {taken} kept."
    others = len(card.on_the_same_day(new).readings) - len(readings)
    if others:
        kept = f"{kept[:-1]}, with {count_words(others, 'other')} of that day."
    return _change(name, lambda old: old.with_measured(old.on_the_same_day(new)), kept)


def check_child(name: str) -> int:
    """Looks at the newest readings of a card for slips."""
    card = _card(name)
    if isinstance(card, Problem):
        return refuse(card)
    found = examine(card.body())
    print_findings(found, to_person())
    return 1 if has_errors(found) else 0


def note_child(name: str, text: str) -> int:
    """Puts a note on a card."""
    return _change(name, lambda card: card.with_note(Note(today(), text)), "Noted.")


def fit_child(name: str, number: int, showed: str, let_down: str | None) -> int:
    """Keeps what a fitting showed, and what is left in the hem."""
    left = None if let_down is None else read_length(let_down)
    if isinstance(left, Problem):
        return refuse(left)

    def fitted(card: Card) -> Card | Problem:
        if not 1 <= number <= len(card.drafts):
            return no_draft(card, number)
        return card.with_fitting(number, Fitting(today(), showed), left)

    return _change(name, fitted, "The fitting is kept.")


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
    return _with_box(lambda box: box.add(*cards), f"{count_words(len(cards), 'card')} taken in.")


def erase_child(name: str) -> int:
    """Erases a child."""

    def erased(box: CardBox) -> Problems:
        fault = box.erase(name)
        return () if fault is None else (fault,)

    return _with_box(erased, f"Nothing is left of {name} in the box and its backups.")


def correct_child(name: str, new_name: str | None, born: str | None, sex: Sex | None) -> int:
    """Corrects what stands at the head of a card."""
    birthday = None if born is None else _birthday(born)
    if isinstance(birthday, Problem):
        return refuse(birthday)

    def corrected(card: Card) -> Card | Problem:
        first = min((one.day for one in card.measured), default=None)
        if birthday is not None and first is not None and first < birthday:
            return Problem(
                "measured-before-birth",
                f"{card.name} was measured on {first}, before {birthday}. Look at the year.",
            )
        return replace(card, name=new_name or card.name, born=birthday or card.born, sex=sex or card.sex)

    return _change(name, corrected, "Corrected.")


def _card(name: str) -> Card | Problem:
    with the_box() as box:
        return box if isinstance(box, Problem) else box.card(name)


def _with_box(work: Callable[[CardBox], Problems], done: str) -> int:
    with the_box() as box:
        faults = (box,) if isinstance(box, Problem) else work(box)
    if faults:
        return refuse(*faults)
    aside().print(done, markup=False)
    return 0


def _change(name: str, revise: Callable[[Card], Card | Problem], done: str) -> int:
    def changed(box: CardBox) -> Problems:
        found = box.change(name, revise)
        return found if isinstance(found, tuple) else ()

    return _with_box(changed, done)


def _birthday(text: str) -> date | Problem:
    day = read_day(text)
    if not isinstance(day, Problem) and day > today():
        return Problem("birth-date-ahead", f"Born {day} is still to come. Look at the year.")
    return day


def _twice(readings: tuple[tuple[str, float], ...]) -> Problems:
    names = [name for name, _ in readings]
    again = dict.fromkeys(name for name in names if names.count(name) > 1)
    return tuple(
        Problem("option-not-understood", f"{name} is given twice. Say each measurement once.")
        for name in again
    )


def _wrong_day(card: Card, day: date) -> Problems:
    if day > today():
        return (Problem("measured-ahead", f"{day} is still to come. Look at the day of measuring."),)
    if card.born is not None and day < card.born:
        message = f"{card.name} was born on {card.born}, after {day}. Look at both days."
        return (Problem("measured-before-birth", message),)
    return ()


def _reading(text: str) -> tuple[str, float] | Problem:
    name, equals, length = text.partition("=")
    if not equals:
        return Problem("option-not-understood", f'{text[:40]}: write a measurement, "=" and a length.')
    reading = read_reading(name.strip(), length)
    return reading if isinstance(reading, Problem) else (name.strip(), reading.mm)
