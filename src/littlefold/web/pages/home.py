"""The first page: begin with a garment or a child, go on with what lay on the table last, or draw a first draft."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse  # noqa: TC002 - FastAPI reads the signature

from littlefold.problem import Problem
from littlefold.sheet.wording import spoken_date
from littlefold.store.sample import Sample, sample_in
from littlefold.web.pages.children_box import Cards
from littlefold.web.pages.first import first_garments
from littlefold.web.recent import read_recent
from littlefold.web.rendering import render
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from littlefold.web.recent import Recent
    from littlefold.web.room import Room

Json = dict[str, Any]


def routes(room: Room) -> APIRouter:
    """The routes of the first page."""
    router = APIRouter()
    is_pupil = room.visitor is Visitor.PUPIL

    @router.get("/")
    def home(done: str = "") -> HTMLResponse:
        sample = Sample() if is_pupil else _sample(room)
        lately = [] if is_pupil else [told for one in read_recent(room.folder) if (told := _told(room, one))]
        garments = first_garments(room)
        return render(room, "home.html", first=garments, lately=lately, sample=sample, done=done)

    return router


def _sample(room: Room) -> Sample:
    """What of the sample is in the box; a box that is shut says so on the pages of the children."""
    box = Cards(room).box()
    return Sample() if isinstance(box, Problem) else sample_in(box)


def _told(room: Room, one: Recent) -> Json | None:
    """A recent draft as it stands on the page; None where its recipe is gone."""
    recipe = room.recipe(one.recipe)
    if recipe is None:
        return None
    size = dict(one.fields).get("for-size", "")
    sized = f"size {size}" if size.isdigit() else ""
    return {
        "recipe": one.recipe,
        "title": recipe.title,
        "link": one.link,
        "who": f"for {one.who}" if one.who else sized,
        "day": "today" if one.day == room.today() else spoken_date(one.day),
    }
