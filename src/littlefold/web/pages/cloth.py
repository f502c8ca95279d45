"""Cloth: a lay at once, better ones as the search goes on, ways and widths compared, the shopping list."""

from __future__ import annotations

from contextlib import asynccontextmanager
from typing import TYPE_CHECKING, Any, Literal
from urllib.parse import parse_qsl, urlencode

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES
from littlefold.lay.compare import Row
from littlefold.lay.shrink import BY_FIBRE, advice
from littlefold.web.asked import MOST_FIELDS, understand
from littlefold.web.at_door import NOT_FOUND, asked_in, recipe_named
from littlefold.web.long_work import LongWorks
from littlefold.web.pages.children_box import Field  # noqa: TC001 - FastAPI reads the signature
from littlefold.web.pages.cloth_asked import SQUARE, WAYS
from littlefold.web.pages.cloth_laid import (
    OnCloth,
    all_lays,
    best_lay,
    comparing,
    first_of,
    improving,
    on_cloth,
)
from littlefold.web.pages.cloth_printed import printed
from littlefold.web.pages.cloth_said import lay_words, list_words, ways_words
from littlefold.web.rendering import render, words

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from littlefold.web.asked import Asked
    from littlefold.web.long_work import LongWork
    from littlefold.web.preferences import Units
    from littlefold.web.room import Room

Json = dict[str, Any]

SEE_OTHER = 303
BUSY = 503
LONGEST_QUERY = 6000
SECONDS = {"10": 10.0, "30": 30.0, "120": 120.0}
LONGEST_COMPARING = 120.0
FOLDED_AWAY = (
    *("fibre", "nap", "both", "along", "across", "scraps", "square", "washed-along", "washed-across"),
    *("spots", "kept", "tilt", "notches"),
)
"""Words about the cloth that most cloths need not; they are folded away until one is said."""


def routes(room: Room) -> APIRouter:
    """The routes of the cloth."""
    searches = LongWorks()

    @asynccontextmanager
    async def while_open(_: Any) -> AsyncIterator[None]:
        yield
        searches.stop_all()

    router = APIRouter(lifespan=while_open)
    _pages(router, room, searches)
    _sheets(router, room, searches)
    _searching(router, room, searches)
    return router


def _pages(router: APIRouter, room: Room, searches: LongWorks) -> None:
    @router.get("/cloth/{recipe}")
    def cloth(recipe: str, request: Request) -> Response:
        asked = asked_in(room, recipe, request)
        if request.query_params.get("bare-numbers"):  # a form: answered by the link that means the same
            return RedirectResponse(f"/cloth/{recipe}?{asked.query()}", SEE_OTHER)
        return _page(room, searches, recipe, asked, dict(request.query_params))

    @router.get("/cloth/{recipe}/search/{name}.json")
    def progress(recipe: str, name: str, request: Request, seen: int = -1) -> Response:
        search = searches.find(name)
        if search is None:
            raise HTTPException(NOT_FOUND)
        told: Json = {"share": round(search.share, 3), "over": search.is_over, "count": len(search.found)}
        if len(search.found) != seen or search.is_over:
            told |= {"html": _found_so_far(room, recipe, search, asked_in(room, recipe, request))}
        return JSONResponse(told)


def _sheets(router: APIRouter, room: Room, searches: LongWorks) -> None:
    @router.get("/cloth/{recipe}/{sheet}.pdf")
    def one_sheet(recipe: str, sheet: Literal["lay", "marker"], request: Request) -> Response:
        asked = asked_in(room, recipe, request)
        fields = dict(request.query_params)
        on, search = _laid(room, asked, fields), searches.find(fields.get("search", ""))
        found = tuple(search.found) if search else ()
        made = printed(on, found, room, sheet)
        if made is None:
            raise HTTPException(NOT_FOUND)
        headers = {"content-disposition": f'inline; filename="{sheet}.pdf"'}
        return Response(made, media_type="application/pdf", headers=headers)


