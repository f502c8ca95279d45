"""The drafting table: the sheet of paper, the tape along its edge, the slips pinned to it, its back."""

from __future__ import annotations

from functools import lru_cache
from time import monotonic
from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES
from littlefold.booklet.record import draft_record
from littlefold.web.all_pieces import ALL
from littlefold.web.anchors import Anchor, anchors
from littlefold.web.asked import understand
from littlefold.web.at_door import asked_in, recipe_named
from littlefold.web.cures import cures, troubles
from littlefold.web.on_table import OnTable, on_table
from littlefold.web.readings import another, slips, tape_readings
from littlefold.web.recent import on_the_table
from littlefold.web.rendering import render, words
from littlefold.web.said import back_of_sheet, elements, findings

if TYPE_CHECKING:
    from littlefold.draft.model import Draft
    from littlefold.web.cures import Cure, Trouble
    from littlefold.web.room import Room

Json = dict[str, Any]

SEEK = "with-cures"
"""The word of a link that has cures sought for what was found."""
WAIT = 2.5
"""So long choices are tried [s]."""
HALF_CENTIMETRE, QUARTER_INCH = 5.0, 25.4 / 4
"""The marks of the tape at which a cure is sought [mm]."""


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
        on_the_table(room, recipe, lying.asked)
        return {
            "elements": elements(lying.outcome, lying.asked),
            "findings": words(
                room,
                "findings.html",
                findings=findings(lying.placed, {}, lying.asked),
                **_whose(lying, recipe),
            ),
            "in_trouble": any(True for _ in troubles(lying.outcome.problems)),
            "back": words(room, "back.html", **_back(lying)),
            "readings": {one.name: _reading(one) for one in tape_readings(lying.asked, lying.outcome.draft)},
            "refused": {name: problem.message for name, problem in lying.asked.refused},
        }

    @router.get("/table/{recipe}/cures.json")
    def healing(recipe: str, request: Request) -> Json:
        lying = on_table(room, asked_in(room, recipe, request))
        told = findings(lying.placed, _cured(room, lying), lying.asked)
        return {
            "findings": words(room, "findings.html", findings=told, **_whose(lying, recipe)),
            "cures": {one["number"]: one["cures"] for one in told if one["cures"]},
        }

    @router.get("/table/{recipe}")
    def table(recipe: str, request: Request) -> Response:
        if request.query_params.get("bare-numbers"):  # a form: answered by the link that means the same
            settled = asked_in(room, recipe, request).query()
            return RedirectResponse(f"/table/{recipe}?{settled}", 303)
        fields = dict(request.query_params)
        is_sought = fields.pop(SEEK, "") != ""
        lying = on_table(room, understand(recipe_named(room, recipe), fields, room.preferences))
        on_the_table(room, recipe, lying.asked)
        found = acting(recipe, lying.asked.recipe.fingerprint)
        cured = _cured(room, lying) if is_sought else {}
        return render(room, "table.html", **_page(lying, recipe, found, cured))

    return router


def _acting(room: Room, name: str) -> dict[str, dict[str, Anchor]]:
    """Where each choice acts, for the child a recipe is first shown for."""
    asked = understand(recipe_named(room, name), {}, room.preferences)
    found = slips(asked, room.fulfil(asked.wish).draft)
    others = {slip.name: value for slip in found if (value := another(slip)) is not None}
    return anchors(asked.wish, others, room.fulfil)


def _cured(room: Room, lying: OnTable) -> dict[Trouble, tuple[Cure, ...]]:
    """The choices that cure what was found, as many as can be tried while a maker waits."""
    asked = lying.asked
    until = monotonic() + WAIT
    mark = QUARTER_INCH if asked.speech.units == "in" else HALF_CENTIMETRE
    choices = slips(asked, lying.outcome.draft)
    return cures(asked.wish, choices, room.fulfil, mark=mark, goes_on=lambda: monotonic() < until)


def _page(
    lying: OnTable,
    recipe: str,
    acting: dict[str, dict[str, Anchor]],
    cured: dict[Trouble, tuple[Cure, ...]],
) -> Json:
    asked, draft, sheet = lying.asked, lying.outcome.draft, lying.shown.sheet
    return {
        "recipe": recipe,
        "title": draft.title,
        "asked": asked,
        "typed": dict(asked.typed),
        "sheet": sheet,
        "sheets": [*((one.name, one.name.replace("_", " ")) for one in draft.sheets), *_all(draft)],
        "drawing": lying.drawing,
        "readings": tape_readings(asked, draft),
        "slips": slips(asked, draft),
        "anchors": {name: _by_sheet(found) for name, found in acting.items()},
        "sizes": SIZES,
        "other_refused": [problem.message for name, problem in asked.refused if not name],
        "can_seek": not cured,
        "findings": findings(lying.placed, cured, asked),
        **_back(lying),
    }


def _all(draft: Draft) -> list[tuple[str, str]]:
    """The sheet with all pieces, where there is more than one."""
    return [(ALL, "all pieces")] if len(draft.pieces) > 1 else []


def _by_sheet(found: dict[str, Anchor]) -> dict[str, tuple[float, float]]:
    """Places as the drawing has them, y turned over."""
    return {sheet: (round(anchor.at.x, 1), round(-anchor.at.y, 1)) for sheet, anchor in found.items()}


def _whose(lying: OnTable, recipe: str) -> Json:
    return {"recipe": recipe, "asked": lying.asked, "can_seek": False}


def _back(lying: OnTable) -> Json:
    return {"back": back_of_sheet(lying.outcome, lying.asked)}


def _reading(one: Any) -> Json:
    return {"mm": one.mm, "said": one.said, "origin": one.origin}
