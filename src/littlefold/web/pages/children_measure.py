"""Measuring a child: one measurement after the other, or all on one page; what looks wrong is told as one types.

What was typed stands in the link until it is kept, so nothing is lost when the page is loaded again.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING, Annotated, Any
from urllib.parse import urlencode

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.figure import tape_figure
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.tape import say_length
from littlefold.problem import Problem
from littlefold.sheet.svg import write_svg
from littlefold.sheet.wording import spoken_date
from littlefold.store import Card, Measured, meant_for
from littlefold.web.pages.children_box import NOT_UNDERSTOOD, UNKNOWN, Cards, refusal
from littlefold.web.pages.children_needs import measured_for, needed_for, own_for
from littlefold.web.pages.children_readings import Judged, field_of, judge, read_sheet
from littlefold.web.pages.children_said import age_on, doubt, title_of
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from littlefold.recipe.recipe import Recipe
    from littlefold.store import OwnMeasurement
    from littlefold.web.preferences import Units

Json = dict[str, Any]

SEE_OTHER = 303
LIES_UNTIL = 24.0
"""Months; a younger child is measured lying, as WHO's length is."""
LONGEST = 200
MOST_FIELDS = 60
_STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)
TAPE_STYLE = (
    "<style>.line{fill:none;stroke-linecap:round;stroke-linejoin:round}.old{stroke:#8b8577;stroke-width:.45}"
    ".new.line{stroke:#9c2f2a;stroke-width:1.5}.new.fill{fill:#9c2f2a}"
    ".inside{stroke:#9c2f2a;stroke-width:1;stroke-dasharray:1.6 1.8}"
    ".guide{stroke:#1d4e79;stroke-width:.4;stroke-dasharray:2 1.4}"
    "text{font-family:Georgia,serif;fill:#5b5f68}</style>"
)
"""The form recedes, the tape stands out."""


def routes(cards: Cards) -> APIRouter:
    """The routes of measuring."""
    router = APIRouter()

    @router.get("/child/measure")
    def measure(request: Request, name: str = "", at: str = "") -> HTMLResponse:
        card = cards.card(name)
        if isinstance(card, Problem):
            return refusal(cards.room, card)
        return _page(cards, card, _fields(request.query_params), at)

    @router.post("/child/measure")
    def keep(fields: Annotated[dict[str, str], Depends(_in_form)]) -> Response:
        return _kept(cards, fields)

    @router.get("/child/measure/judged.json")
    def judged(request: Request, name: str = "") -> Response:
        card = cards.card(name)
        if isinstance(card, Problem):
            return Response(status_code=UNKNOWN)
        return JSONResponse(_record(_judged(cards, card, _fields(request.query_params))))

    @router.get("/child/figure/{measurement}.svg")
    def figure(measurement: str) -> Response:
        if measurement not in REGISTER:
            return Response(status_code=UNKNOWN)
        return Response(tape_svg(measurement), media_type="image/svg+xml")

    return router


@lru_cache(maxsize=len(NAMES))
def tape_svg(name: str) -> str:
    """The form with the tape of a measurement."""
    return _STYLE.sub(TAPE_STYLE, write_svg(tape_figure(name)), count=1)


async def _in_form(request: Request) -> dict[str, str]:
    """The fields of a form, whatever they are called."""
    form = await request.form(max_files=0, max_fields=MOST_FIELDS)
    return _fields({name: text for name, text in form.items() if isinstance(text, str)})


def _fields(given: Mapping[str, str]) -> dict[str, str]:
    return {name: text[:LONGEST] for name, text in list(given.items())[:MOST_FIELDS]}


def _judged(cards: Cards, card: Card, fields: Mapping[str, str]) -> Judged:
    own = own_for(cards.room.recipe(fields.get("for", "")), card)
    sheet = read_sheet(card, own, fields, cards.room.today())
    before = _before(card, sheet.day, fields)
    return judge(card, sheet, cards.room.preferences.units, own, before)


def _before(card: Card, day: date | None, fields: Mapping[str, str]) -> Measured | None:
    """The set that stands where nothing is taken again: that of the same day, or where it shall stay the newest."""
    same_day = None if day is None else card.of_day(day)
    return same_day or (card.latest() if _keeps_others(fields) else None)


def _keeps_others(fields: Mapping[str, str]) -> bool:
    """Whether readings of another day that are not taken again stay; usual where one measures for a garment."""
    return fields.get("others", "stay" if fields.get("for") else "") == "stay"


