"""How a child will grow: the picture, what is told of a later day, until when a limit is kept; the card as a sheet."""

from __future__ import annotations

from datetime import date, timedelta
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import Response

from littlefold.body.by_age import said_age
from littlefold.body.growth import FitsUntil, fits_until
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.room import Room as RoomToGrow
from littlefold.body.room import room_to_grow
from littlefold.body.tape import ONE_MM, read_length, say_length
from littlefold.booklet.growth_picture import growth_picture
from littlefold.booklet.growth_tucks import tucks_said
from littlefold.draft.sentence import Speech
from littlefold.problem import Problem
from littlefold.sheet.svg import write_svg
from littlefold.sheet.wording import spoken_date
from littlefold.store.taken import printed, taken_of
from littlefold.web.pages.children_box import Cards, refusal
from littlefold.web.pages.children_said import MONTH

if TYPE_CHECKING:
    from littlefold.store import Card
    from littlefold.web.preferences import Units
    from littlefold.web.room import Room

Json = dict[str, Any]

SOON = 12.0
"""Months ahead, where no day is named."""
PRIVATE = {"cache-control": "no-store"}


def routes(cards: Cards) -> APIRouter:
    """The routes of growth."""
    router = APIRouter()

    @router.get("/child/growth.svg")
    def picture(name: str = "", on: str = "", of: str = "stature") -> Response:
        card = cards.card(name)
        grown = card if isinstance(card, Problem) else room_for(card, on, cards.room.today())
        if isinstance(card, Problem) or isinstance(grown, Problem):
            return refusal(cards.room, card if isinstance(card, Problem) else _as_problem(grown))
        shown = of if of in REGISTER else "stature"
        drawing = growth_picture(taken_of(card), grown.later, shown, speech=speech_of(cards.room))
        return Response(write_svg(drawing), media_type="image/svg+xml", headers=PRIVATE)

    @router.get("/child/card.pdf")
    def sheet(name: str = "", on: str = "") -> Response:
        card = cards.card(name)
        grown = card if isinstance(card, Problem) else room_for(card, on, cards.room.today())
        if isinstance(card, Problem) or isinstance(grown, Problem):
            return refusal(cards.room, card if isinstance(card, Problem) else _as_problem(grown))
        made = printed(card, grown, cards.room.today(), speech_of(cards.room))
        return Response(made, media_type="application/pdf", headers=PRIVATE)

    return router


def speech_of(room: Room) -> Speech:
    """The units and the language that the maker prefers."""
    return Speech(room.preferences.units, None, room.preferences.language)


def _as_problem(found: object) -> Problem:
    assert isinstance(found, Problem)  # noqa: S101 - the caller has looked
    return found


def room_for(card: Card, on: str, today: date) -> RoomToGrow | Problem:
    """The room that the child's clothes need until a day; for a year where no day is named."""
    day = _day(on)
    if isinstance(day, Problem):
        return day
    age = card.age(day or today)
    if age is None:
        return Problem("age-unknown", "There is no birth date on the card, and growth needs one.")
    return _room(card.body(), age + (0.0 if day else SOON))


_room = lru_cache(maxsize=32)(room_to_grow)


def forget() -> None:
    """Lets go of the forecasts that are remembered; nothing of an erased child may stay."""
    _room.cache_clear()


def _day(text: str) -> date | Problem | None:
    if not text.strip():
        return None
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        return Problem("day-not-understood", f"“{text[:40]}” is not a day. Write it like 2027-04-01.")


def growth_words(card: Card, asked: dict[str, str], room: Room) -> Json:
    """What the page of a card says of growth."""
    found = room_for(card, asked.get("on", ""), room.today()) if card.measured else None
    known = None if found is None or isinstance(found, Problem) else found
    units = room.preferences.units
    shown = asked.get("of", "") if asked.get("of", "") in REGISTER else "stature"
    return {
        "asked": {"on": "", "fits": "", "limit": ""} | asked,
        "of": shown,
        "of_title": REGISTER[shown].title,
        "taken": _taken_names(card),
        "complaint": found.message if isinstance(found, Problem) else "",
        "then": said_age(known.later.age_months) if known else "",
        "rows": [_row(known, name, units) for name in NAMES] if known else [],
        "sizes": (known.size_now, known.size_then, known.size_at_most) if known else (),
        "tucks": tucks_said(known, Speech(units)) if known else "",
        "fits": _fits(card, asked, units),
        "measures": [(name, REGISTER[name].title) for name in NAMES],
    }


def _taken_names(card: Card) -> list[tuple[str, str]]:
    """What was ever measured of a child: what there is a picture of."""
    taken = {name for one in card.measured for name, _ in one.readings}
    return [(name, REGISTER[name].title) for name in NAMES if name in taken]


def _row(room: RoomToGrow, name: str, units: Units) -> Json:
    later = room.later
    low, high = later.range(name)
    return {
        "title": REGISTER[name].title,
        "guessed": later.floor.mm(name) and not _given(room, name),
        "now": _said(later.floor.mm(name), units),
        "then": _said(later.body.mm(name), units),
        "range": f"{_said(low, units)} to {_said(high, units)}",
        "gain": _said(room.gain(name).expected, units),
    }


def _given(room: RoomToGrow, name: str) -> bool:
    reading = room.later.floor.get(name)
    return reading is not None and reading.origin.value == "given"


def _said(mm: float, units: Units) -> str:
    return say_length(round(mm), units, ONE_MM)


def _fits(card: Card, asked: dict[str, str], units: Units) -> str:
    """Until when a measurement stays within a limit, in a sentence; nothing where nothing was asked."""
    name, limit = asked.get("fits", ""), asked.get("limit", "").strip()
    if not limit or name not in REGISTER:
        return ""
    mm = read_length(limit, units)
    if isinstance(mm, Problem):
        return mm.message
    found = fits_until(card.body(), name, mm)
    if isinstance(found, Problem):
        return found.message
    return _until(card, found, REGISTER[name].title.lower(), say_length(mm, units))


def _until(card: Card, found: FitsUntil, title: str, limit: str) -> str:
    if found.expected is None:
        return f"The {title} stays under {limit}."
    said = [_month(card, age) for age in (found.earliest, found.expected, found.latest)]
    early, likely, late = said
    between = f" It may be as early as {early}" + (f" or as late as {late}." if late else ".")
    return f"The {title} passes {limit} about {likely}.{between if early != likely or late != likely else ''}"


def _month(card: Card, age: float | None) -> str:
    """The month in which a child has an age, as a person says it."""
    if age is None or card.born is None:
        return ""
    day = card.born + timedelta(days=age * MONTH)
    return spoken_date(day).partition(" ")[2]
