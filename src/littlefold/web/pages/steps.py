"""The draft step by step, as a hand draws it: every step has its own link; all together they print."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.booklet.formula import step_formula
from littlefold.booklet.scene import EDGE, scene
from littlefold.booklet.step_picture import step_picture
from littlefold.draft.sentence import full_sentence
from littlefold.drawing import Label
from littlefold.geometry import Point
from littlefold.sheet.svg import write_svg
from littlefold.web.at_door import NOT_FOUND, asked_in
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.draft.model import Draft, Step
    from littlefold.drawing import Drawing
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

Json = dict[str, Any]

ROOM = (150.0, 104.0)
"""The picture of a step on a screen, width and height [mm]; letters keep their size, so they are large there."""
SMALL = (62.0, 62.0)
"""The picture of a step among all steps [mm]."""
DIMENSIONS = 4.0
"""More room round the sheet, for dimensions that stand outside it [mm]."""
_OWN_STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)


def routes(room: Room) -> APIRouter:
    """The routes of the steps."""
    router = APIRouter()

    @router.get("/steps/{recipe}")
    def all_steps(recipe: str, request: Request) -> HTMLResponse:
        asked = asked_in(room, recipe, request)
        draft = room.fulfil(asked.wish).draft
        told = [_told(draft, number, asked, SMALL) for number in range(1, len(draft.steps) + 1)]
        return render(room, "all_steps.html", recipe=recipe, asked=asked, title=draft.title, steps=told)

    @router.get("/steps/{recipe}/{number}.json")
    def step_as_data(recipe: str, number: int, request: Request) -> Json:
        asked = asked_in(room, recipe, request)
        return _told(room.fulfil(asked.wish).draft, number, asked, ROOM)

    @router.get("/steps/{recipe}/{number}")
    def one_step(recipe: str, number: int, request: Request) -> Response:
        asked = asked_in(room, recipe, request)
        draft = room.fulfil(asked.wish).draft
        if draft.steps and not 1 <= number <= len(draft.steps):
            nearest = min(max(number, 1), len(draft.steps))
            return RedirectResponse(f"/steps/{recipe}/{nearest}?{asked.query()}", 303)
        told = _told(draft, number, asked, ROOM)
        return render(room, "step.html", recipe=recipe, asked=asked, title=draft.title, step=told)

    return router


def _told(draft: Draft, number: int, asked: Asked, picture: tuple[float, float]) -> Json:
    """A step with its picture.

    Raises:
        HTTPException: There is no such step.
    """
    if not 1 <= number <= len(draft.steps):
        raise HTTPException(NOT_FOUND)
    step = draft.steps[number - 1]
    drawing = _on_whole_sheet(step_picture(draft, number, asked.speech, picture), draft, step, picture)
    return {
        "number": number,
        "of": len(draft.steps),
        "sheet": step.sheet.replace("_", " "),
        "sentence": full_sentence(step, draft, asked.speech),
        "formula": step_formula(step, asked.speech, "{formula}, on the tape {length}"),
        "remark": step.remark,
        "source": step.source,
        "line": step.line,
        "picture": _OWN_STYLE.sub("", write_svg(drawing), count=1),
    }


def _on_whole_sheet(drawing: Drawing, draft: Draft, step: Step, picture: tuple[float, float]) -> Drawing:
    """The picture with the size of the whole sheet, so that nothing moves from one step to the next."""
    box = scene(draft, step.sheet, picture).bounds.grown(EDGE + DIMENSIONS)
    corners = (Point(box.left, box.bottom), Point(box.right, box.top))
    return drawing.with_marks(Label("", corner) for corner in corners)
