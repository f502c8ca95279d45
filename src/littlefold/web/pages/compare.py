"""Two choices, or two recipes, over each other: `/compare/bodice?ease=60&or-ease=120`.

Every word of the second draft that differs from the first stands in the link with `or-` before it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.web.all_pieces import ALL
from littlefold.web.asked import understand
from littlefold.web.at_door import recipe_named
from littlefold.web.comparison import differences, drawn_over
from littlefold.web.on_table import on_table
from littlefold.web.readings import slips, tape_readings
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.pipeline import Outcome
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

OR = "or-"


def routes(room: Room) -> APIRouter:
    """The routes of comparing."""
    router = APIRouter()

    @router.get("/compare/{recipe}")
    def compare(recipe: str, request: Request) -> Response:
        fields = {name: said for name, said in request.query_params.items() if said != ALL}
        what, value = fields.pop("what", ""), fields.pop("value", "")
        if what:  # the form: answered by the link that means the same
            asked = understand(recipe_named(room, recipe), fields, room.preferences)
            return RedirectResponse(f"/compare/{recipe}?{asked.query({f'{OR}{what}': value})}", 303)
        return render(room, "compare.html", **_page(room, recipe, fields))

    return router


def _page(room: Room, recipe: str, fields: dict[str, str]) -> dict[str, Any]:
    first, second = _two(room, recipe, fields)
    lying, other = on_table(room, first), room.fulfil(second.wish)
    draft = lying.outcome.draft
    changed = [name.removeprefix(OR) for name, value in fields.items() if name.startswith(OR) and value]
    said = _said(second, other)
    return {
        "recipe": recipe,
        "title": draft.title,
        "asked": first,
        "typed": [(name, value) for name, value in first.typed if not name.startswith(OR)],
        "sheet": lying.sheet,
        "sheets": [one.name for one in draft.sheets],
        "drawing": drawn_over(lying.shown, other) if changed else lying.drawing,
        "rows": differences(lying.outcome, other, lying.sheet, first.speech),
        "changed": [said.get(name, (name.replace("-", " "), fields[f"{OR}{name}"])) for name in changed],
        "refused": [problem.message for _, problem in second.refused],
        "fields": [(one.name, one.title, one.said) for one in slips(first, draft)]
        + [(one.name, one.title, one.said) for one in tape_readings(first, draft)],
        "others": [one.name for one in room.recipes()],
    }


def _two(room: Room, recipe: str, fields: dict[str, str]) -> tuple[Asked, Asked]:
    """What is asked for first, and what is laid over it."""
    changed = {name.removeprefix(OR): value for name, value in fields.items() if name.startswith(OR)}
    other = recipe_named(room, changed.get("recipe") or recipe)
    plain = {name: value for name, value in fields.items() if not name.startswith(OR)}
    first = understand(recipe_named(room, recipe), fields, room.preferences)
    return first, understand(other, {**plain, **changed}, room.preferences)


def _said(asked: Asked, outcome: Outcome) -> dict[str, tuple[str, str]]:
    """Title and value of every choice and measurement."""
    found = {one.name: (one.title, one.said) for one in slips(asked, outcome.draft)}
    return found | {one.name: (one.title, one.said) for one in tape_readings(asked, outcome.draft)}
