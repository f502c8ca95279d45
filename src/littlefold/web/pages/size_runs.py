"""A garment in several sizes: all stacked on one sheet, and every size by itself."""

from __future__ import annotations

from contextlib import asynccontextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated, Any
from urllib.parse import quote

from fastapi import APIRouter, Depends
from fastapi.responses import JSONResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES, read_sizes
from littlefold.draft.suits import stature_range
from littlefold.grading.grade import UNMATCHED
from littlefold.problem import Problem
from littlefold.sheet.paper import Paper, read_paper
from littlefold.web.asked import MOST_FIELDS, Asked, understand
from littlefold.web.at_door import NOT_FOUND, recipe_named
from littlefold.web.in_work import busy, progress
from littlefold.web.long_work import LongWorks
from littlefold.web.rendering import render
from littlefold.web.size_run import SHEETS, AskedRun, DrawnRuns

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Mapping

    from littlefold.recipe.recipe import Recipe
    from littlefold.web.long_work import LongWork
    from littlefold.web.room import Room
    from littlefold.web.size_run import DrawnRun

Json = dict[str, Any]
Sizes = tuple[int, ...]

NOT_UNDERSTOOD = 422
SEE_OTHER = 303
FEW = 4
"""So many sizes are offered at first, and drawn at once; more are drawn with a bar that shows how far they are."""
LONGEST = 900.0
"""So long the sizes of the whole chart may take with all their sheets [s]."""
KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml", "csv": "text/csv"}


@dataclass(frozen=True, slots=True)
class Complaint:
    """Sizes that cannot be."""

    asked: Asked
    sentence: str


def routes(room: Room) -> APIRouter:
    """The routes of the size runs."""
    runs, works = DrawnRuns(), LongWorks()

    @asynccontextmanager
    async def while_open(_: Any) -> AsyncIterator[None]:
        yield
        works.stop_all()

    router = APIRouter(lifespan=while_open)
    _drawn(router, room, runs, works)
    _drawing(router, room, runs, works)
    return router


def _drawn(router: APIRouter, room: Room, runs: DrawnRuns, works: LongWorks) -> None:
    """The page of a run, and its files."""

    @router.get("/sizes/{recipe}")
    def sizes_of(recipe: str, request: Request) -> Response:
        asked = _run(room, recipe, request.query_params)
        if isinstance(asked, Complaint):
            return render(
                room, "sizes.html", NOT_UNDERSTOOD, **_page(room, recipe, asked.asked, (), asked.sentence)
            )
        going = works.find(request.query_params.get("work", ""))
        if going is not None:
            return _in_work(room, recipe, asked, going)
        told = _page(room, recipe, asked.asked, asked.sizes)
        drawn = runs.find(asked) if len(asked.sizes) > FEW else runs.drawn(asked)
        return render(room, "sizes.html", **(told | ({} if drawn is None else _of_run(drawn))))

    @router.get("/sizes/{recipe}/{file}")
    def one_file(recipe: str, file: str, request: Request) -> Response:
        asked = _run(room, recipe, request.query_params)
        if isinstance(asked, Complaint):
            raise HTTPException(NOT_UNDERSTOOD, asked.sentence)
        drawn = runs.drawn(asked)  # a program that asks for a file waits for it
        sheet = next((one for one in drawn.sheets if one.name == file), None)
        if sheet is None:
            raise HTTPException(NOT_FOUND)
        kind, sizes = KINDS[file.rpartition(".")[2]], asked.sizes
        headers = {"content-disposition": f'inline; filename="{sizes[0]}-to-{sizes[-1]}-{sheet.name}"'}
        return Response(drawn.make(sheet), media_type=kind, headers=headers)