def _kept(cards: Cards, fields: dict[str, str]) -> Response:
    """Keeps a set; what is not understood, and what looks wrong and was not said to be right, is asked again."""
    card = cards.card(fields.get("name", ""))
    if isinstance(card, Problem):
        return refusal(cards.room, card, fields)
    judged = _judged(cards, card, fields)
    if judged.day is None or judged.refused or not judged.readings:
        return _page(cards, card, fields, "", pressed=True)
    if judged.doubts and not fields.get("they-are-right"):
        return _page(cards, card, fields, "", pressed=True)
    by, over = fields.get("by", "").strip(), fields.get("over", "").strip()
    one = Measured(judged.day, judged.readings, by, over, judged.own)
    box = cards.box()
    kept = (box,) if isinstance(box, Problem) else box.change(card.name, lambda old: _with(old, one))
    if not isinstance(kept, Card):
        return refusal(cards.room, kept[0], fields)
    return RedirectResponse("/child?" + urlencode({"name": kept.name, "done": "measured"}), SEE_OTHER)


def _with(card: Card, one: Measured) -> Card:
    return card.with_measured(card.on_the_same_day(one))


def _page(
    cards: Cards, card: Card, fields: dict[str, str], at: str, *, pressed: bool = False
) -> HTMLResponse:
    judged = _judged(cards, card, fields)
    was = fields.get("was", "")
    is_asked_again = was in judged.refused or bool(was and judged.complaint)
    at = was if is_asked_again and at != "all" else at
    age = card.age(judged.day or cards.room.today())
    lying = fields.get("lies", "yes" if age is not None and age < LIES_UNTIL else "no") == "yes"
    recipe = cards.room.recipe(fields.get("for", ""))
    own, needs = own_for(recipe, card), needed_for(cards.room)
    order = _order(recipe, own, needs)
    newest, units = card.latest(), cards.room.preferences.units
    known = _known(newest, recipe, units) if newest else {}
    told = {
        "name": card.name,
        "age": age_on(card, judged.day or cards.room.today()),
        "fields": {key: fields.get(key, "") for key in ("by", "over", "for")},
        "day": fields.get("day") or cards.room.today().isoformat(),
        "day_refused": judged.complaint,
        "lying": lying,
        "units": units,
        "rows": [_row(name, own.get(name), judged, known, lying=lying) for name in order],
        "recipe": recipe.title if recipe else "",
        "before": spoken_date(newest.day) if newest else "",
        "same_day": newest is not None and newest.day == judged.day,
        "others": "stay" if _keeps_others(fields) else "go",
        "judged": _record(judged),
        "doubts": judged.doubts,
        "complaints": judged.complaints if pressed else (),
        "link": urlencode({key: text for key, text in fields.items() if text and key not in ("at", "was")}),
    }
    fields_in_order = [field_of(name) for name in order]
    place = fields_in_order.index(at) if at in fields_in_order else None
    template = "child_measure_all.html" if place is None else "child_measure.html"
    return render(cards.room, template, NOT_UNDERSTOOD if pressed else 200, place=place, **told)


def _known(newest: Measured, recipe: Recipe | None, units: Units) -> dict[str, str]:
    """The newest readings in words, those that are meant for a recipe where one is named."""
    meant = newest if recipe is None else meant_for(recipe, newest)
    return {name: say_length(mm, units) for name, mm in meant.readings}


def _order(recipe: Recipe | None, own: Mapping[str, OwnMeasurement], needs: Mapping[str, int]) -> list[str]:
    """What is measured, in order: for one garment what it asks for, else all, the most needed first."""
    if recipe is not None:
        return [name for name in measured_for(recipe) if name in REGISTER or name in own]
    return [*sorted(NAMES, key=lambda name: -needs.get(name, 0)), *own]


def _row(
    name: str, own: OwnMeasurement | None, judged: Judged, known: Mapping[str, str], *, lying: bool
) -> Json:
    entry, field = REGISTER.get(name), field_of(name)
    how = own.how if own else ""
    return {
        "name": field,
        "title": title_of(name).capitalize() if own else title_of(name),
        "how": (entry.how_lying if lying else entry.how_standing) if entry else how,
        "drawn": entry is not None,
        "before": known.get(name, ""),
        "typed": judged.typed.get(field, ""),
        "said": judged.said.get(field, ""),
        "refused": judged.refused.get(field, ""),
        "doubtful": name in judged.doubtful,
    }


def _record(judged: Judged) -> Json:
    return {
        "said": judged.said,
        "refused": judged.refused | ({"day": judged.complaint} if judged.complaint else {}),
        "doubtful": sorted(judged.doubtful),
        "found": [
            {
                "severity": one.severity.value,
                "heading": doubt(one),
                "message": one.message,
                "names": [number.name for number in one.numbers if number.name in REGISTER],
            }
            for one in judged.found
        ],
    }