def _searching(router: APIRouter, room: Room, searches: LongWorks) -> None:
    @router.post("/cloth/{recipe}/search")
    def search(recipe: str, query: Field = "", seconds: Field = "", kind: Field = "lay") -> Response:
        recipe_named(room, recipe)
        fields = dict(parse_qsl(query[:LONGEST_QUERY])[:MOST_FIELDS])
        fields.pop("search", None)
        on = _laid(room, understand(recipe_named(room, recipe), fields, room.preferences), fields)
        limit = LONGEST_COMPARING if kind == "ways" else SECONDS.get(seconds, SECONDS["10"])
        work = comparing(on) if kind == "ways" else improving(on, room.engine, limit)
        started = searches.start(work, limit)
        if started is None:
            sentence = "Two searches are going on already. Stop one of them, or wait for its end."
            return render(room, "sentence.html", BUSY, sentence=sentence, typed=list(fields.items()))
        return _to(recipe, fields | {"search": started.name})

    @router.post("/cloth/{recipe}/search/{name}/stop")
    def stop(recipe: str, name: str, query: Field = "") -> Response:
        recipe_named(room, recipe)
        going = searches.find(name)
        if going is None:
            raise HTTPException(NOT_FOUND)
        going.stop()
        going.wait(5.0)
        return _to(recipe, dict(parse_qsl(query[:LONGEST_QUERY])[:MOST_FIELDS]))


def _to(recipe: str, fields: dict[str, str]) -> Response:
    return RedirectResponse(f"/cloth/{recipe}?{urlencode(fields)}#lay", SEE_OTHER)


def _laid(room: Room, asked: Asked, fields: dict[str, str]) -> OnCloth:
    return on_cloth(room.fulfil(asked.wish), fields, room.preferences.units)


def _page(room: Room, searches: LongWorks, recipe: str, asked: Asked, fields: dict[str, str]) -> HTMLResponse:
    on = _laid(room, asked, fields)
    search = searches.find(fields.get("search", ""))
    units = room.preferences.units
    shrinks = advice(on.asked.cloth.shrinkage, on.asked.cloth.treatment)
    told = {
        "title": on.outcome.draft.title,
        "typed": on.asked.typed,
        "refused": on.asked.refused,
        "way": str(on.asked.way),
        "ways": [str(way) for way in WAYS],
        "fibres": (*BY_FIBRE, SQUARE),
        "names": on.names,
        "name": on.name,
        "pieces": [piece.name for piece in on.pieces],
        "sizes": SIZES,
        "units": units,
        "remarks": [problem.message for problem in (*on.problems, *shrinks)],
        "query": asked.query(search=""),
        "seconds": tuple(SECONDS),
        "more": any(on.asked.typed.get(f"cloth-{word}") for word in FOLDED_AWAY),
        "lay_query": asked.query(),
        "gone": search is None and bool(fields.get("search")),
        **_lay_words(on, search, units),
    }
    return render(room, "cloth.html", recipe=recipe, asked=asked, **told)


def _lay_words(on: OnCloth, search: LongWork | None, units: Units) -> Json:
    """The lay, or why there is none; and what is to be bought."""
    lay, first = best_lay(on, search.found if search else ()), first_of(on)
    return {
        "lay": None if lay is None else lay_words(lay, units),
        "why": [] if lay and first.lay is None else [problem.message for problem in first.problems],
        "list": list_words(on.outcome, all_lays(on, lay), units),
        **_search_words(search, units),
    }


def _search_words(search: LongWork | None, units: Units) -> Json:
    rows = tuple(one for one in (search.found if search else []) if isinstance(one, Row))
    return {
        "search": None if search is None else search.name,
        "going": search is not None and not search.is_over,
        "share": 0.0 if search is None else search.share,
        "count": 0 if search is None else len(search.found),
        "spent": search is not None and search.is_spent and not rows,
        "broken": search is not None and search.fault is not None,
        "compared": ways_words(rows, units),
    }


def _found_so_far(room: Room, recipe: str, search: LongWork, asked: Asked) -> str:
    on = _laid(room, asked, dict(asked.typed))
    told = _lay_words(on, search, room.preferences.units)
    lay_query = asked.query(search=search.name)
    return words(room, "cloth_found.html", recipe=recipe, lay_query=lay_query, **told)
