"""`littlefold child forecast`: how a child will grow, told, drawn and printed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from rich.table import Table

from littlefold.body.by_age import said_age
from littlefold.body.child import unknown_measurement
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.room import Room, room_to_grow
from littlefold.body.tape import ONE_MM, say_length
from littlefold.booklet.growth_picture import growth_picture
from littlefold.booklet.growth_tucks import growth_tucks, tucks_said
from littlefold.cli.ages import read_day
from littlefold.cli.box import the_box
from littlefold.cli.child import refuse, today
from littlefold.cli.files import write_whole
from littlefold.cli.words import aside, print_document, to_person
from littlefold.draft.sentence import Speech, languages
from littlefold.problem import Problem
from littlefold.sheet.svg import write_svg
from littlefold.store.taken import printed, taken_of

if TYPE_CHECKING:
    from datetime import date
    from pathlib import Path

    from littlefold.store import Card

SOON = 12.0  # months ahead, where no day is named
PICTURES = (".svg", ".pdf")  # a growth picture alone, or the whole card sheet


@dataclass(frozen=True, slots=True)
class Shown:
    """Which measurement a picture shows, in which units and language."""

    of: str
    speech: Speech

    @property
    def faults(self) -> tuple[Problem, ...]:
        """What of it there is not."""
        found = (unknown_measurement(self.of),) if self.of not in REGISTER else ()
        known = languages()
        said = f"--language {self.speech.language}: it is one of {', '.join(known)}."
        return found if self.speech.language in known else (*found, Problem("option-not-understood", said))


def forecast_child(name: str, on: str | None, out: Path | None, shown: Shown, *, as_data: bool) -> int:
    """Tells how a child will grow; returns the exit status."""
    if shown.faults:
        return refuse(*shown.faults, as_data=as_data)
    if out is not None and out.suffix.lower() not in PICTURES:
        wrong = Problem("option-not-understood", f"--out {out}: it ends in {' or '.join(PICTURES)}.")
        return refuse(wrong, as_data=as_data)
    day = None if on is None else read_day(on)
    with the_box() as box:
        card = box if isinstance(box, Problem) else box.card(name)
    if isinstance(card, Problem) or isinstance(day, Problem):
        return refuse(*(one for one in (card, day) if isinstance(one, Problem)), as_data=as_data)
    room = _room(card, day)
    if isinstance(room, Problem):
        return refuse(room, as_data=as_data)
    if out is not None:
        fault = write_whole(out, _drawn(card, room, out.suffix.lower(), shown))
        if fault is not None:
            return refuse(fault, as_data=as_data)
        aside().print(f"Growth of {card.name}: {out}", markup=False)
    if as_data:
        print_document(_record(room, shown.speech.units))
    else:
        _print(card, room, shown.speech.units)
    return 0


def _room(card: Card, day: date | None) -> Room | Problem:
    if card.born is None:
        return Problem("age-unknown", f"{card.name} has no birth date on the card; growth needs one.")
    newest = card.latest()
    if newest is None:
        return Problem("never-measured", f"{card.name} was never measured; growth begins at a reading.")
    if newest.day < card.born:
        message = (
            f"{card.name} was born on {card.born}, after the readings of {newest.day}. Look at both days."
        )
        return Problem("measured-before-birth", message)
    age = card.age(today() if day is None else day)
    if age is None:
        return Problem("forecast-backwards", f"{card.name} was born on {card.born}. Name a later day.")
    return room_to_grow(card.body(), age + (SOON if day is None else 0.0))


def _print(card: Card, room: Room, units: Literal["cm", "in"]) -> None:
    mark = ONE_MM if units == "cm" else None
    console, later = to_person(), room.later
    now = later.floor.age_months or 0.0
    console.print(
        f"{card.name}, measured at {said_age(now)}, forecast for {said_age(later.age_months)}", markup=False
    )
    table = Table(pad_edge=False)
    for heading in ("", "measured", "then, about", "90 of 100 lie between", "room"):
        table.add_column(heading, justify="left" if not heading else "right")
    for name in NAMES:
        low, high = (say_length(mm, units, mark) for mm in map(round, later.range(name)))
        about = "" if name in card.body() else "about "
        then = say_length(round(later.body.mm(name)), units, mark)
        row = (say_length(round(later.floor.mm(name)), units), then, f"{low} to {high}")
        table.add_row(
            REGISTER[name].title, about + row[0], *row[1:], say_length(round(room.gain(name).expected), units)
        )
    console.print(table)
    console.print(
        f"Size {room.size_now} by height when measured, {room.size_then} then, at most {room.size_at_most}."
    )
    console.print(tucks_said(room, Speech(units)), markup=False)


def _record(room: Room, units: Literal["cm", "in"]) -> dict[str, Any]:
    later, held = room.later, growth_tucks(room, units)
    return {
        "age_months": later.age_months,
        "sizes": {"now": room.size_now, "then": room.size_then, "at_most": room.size_at_most},
        "tucks": {"depth_mm": held.depth, "counts": dict(held.counts)},
        "measurements": {
            name: {
                "now_mm": round(later.floor.mm(name), 1),
                "mm": round(later.body.mm(name), 1),
                "range_mm": [round(mm, 1) for mm in later.range(name)],
            }
            for name in NAMES
        },
    }


def _drawn(card: Card, room: Room, ending: str, shown: Shown) -> bytes:
    if ending == ".svg":
        return write_svg(growth_picture(taken_of(card), room.later, shown.of, speech=shown.speech)).encode()
    return printed(card, room, today(), shown.speech)
