"""The card sheet: a child's readings, growth pictures and the room to leave, to hang beside the table."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any, Final

from littlefold.body.register import NAMES, register_in
from littlefold.body.tape import ONE_MM, say_length
from littlefold.booklet.growth_picture import growth_picture
from littlefold.booklet.growth_tucks import tucks_said
from littlefold.booklet.wording import wording
from littlefold.draft.sentence import Speech
from littlefold.drawing import plain
from littlefold.sheet.pdf import typeset
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from datetime import date

    from littlefold.body.measurements import Measurements, Sex
    from littlefold.body.room import Room
    from littlefold.booklet.growth_picture import Taken

SMALL: Final = ("chest", "waist", "hip", "head", "upper_arm")
"""Measurements whose growth is drawn small, those that were taken."""

SMALL_SIZE: Final = (66.0, 40.0)
"""Width and height of a small picture between its axes [mm]."""

_PLAIN: Final = Speech()
NEWEST: Final = 3  # sets of readings that are printed


@dataclass(frozen=True, slots=True)
class CardSheet:
    """What stands on the sheet.

    Attributes:
        taken: The sets of readings in order of their days, all with an age.
        room: From the newest of them to the day that is looked ahead to.
        notes: A few words each.
        made: The date on the sheet.
        speech: Units and language.
        own: Short name of each recipe's own measurement among the readings, and how it is taken.
    """

    taken: tuple[Taken, ...]
    room: Room
    notes: tuple[str, ...]
    made: date
    speech: Speech = _PLAIN
    own: tuple[tuple[str, str], ...] = ()


def card_sheet(sheet: CardSheet) -> bytes:
    """The sheet as a PDF on A4."""
    return typeset(_template(), sheet_data(sheet), sheet.made)


def sheet_data(sheet: CardSheet) -> dict[str, Any]:
    """What the card sheet says, as data for its template."""
    taken, room, speech = sheet.taken, sheet.room, sheet.speech
    later, newest = room.later, taken[-NEWEST:]
    body = taken[-1].body if taken else later.floor
    drawn = [name for name in SMALL if any(name in one.body for one in taken)]
    titles = register_in(speech.language)
    return {
        "looks": looks_as_data(),
        "name": plain(body.nickname),
        "made": spoken_date(sheet.made, speech.language),
        "language": speech.language,
        "who": _who(room, body.sex, speech),
        "words": _words(room, speech),
        "then": _age(later.age_months, speech),
        "height": titles["stature"].title,
        "days": [
            {"day": spoken_date(one.day, speech.language), "age": _age(one.age, speech)} for one in newest
        ],
        "rows": [_row(name, newest, room, speech) for name in NAMES],
        "stature": drawing_as_data(growth_picture(taken, later, "stature", speech=speech)),
        "small": [
            {
                "title": titles[name].title,
                "picture": drawing_as_data(growth_picture(taken, later, name, SMALL_SIZE, speech)),
            }
            for name in drawn
        ],
        "own": [_own_row(name, how, newest, speech) for name, how in sheet.own],
        "notes": [plain(note) for note in sheet.notes],
    }


def _who(room: Room, sex: Sex | None, speech: Speech) -> str:
    """The age when last measured, and the sex where it is told."""
    words = wording(speech.language)["growth"]
    measured = words["measured"].format(age=_age(room.later.floor.age_months or 0.0, speech))
    return " · ".join(filter(None, (measured, words[sex] if sex else "")))


def _words(room: Room, speech: Speech) -> dict[str, str]:
    """The sentences of the sheet, with ages and sizes put in."""
    words, then = wording(speech.language)["growth"], _age(room.later.age_months, speech)
    sizes = {"now": room.size_now, "then": room.size_then, "most": room.size_at_most}
    plainly = {name: words[name] for name in ("now", "range", "room", "own", "notes")}
    return plainly | {
        "legend": words["legend"].format(age=then),
        "table": words["table"].format(unit=words[speech.units]),
        "estimated": words["estimated"].format(age=then),
        "sizes": words["sizes"].format(age=then, **sizes),
        "tucks": tucks_said(room, speech),
    }


def _age(months: float, speech: Speech) -> str:
    """An age in whole months and years."""
    words = wording(speech.language)["growth"]
    years, rest = divmod(round(months), 12)
    kind = "both" if years and rest else "years" if years else "months"
    return words[kind].format(years=years, months=rest)


def _row(name: str, newest: tuple[Taken, ...], room: Room, speech: Speech) -> dict[str, Any]:
    low, high = (_said(mm, speech) for mm in room.later.range(name))
    gain = room.gain(name)
    return {
        "title": register_in(speech.language)[name].title,
        "readings": [_reading(one.body, name, speech) for one in newest],
        "now": _said(room.later.floor.mm(name), speech),
        "measured": bool(newest) and name in newest[-1].body,
        "then": _said(room.later.body.mm(name), speech),
        "range": wording(speech.language)["growth"]["to"].format(low=low, high=high),
        "gain": _said(gain.expected, speech),
        "is_width": gain.is_width,
    }


def _own_row(name: str, how: str, newest: tuple[Taken, ...], speech: Speech) -> dict[str, Any]:
    """A recipe's own measurement, which no model forecasts."""
    title = plain(name.replace("_", " "))
    return {
        "title": title,
        "how": plain(how),
        "readings": [_reading(one.body, name, speech) for one in newest],
    }


def _reading(body: Measurements, name: str, speech: Speech) -> str:
    reading = body.get(name)
    return "" if reading is None else _said(reading.mm, speech)


def _said(mm: float, speech: Speech) -> str:
    """A length as the tape shows it, without its unit, which stands over the table."""
    said = say_length(mm, speech.units, ONE_MM if speech.units == "cm" else None)
    return speech.spelled(said.removesuffix(f" {speech.units}"))


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.booklet").joinpath("card_sheet.typ").read_text("utf-8")
