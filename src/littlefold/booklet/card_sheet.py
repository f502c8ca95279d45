"""The card sheet: a child's readings, growth pictures and the room to leave, to hang beside the table."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any, Final

from littlefold.body.by_age import said_age
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.tape import ONE_MM, say_length
from littlefold.booklet.growth_picture import growth_picture
from littlefold.drawing import plain
from littlefold.sheet.pdf import typeset
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from datetime import date

    from littlefold.body.measurements import Measurements
    from littlefold.body.room import Room
    from littlefold.booklet.growth_picture import Taken

SMALL: Final = ("chest", "waist", "hip", "head")
"""Measurements whose growth is drawn small, those that were taken."""

SMALL_SIZE: Final = (66.0, 40.0)
"""Width and height of a small picture between its axes [mm]."""

NEWEST: Final = 3  # sets of readings that are printed


def card_sheet(taken: tuple[Taken, ...], room: Room, notes: tuple[str, ...], made: date) -> bytes:
    """The sheet as a PDF on A4.

    Args:
        taken: The sets of readings in order of their days, all with an age.
        room: From the newest of them to the day that is looked ahead to.
        notes: A few words each.
        made: The date on the sheet.
    """
    return typeset(_template(), sheet_data(taken, room, notes, made), made)


def sheet_data(taken: tuple[Taken, ...], room: Room, notes: tuple[str, ...], made: date) -> dict[str, Any]:
    """What the card sheet says, as data for its template."""
    later, newest = room.later, taken[-NEWEST:]
    body = taken[-1].body if taken else later.floor
    drawn = [name for name in SMALL if any(name in one.body for one in taken)]
    return {
        "looks": looks_as_data(),
        "name": plain(body.nickname),
        "made": spoken_date(made),
        "sex": body.sex or "",
        "now": said_age(later.floor.age_months or 0.0),
        "then": said_age(later.age_months),
        "days": [{"day": spoken_date(one.day), "age": said_age(one.age)} for one in newest],
        "rows": [_row(name, newest, room) for name in NAMES],
        "sizes": [str(room.size_now), str(room.size_then), str(room.size_at_most)],
        "stature": drawing_as_data(growth_picture(taken, later, "stature")),
        "small": [
            {
                "title": REGISTER[name].title,
                "picture": drawing_as_data(growth_picture(taken, later, name, SMALL_SIZE)),
            }
            for name in drawn
        ],
        "notes": [plain(note) for note in notes],
    }


def _row(name: str, newest: tuple[Taken, ...], room: Room) -> dict[str, Any]:
    low, high = room.later.range(name)
    gain = room.gain(name)
    return {
        "title": REGISTER[name].title,
        "readings": [_reading(one.body, name) for one in newest],
        "now": _said(room.later.floor.mm(name)),
        "measured": bool(newest) and name in newest[-1].body,
        "then": _said(room.later.body.mm(name)),
        "range": f"{_said(low)} to {_said(high)}",
        "gain": _said(gain.expected),
        "is_width": gain.is_width,
    }


def _reading(body: Measurements, name: str) -> str:
    reading = body.get(name)
    return "" if reading is None else say_length(reading.mm, "cm", ONE_MM).removesuffix(" cm")


def _said(mm: float) -> str:
    return say_length(round(mm), "cm", ONE_MM).removesuffix(" cm")


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.booklet").joinpath("card_sheet.typ").read_text("utf-8")
