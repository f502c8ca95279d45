"""The drafting table: the sheet of paper, the tape along its edge, the slips pinned to it, its back."""

from __future__ import annotations

from functools import lru_cache
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
from littlefold.web.on_table import OnTable, on_table
from littlefold.web.readings import another, slips, tape_readings
from littlefold.web.recent import on_the_table
from littlefold.web.rendering import render
from littlefold.web.said import back_of_sheet, findings
from littlefold.web.telling import cured, healing, told

if TYPE_CHECKING:
    from littlefold.draft.model import Draft
    from littlefold.web.cures import Cure, Trouble
    from littlefold.web.room import Room

Json = dict[str, Any]

JSON = "application/json"
BUSY = 429
SEEK = "with-cures"
"""The word of a link that has cures sought for what was found."""


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
    def telling(recipe: str, request: Request) -> Response:
        on_the_table(room, recipe, asked_in(room, recipe, request))
        found = room.hands.ask_at_rest(room, told, recipe, request.query_params.items())
        return Response(found, media_type=JSON)

    @router.get("/table/{recipe}/cures.json")
    def curing(recipe: str, request: Request) -> Response:
        recipe_named(room, recipe)
        found = room.hands.ask_aside(room, healing, recipe, request.query_params.items())
        return Response(status_code=BUSY) if found is None else Response(found, media_type=JSON)

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
        found_cures = cured(room, lying) if is_sought else {}
        return render(room, "table.html", **_page(lying, recipe, found, found_cures))

    return router


def _acting(room: Room, name: str) -> dict[str, dict[str, Anchor]]:
    """Where each choice acts, for the child a recipe is first shown for."""
    asked = understand(recipe_named(room, name), {}, room.preferences)
    found = slips(asked, room.fulfil(asked.wish).draft)
    others = {slip.name: value for slip in found if (value := another(slip)) is not None}
    return anchors(asked.wish, others, room.fulfil)


def _page(
    lying: OnTable,
    recipe: str,
    acting: dict[str, dict[str, Anchor]],
    found_cures: dict[Trouble, tuple[Cure, ...]],
) -> Json:
    asked, draft, sheet = lying.asked, lying.outcome.draft, lying.sheet
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
        "can_seek": not found_cures,
        "findings": findings(lying.placed, found_cures, asked),
        "back": back_of_sheet(lying.outcome, asked),
    }


def _all(draft: Draft) -> list[tuple[str, str]]:
    """The sheet with all pieces, where there is more than one."""
    return [(ALL, "all pieces")] if len(draft.pieces) > 1 else []


def _by_sheet(found: dict[str, Anchor]) -> dict[str, tuple[float, float, str]]:
    """Places as the drawing has them, y turned over, and the point that lies there, which moves with the draft."""
    return {
        sheet: (round(anchor.at.x, 1), round(-anchor.at.y, 1), anchor.point)
        for sheet, anchor in found.items()
    }
