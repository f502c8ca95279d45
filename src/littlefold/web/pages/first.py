"""A first draft in two minutes: choose, say how tall, look, print.  Four pages, no script, every one with its link."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final
from urllib.parse import urlencode

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.by_age import body_of_age
from littlefold.body.chart import SIZES, size_for
from littlefold.body.tape import ONE_MM, read_length, say_length
from littlefold.booklet.bundle import cautions
from littlefold.booklet.step_picture import step_picture
from littlefold.draft.sentence import full_sentence
from littlefold.problem import Problem, Severity
from littlefold.sheet.svg import write_svg
from littlefold.web.asked import LONGEST_VALUE
from littlefold.web.at_door import asked_in, recipe_named
from littlefold.web.garment import garment
from littlefold.web.print_job import Job, job_for, remembering
from littlefold.web.readings import tape_readings
from littlefold.web.recent import on_the_table
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.model import Draft
    from littlefold.recipe.recipe import Recipe
    from littlefold.sheet.page import Page
    from littlefold.web.asked import Asked
    from littlefold.web.preferences import Units
    from littlefold.web.room import Room

Json = dict[str, Any]

GARMENTS: Final = ("casing-top", "bloomers", "bib")
"""Garments that a newcomer draws first: few lines, little cloth."""
AGES: Final = (1, 2, 3, 4, 5, 6, 7)
"""Ages for which a usual height is told [years]."""
STEPS_TOLD: Final = 3
PICTURE: Final = (110.0, 120.0)
"""The picture of the draft [mm]."""
_STYLE: Final = re.compile(r"<style>.*?</style>", re.DOTALL)
NOT_UNDERSTOOD = 422
SEE_OTHER = 303


def first_garments(room: Room) -> list[Json]:
    """The garments that a newcomer may begin with, as cards."""
    found = (room.recipe(name) for name in GARMENTS)
    return [garment(recipe) for recipe in found if recipe is not None]


def routes(room: Room) -> APIRouter:
    """The routes of the first draft."""
    router = APIRouter()
    _asking(router, room)
    _showing(router, room, remembering(room))
    return router


def _asking(router: APIRouter, room: Room) -> None:
    @router.get("/first")
    def choose() -> HTMLResponse:
        return render(room, "first_choose.html", at=1, first=first_garments(room))

    @router.get("/first/{recipe}")
    def how_tall(recipe: str, who: str = "", tall: str | None = None) -> Response:
        found, name = recipe_named(room, recipe), who.strip()[:LONGEST_VALUE]
        if tall is None:
            return _question(room, found, name)
        mm = _height(tall[:LONGEST_VALUE], found, room)
        if isinstance(mm, Problem):
            return _question(room, found, name, tall[:LONGEST_VALUE], mm.message)
        fields = {"for-name": name, "for-size": str(size_for(mm))}
        query = urlencode({word: text for word, text in fields.items() if text})
        return RedirectResponse(f"/first/{recipe}/drawn?{query}", SEE_OTHER)


def _height(text: str, recipe: Recipe, room: Room) -> float | Problem:
    """How tall a child is [mm]; a problem where it is not understood or the garment is not made so large or small."""
    mm = read_length(text, room.preferences.units)
    if isinstance(mm, Problem):
        return mm
    told, units = garment(recipe), room.preferences.units
    low, high = max(told["low_cm"] * 10, SIZES[0] * 10), min(told["high_cm"] * 10, SIZES[-1] * 10)
    if low <= mm <= high:
        return mm
    between = f"{say_length(low, units, ONE_MM)} to {say_length(high, units, ONE_MM)}"
    return Problem(
        "height-not-suited", f"This one is drawn for children of {between}. Choose another, or look again."
    )


def _question(room: Room, recipe: Recipe, who: str, tall: str = "", complaint: str = "") -> HTMLResponse:
    told, units = garment(recipe), room.preferences.units
    return render(
        room,
        "first_tall.html",
        NOT_UNDERSTOOD if complaint else 200,
        at=2,
        card=told,
        who=who,
        tall=tall,
        complaint=complaint,
        usual=[
            (age, _roundly(cm, units))
            for age, cm in _usual_heights()
            if told["low_cm"] <= cm <= told["high_cm"]
        ],
        units=units,
    )


def _roundly(cm: float, units: Units) -> str:
    """A height as one guesses it: whole centimetres, or whole inches."""
    whole = 25.4 if units == "in" else 10.0
    return say_length(round(cm * 10 / whole) * whole, units)


@lru_cache(maxsize=1)
def _usual_heights() -> tuple[tuple[int, float], ...]:
    """Ages [years] and the usual heights at them [cm]."""
    return tuple((age, body_of_age(age * 12.0, None).mm("stature") / 10) for age in AGES)


def _showing(router: APIRouter, room: Room, pages_of: Callable[[Job], tuple[Page, ...]]) -> None:
    @router.get("/first/{recipe}/drawn")
    def drawn(recipe: str, request: Request) -> HTMLResponse:
        asked = asked_in(room, recipe, request)
        on_the_table(room, recipe, asked)
        return render(room, "first_drawn.html", at=3, recipe=recipe, asked=asked, **_drawn(room, asked))

    @router.get("/first/{recipe}/print")
    def to_print(recipe: str, request: Request) -> HTMLResponse:
        asked = asked_in(room, recipe, request)
        job = job_for(room, asked)
        pages = 0 if isinstance(job, Problem) else len(pages_of(job))
        outcome = room.fulfil(asked.wish)
        told: Json = {"title": outcome.draft.title, "paper": room.preferences.paper, "pages": pages}
        return render(room, "first_print.html", at=4, recipe=recipe, asked=asked, **told)


def _drawn(room: Room, asked: Asked) -> Json:
    outcome = room.fulfil(asked.wish)
    draft = outcome.draft
    *warned, advice = cautions(outcome.pattern, outcome.problems)
    return {
        "title": draft.title,
        "who": dict(asked.typed).get("for-name", ""),
        "readings": [
            (one.title, say_length(one.mm, asked.speech.units, ONE_MM)) for one in tape_readings(asked, draft)
        ],
        "picture": _picture(draft, asked),
        "steps": [full_sentence(step, draft, asked.speech) for step in draft.steps[:STEPS_TOLD]],
        "more": max(len(draft.steps) - STEPS_TOLD, 0),
        "cautions": warned,
        "advice": advice,
        "grave": [one.message for one in outcome.problems if one.severity is Severity.ERROR],
    }


def _picture(draft: Draft, asked: Asked) -> str:
    """The first sheet as it is when the last line on it is drawn."""
    last = max((step.number for step in draft.steps if step.sheet == draft.steps[0].sheet), default=0)
    if not last:
        return ""
    return _STYLE.sub("", write_svg(step_picture(draft, last, asked.speech, PICTURE)), count=1)