def _drawing(router: APIRouter, room: Room, runs: DrawnRuns, works: LongWorks) -> None:
    """Drawing a run beside the pages."""

    @router.post("/sizes/{recipe}/draw")
    def draw(recipe: str, fields: Annotated[dict[str, str], Depends(_in_form)]) -> Response:
        asked = _run(room, recipe, fields)
        if isinstance(asked, Complaint):
            return render(
                room, "sizes.html", NOT_UNDERSTOOD, **_page(room, recipe, asked.asked, (), asked.sentence)
            )
        if len(asked.sizes) <= FEW or runs.find(asked) is not None:
            return _to(recipe, asked.asked)
        started = works.start(runs.work(asked), LONGEST, len(asked.sizes) + SHEETS)
        return busy(room, list(fields.items())) if started is None else _to(recipe, asked.asked, started.name)

    @router.get("/sizes/{recipe}/work/{name}.json")
    def how_far(recipe: str, name: str) -> JSONResponse:
        recipe_named(room, recipe)
        return progress(works, name)

    @router.post("/sizes/{recipe}/stop")
    def stop(recipe: str, fields: Annotated[dict[str, str], Depends(_in_form)]) -> Response:
        going = works.find(fields.get("work", ""))
        if going is not None:
            going.stop()
        return _to(recipe, _asked(room, recipe, fields))


async def _in_form(request: Request) -> dict[str, str]:
    """The fields of a form, whatever they are called."""
    form = await request.form(max_files=0, max_fields=MOST_FIELDS)
    return {name: text for name, text in form.items() if isinstance(text, str)}


def _to(recipe: str, asked: Asked, work: str = "") -> Response:
    return RedirectResponse(f"/sizes/{quote(recipe)}?{asked.query(work=work)}", SEE_OTHER)


def _in_work(room: Room, recipe: str, asked: AskedRun, going: LongWork) -> Response:
    """How far the run is; the run itself where it is drawn or was stopped.

    Raises:
        Exception: What broke the work off.
    """
    if going.fault is not None:
        raise going.fault
    if going.is_over:
        return _to(recipe, asked.asked)
    return render(
        room,
        "in_work.html",
        title=f"{asked.asked.recipe.title}, sizes {asked.sizes[0]} to {asked.sizes[-1]}",
        doing="Drawing every size",
        share=going.share,
        asks=f"/sizes/{quote(recipe)}/work/{going.name}.json",
        stops=f"/sizes/{quote(recipe)}/stop",
        fields=[*asked.asked.typed, ("work", going.name)],
    )


def _asked(room: Room, recipe: str, fields: Mapping[str, str]) -> Asked:
    """What is drafted in every size: the choices alone, for a run has a body of its own for each size."""
    found = recipe_named(room, recipe)
    whole = understand(found, fields, room.preferences)
    kept = {name: text for name, text in whole.typed if name not in {*whole.measures, "for-name", "work"}}
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


def _run(room: Room, recipe: str, fields: Mapping[str, str]) -> AskedRun | Complaint:
    """The run that was asked for, or why it cannot be.

    Raises:
        HTTPException: There is no such recipe, or its paper is not understood.
    """
    asked = _asked(room, recipe, fields)
    sizes = _sizes(fields, asked.recipe)
    if isinstance(sizes, Problem):
        return Complaint(asked, sizes.message)
    paper = read_paper(dict(asked.typed).get("on-paper", room.preferences.paper))
    if not isinstance(paper, Paper):
        raise HTTPException(NOT_UNDERSTOOD, paper.message)
    return AskedRun(asked, sizes, paper, room.today())


def _page(room: Room, recipe: str, asked: Asked, sizes: Sizes, complaint: str = "") -> Json:
    return {
        "recipe": recipe,
        "asked": asked,
        "title": asked.recipe.title,
        "all_sizes": SIZES,
        "sizes": sizes,
        "complaint": complaint,
        "paper": room.preferences.paper,
        "drawn": False,
        "files": [],
        "unmatched": [],
        "each": [],
    }


def _of_run(drawn: DrawnRun) -> Json:
    return {
        "drawn": True,
        "files": [(sheet.name, sheet.title) for sheet in drawn.sheets],
        "unmatched": [one.message for one in drawn.run.problems if one.code == UNMATCHED],
        "each": [(size.label, drawn.asked.asked.query(for_size=size.label)) for size in drawn.run.sizes],
    }
