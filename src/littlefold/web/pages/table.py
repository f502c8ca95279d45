"""The drafting table: the sheet of paper, the tape along its edge, the slips pinned to it, its back."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES
from littlefold.booklet.record import draft_record
from littlefold.web.anchors import Anchor, anchors
from littlefold.web.asked import understand
from littlefold.web.at_door import asked_in, recipe_named
from littlefold.web.on_table import OnTable, on_table
from littlefold.web.readings import another, slips, tape_readings
from littlefold.web.rendering import render, words
from littlefold.web.said import back_of_sheet, elements, findings

if TYPE_CHECKING:
    from littlefold.web.room import Room

Json = dict[str, Any]


def routes(room: Room) -> APIRouter:
    """The routes of the drafting table."""
    router = APIRouter()

    @lru_cache(maxsize=64)
    def acting(name: str, fingerprint: str) -> dict[str, dict[str, Anchor]]:
        del fingerprint  # it only parts a changed recipe from the one before
        return _acting(room, name)

    @router.get("/table/{recipe}.json")
    def data(recipe: str, request: Request) -> Json:
        asked = asked_in(room, recipe, request)
        outcome = room.fulfil(asked.wish)
        return draft_record(outcome.pattern, outcome.problems, asked.speech)

    @router.get("/table/{recipe}/told.json")
    def told(recipe: str, request: Request) -> Json:
        lying = on_table(room, asked_in(room, recipe, request))
        return {
            "elements": elements(lying.outcome, lying.asked),
            "findings": words(room, "findings.html", **_findings(lying, recipe)),
            "back": words(room, "back.html", **_back(lying)),
            "readings": {one.name: _reading(one) for one in tape_readings(lying.asked, lying.outcome.draft)},
            "refused": {name: problem.message for name, problem in lying.asked.refused},
        }

    @router.get("/table/{recipe}")
    def table(recipe: str, request: Request) -> Response:
        if request.query_params.get("bare-numbers"):  # a form: answered by the link that means the same
            settled = asked_in(room, recipe, request).query()
            return RedirectResponse(f"/table/{recipe}?{settled}", 303)
        asked = asked_in(room, recipe, request)
        lying = on_table(room, asked)
        found = acting(recipe, asked.recipe.fingerprint)
        return render(room, "table.html", **_page(lying, recipe, found))

    return router


def _acting(room: Room, name: str) -> dict[str, dict[str, Anchor]]:
    """Where each choice acts, for the child a recipe is first shown for."""
    asked = understand(recipe_named(room, name), {}, room.preferences)
    found = slips(asked, room.fulfil(asked.wish).draft)
    others = {slip.name: value for slip in found if (value := another(slip)) is not None}
    return anchors(asked.wish, others, room.fulfil)


def _page(lying: OnTable, recipe: str, acting: dict[str, dict[str, Anchor]]) -> Json:
    asked, draft, sheet = lying.asked, lying.outcome.draft, lying.shown.sheet
    return {
        "recipe": recipe,
        "title": draft.title,
        "asked": asked,
        "typed": dict(asked.typed),
        "sheet": sheet,
        "sheets": [one.name for one in draft.sheets],
        "remark": next((one.remark for one in draft.sheets if one.name == sheet), ""),
        "drawing": lying.drawing,
        "readings": tape_readings(asked, draft),
        "slips": slips(asked, draft),
        "anchors": {name: _by_sheet(found) for name, found in acting.items()},
        "sizes": SIZES,
        "other_refused": [problem.message for name, problem in asked.refused if not name],
        **_findings(lying, recipe),
        **_back(lying),
    }


def _by_sheet(found: dict[str, Anchor]) -> dict[str, tuple[float, float]]:
    """Places as the drawing has them, y turned over."""
    return {sheet: (round(anchor.at.x, 1), round(-anchor.at.y, 1)) for sheet, anchor in found.items()}


def _findings(lying: OnTable, recipe: str) -> Json:
    return {"findings": findings(lying.placed), "recipe": recipe, "asked": lying.asked}


def _back(lying: OnTable) -> Json:
    return {"back": back_of_sheet(lying.outcome, lying.asked)}


def _reading(one: Any) -> Json:
    return {"mm": one.mm, "said": one.said, "origin": one.origin}
