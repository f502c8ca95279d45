"""A garment in several sizes: all stacked on one sheet, and every size by itself."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES, chart_row, read_sizes
from littlefold.booklet.run_sheets import run_sheets
from littlefold.draft.suits import stature_range
from littlefold.grading.grade import UNMATCHED, grade_bodies
from littlefold.pipeline import on_the_shelf
from littlefold.problem import Problem
from littlefold.sheet.paper import Paper, read_paper
from littlefold.web.asked import understand
from littlefold.web.at_door import NOT_FOUND, recipe_named
from littlefold.web.patience import PATIENCE, within
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Mapping

    from littlefold.booklet.bundle import Sheet
    from littlefold.grading import SizeRun
    from littlefold.pipeline import Wish
    from littlefold.recipe.recipe import Recipe
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

Json = dict[str, Any]
Sizes = tuple[int, ...]

NOT_UNDERSTOOD = 422
REMEMBERED = 4
FEW = 4
"""So many sizes are offered at first."""
KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml", "csv": "text/csv"}


def routes(room: Room) -> APIRouter:
    """The routes of the size runs."""
    router = APIRouter()
    graded = _remembering()

    @router.get("/sizes/{recipe}")
    def sizes_of(recipe: str, request: Request) -> HTMLResponse:
        asked = _asked(room, recipe, request.query_params)
        sizes = _sizes(request.query_params, asked.recipe)
        if isinstance(sizes, Problem):
            told = _page(room, recipe, asked, (), sizes.message)
            return render(room, "sizes.html", NOT_UNDERSTOOD, **told)
        told = _page(room, recipe, asked, sizes) | _of_run(room, asked, graded(asked.wish, sizes))
        return render(room, "sizes.html", **told)

    @router.get("/sizes/{recipe}/{file}")
    def one_file(recipe: str, file: str, request: Request) -> Response:
        asked = _asked(room, recipe, request.query_params)
        sizes = _sizes(request.query_params, asked.recipe)
        if isinstance(sizes, Problem):
            raise HTTPException(NOT_UNDERSTOOD, sizes.message)
        found = (one for one in _sheets(room, asked, graded(asked.wish, sizes)) if one.name == file)
        sheet = next(found, None)
        if sheet is None:
            raise HTTPException(NOT_FOUND)
        kind = KINDS[file.rpartition(".")[2]]
        headers = {"content-disposition": f'inline; filename="{sizes[0]}-to-{sizes[-1]}-{sheet.name}"'}
        return Response(sheet.make(), media_type=kind, headers=headers)

    return router


def _asked(room: Room, recipe: str, fields: Mapping[str, str]) -> Asked:
    """What is drafted in every size: the choices alone, for a run has a body of its own for each size."""
    found = recipe_named(room, recipe)
    whole = understand(found, fields, room.preferences)
    kept = {name: text for name, text in whole.typed if name not in whole.measures and name != "for-name"}
    return understand(found, kept, room.preferences)


def _sizes(fields: Mapping[str, str], recipe: Recipe) -> Sizes | Problem:
    """The sizes that were asked for; at first a few in the middle of those that the recipe suits."""
    low, high = fields.get("from-size", "").strip()[:20], fields.get("to-size", "").strip()[:20]
    if low or high:
        return read_sizes(f"{low or high}..{high or low}")
    least, most = stature_range(recipe)
    suited = [size for size in SIZES if least <= size * 10 <= most] or list(SIZES)
    begin = max((len(suited) - FEW) // 2, 0)
    return tuple(suited[begin : begin + FEW])


def _remembering() -> Callable[[Wish, Sizes], SizeRun]:
    """A function to a run that remembers the last ones, since every file is asked for by itself."""
    known: dict[Hashable, SizeRun] = {}

    def graded(wish: Wish, sizes: Sizes) -> SizeRun:
        key = (wish.key, sizes)
        run = known.get(key) or within(PATIENCE, lambda: _graded(wish, sizes))
        known[key] = run
        if len(known) > REMEMBERED:
            known.pop(next(iter(known)), None)
        return run

    return graded


def _graded(wish: Wish, sizes: Sizes) -> SizeRun:
    bodies = tuple((str(size), chart_row(size)) for size in sizes)
    return grade_bodies(
        wish.recipe,
        bodies,
        dict(wish.choices),
        tape=wish.tape,
        language=wish.language,
        shelf=on_the_shelf,
    )


def _sheets(room: Room, asked: Asked, run: SizeRun) -> tuple[Sheet, ...]:
    paper = read_paper(dict(asked.typed).get("on-paper", room.preferences.paper))
    if not isinstance(paper, Paper):
        raise HTTPException(NOT_UNDERSTOOD, paper.message)
    return tuple(run_sheets(run, asked.wish.circumstances, asked.speech, paper, room.today()))


def _page(room: Room, recipe: str, asked: Asked, sizes: Sizes, complaint: str = "") -> Json:
    return {
        "recipe": recipe,
        "asked": asked,
        "title": asked.recipe.title,
        "all_sizes": SIZES,
        "sizes": sizes,
        "complaint": complaint,
        "paper": room.preferences.paper,
        "files": [],
        "unmatched": [],
        "each": [],
    }


def _of_run(room: Room, asked: Asked, run: SizeRun) -> Json:
    return {
        "files": [(sheet.name, sheet.title) for sheet in _sheets(room, asked, run)],
        "unmatched": [one.message for one in run.problems if one.code == UNMATCHED],
        "each": [(size.label, asked.query(for_size=size.label)) for size in run.sizes],
    }
