"""One class: each pupil's own numbers beside each other, and the steps for all."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any, Final

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, Response  # noqa: TC002 - FastAPI reads the signature

from littlefold.booklet.step_picture import step_picture
from littlefold.problem import Problem, Severity
from littlefold.sheet.svg import write_svg
from littlefold.store import ClassBook, SewingClass
from littlefold.web.asked import understand
from littlefold.web.garment import garment
from littlefold.web.pages import class_sheets
from littlefold.web.pages.children_box import NOT_UNDERSTOOD, Cards, refusal
from littlefold.web.pages.class_drafts import PupilDraft, numbers_beside, pupil_drafts, steps_together
from littlefold.web.readings import slips
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.draft.model import Step
    from littlefold.recipe.recipe import Recipe
    from littlefold.store import CardBox

Json = dict[str, Any]

PICTURE: Final = (62.0, 62.0)
"""The picture of a step among all steps [mm]."""
_STYLE: Final = re.compile(r"<style>.*?</style>", re.DOTALL)


def routes(cards: Cards) -> APIRouter:
    """The routes of one class."""
    router, room = APIRouter(), cards.room

    @router.get("/class")
    def one_class(name: str = "") -> HTMLResponse:
        return class_page(cards, name)

    @router.get("/class/steps")
    def steps(name: str = "") -> Response:
        found = _drawn(cards, name)
        if isinstance(found, Problem):
            return refusal(room, found)
        one, recipe, drafts = found
        told = [_step(step) for step in steps_together(drafts)]
        return render(room, "class_steps.html", one=one, title=recipe.title, steps=told)

    router.include_router(class_sheets.routes(cards, lambda name: _drawn(cards, name)))
    return router


def class_page(
    cards: Cards, name: str, typed: SewingClass | None = None, complaints: tuple[str, ...] = ()
) -> HTMLResponse:
    """The page of a class; what was typed and could not be kept stands in its field again."""
    box, room = cards.box(), cards.room
    one = box if isinstance(box, Problem) else ClassBook(box.engine).one(name)
    if isinstance(box, Problem) or isinstance(one, Problem):
        return refusal(room, one if isinstance(one, Problem) else _as_problem(box))
    recipe = room.recipe(one.recipe)
    drafts = () if recipe is None else pupil_drafts(room, box, one, recipe)
    wanted = typed or one
    status = NOT_UNDERSTOOD if complaints else 200
    return render(
        room,
        "class.html",
        status,
        one=one,
        title=recipe.title if recipe else "",
        pupils=[_pupil(draft) for draft in drafts],
        rows=numbers_beside(drafts),
        typed=wanted,
        names=box.names(),
        garments=[garment(each) for each in room.recipes()],
        slips=[] if recipe is None else _slips(cards, wanted, recipe),
        paper=room.preferences.paper,
        complaints=complaints,
    )


def _as_problem(found: object) -> Problem:
    assert isinstance(found, Problem)  # noqa: S101 - the caller has looked
    return found


def _slips(cards: Cards, one: SewingClass, recipe: Recipe) -> Any:
    asked = understand(recipe, dict(one.choices), cards.room.preferences)
    return slips(asked, cards.room.fulfil(asked.wish).draft)


def _drawn(cards: Cards, name: str) -> tuple[SewingClass, Recipe, tuple[PupilDraft, ...]] | Problem:
    """A class with its recipe and the draft of each pupil."""
    box: CardBox | Problem = cards.box()
    one = box if isinstance(box, Problem) else ClassBook(box.engine).one(name)
    if isinstance(one, Problem) or isinstance(box, Problem):
        return _as_problem(one)
    recipe = cards.room.recipe(one.recipe)
    if recipe is None:
        return Problem(
            "recipe-unknown", f"There is no recipe “{one.recipe[:60]}” any more. Choose another garment."
        )
    return one, recipe, pupil_drafts(cards.room, box, one, recipe)


def _pupil(draft: PupilDraft) -> Json:
    problems = draft.outcome.problems
    return {
        "name": draft.name,
        "query": draft.asked.query(),
        "missing": sum(reading not in dict(draft.asked.typed) for reading in draft.asked.measures),
        "grave": [one.message for one in problems if one.severity is Severity.ERROR],
    }


def _step(told: Json) -> Json:
    one, step = told["of"], told["step"]
    return {"said": told["said"], "picture": _picture(one, step), "whose": one.name, "sheet": step.sheet}


def _picture(one: PupilDraft, step: Step) -> str:
    drawing = step_picture(one.outcome.draft, step.number, one.asked.speech, PICTURE)
    return _STYLE.sub("", write_svg(drawing), count=1)
