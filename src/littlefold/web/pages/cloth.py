"""Cloth: a lay at once, better ones as the search goes on, ways and widths compared, the shopping list."""

from __future__ import annotations

from contextlib import asynccontextmanager
from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any
from urllib.parse import parse_qsl, urlencode

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES
from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.cloth import WIDTHS
from littlefold.lay.compare import Row, compare
from littlefold.lay.lay import Lay
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.shrink import BY_FIBRE, advice
from littlefold.problem import Problem
from littlefold.web.asked import MOST_FIELDS, understand
from littlefold.web.at_door import NOT_FOUND, asked_in, recipe_named
from littlefold.web.pages.children_box import Field  # noqa: TC001 - FastAPI reads the signature
from littlefold.web.pages.cloth_asked import WAYS, read_cloth
from littlefold.web.pages.cloth_said import lay_words, list_words, ways_words
from littlefold.web.pages.cloth_search import Searches
from littlefold.web.rendering import render, words

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable, Iterator

    from littlefold.lay.cloth import Cloth
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.ways import Way
    from littlefold.pipeline import Outcome
    from littlefold.web.asked import Asked
    from littlefold.web.pages.cloth_asked import AskedCloth
    from littlefold.web.pages.cloth_search import Search
    from littlefold.web.preferences import Units
    from littlefold.web.room import Room

Json = dict[str, Any]

SEE_OTHER = 303
BUSY = 503
LONGEST_QUERY = 6000
SECONDS = {"10": 10.0, "30": 30.0, "120": 120.0}
ENDLESS = 10**12
"""Moves of a search that its time alone ends."""
LONGEST_COMPARING = 120.0


def routes(room: Room) -> APIRouter:
    """The routes of the cloth."""
    searches = Searches()

    @asynccontextmanager
    async def while_open(_: Any) -> AsyncIterator[None]:
        yield
        searches.stop_all()

    router = APIRouter(lifespan=while_open)
    _pages(router, room, searches)
    _searching(router, room, searches)
    return router


def _pages(router: APIRouter, room: Room, searches: Searches) -> None:
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
            told |= {"html": _found_so_far(room, search, asked_in(room, recipe, request))}
        return JSONResponse(told)


def _searching(router: APIRouter, room: Room, searches: Searches) -> None:
    @router.post("/cloth/{recipe}/search")
    def search(recipe: str, query: Field = "", seconds: Field = "", kind: Field = "lay") -> Response:
        recipe_named(room, recipe)
        fields = dict(parse_qsl(query[:LONGEST_QUERY], max_num_fields=MOST_FIELDS))
        fields.pop("search", None)
        prepared = _on_cloth(room, recipe, fields)
        work = _comparing(prepared) if kind == "ways" else _improving(prepared)
        limit = LONGEST_COMPARING if kind == "ways" else SECONDS.get(seconds, SECONDS["10"])
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
        return _to(recipe, dict(parse_qsl(query[:LONGEST_QUERY], max_num_fields=MOST_FIELDS)))


def _to(recipe: str, fields: dict[str, str]) -> Response:
    return RedirectResponse(f"/cloth/{recipe}?{urlencode(fields)}#lay", SEE_OTHER)


class _OnCloth:
    """Pieces to be laid on a cloth."""

    def __init__(self, room: Room, asked: Asked, fields: dict[str, str]) -> None:
        self.outcome: Outcome = room.fulfil(asked.wish)
        self.names = tuple(dict.fromkeys(piece.cloth for piece in self.outcome.pattern.pieces))
        said = fields.get("cloth-name", "")
        self.name = said if said in self.names else next(iter(self.names), "main")
        self.asked: AskedCloth = read_cloth(fields, self.name, room.preferences.units)
        found, self.problems = lay_pieces(self.outcome.pattern, self.name)
        self.pieces: tuple[LayPiece, ...] = enlarged(found, self.asked.cloth)


def _on_cloth(room: Room, recipe: str, fields: dict[str, str]) -> _OnCloth:
    return _OnCloth(room, understand(recipe_named(room, recipe), fields, room.preferences), fields)


@lru_cache(maxsize=32)
def first_row(pieces: tuple[LayPiece, ...], cloth: Cloth, way: Way) -> Row:
    """A lay that is found at once and what is to be said of it, or why there is none."""
    prepared = prepare(pieces, cloth, way)
    if not isinstance(prepared, Prepared):
        return Row(way, cloth.width, None, None, prepared)
    lay = next(lays(prepared, Effort(steps=0)), None)
    told = prepared.bounds.advice() if lay else (Problem("lay-not-found", "No lay was found that holds."),)
    return Row(way, cloth.width, lay, prepared.bounds, told)


def _improving(on: _OnCloth) -> Callable[[Callable[[], bool]], Iterator[Lay]]:
    def work(keep_going: Callable[[], bool]) -> Iterator[Lay]:
        prepared = prepare(on.pieces, on.asked.cloth, on.asked.way)
        if isinstance(prepared, Prepared):
            yield from lays(prepared, Effort(ENDLESS, keep_going=keep_going))

    return work


def _comparing(on: _OnCloth) -> Callable[[Callable[[], bool]], Iterator[Row]]:
    def work(keep_going: Callable[[], bool]) -> Iterator[Row]:
        widths = sorted(
            {on.asked.cloth.width, *(width for width in WIDTHS if width in (1120.0, 1400.0, 1500.0))}
        )
        yield from compare(on.pieces, on.asked.cloth, Effort(0, keep_going=keep_going), WAYS, widths)

    return work


def _page(room: Room, searches: Searches, recipe: str, asked: Asked, fields: dict[str, str]) -> HTMLResponse:
    on = _OnCloth(room, asked, fields)
    search = searches.find(fields.get("search", ""))
    units = room.preferences.units
    shrinks = advice(on.asked.cloth.shrinkage, on.asked.cloth.treatment)
    told = {
        "title": on.outcome.draft.title,
        "typed": on.asked.typed,
        "refused": on.asked.refused,
        "way": str(on.asked.way),
        "ways": [str(way) for way in WAYS],
        "fibres": tuple(BY_FIBRE),
        "names": on.names,
        "name": on.name,
        "sizes": SIZES,
        "units": units,
        "remarks": [problem.message for problem in (*on.problems, *shrinks)],
        "query": asked.query(search=""),
        "seconds": tuple(SECONDS),
        **_lay_words(on, search, units),
    }
    return render(room, "cloth.html", recipe=recipe, asked=asked, **told)


def _all_lays(on: _OnCloth, lay: Lay | None) -> tuple[Lay, ...]:
    """A lay for each cloth of the garment: the one that is shown, and the first for the others."""
    found = (lay if name == on.name else _other_lay(on, name) for name in on.names)
    return tuple(one for one in found if one is not None)


def _other_lay(on: _OnCloth, name: str) -> Lay | None:
    pieces, _ = lay_pieces(on.outcome.pattern, name)
    cloth = replace(on.asked.cloth, name=name, price=None)
    return first_row(enlarged(pieces, cloth), cloth, on.asked.way).lay


def _best(on: _OnCloth, search: Search | None) -> Lay | None:
    """The best lay of a search for this very cloth, else the first lay."""
    first = first_row(on.pieces, on.asked.cloth, on.asked.way).lay
    found = [one for one in (search.found if search else []) if isinstance(one, Lay)]
    if not found or first is None:
        return first
    best = found[-1]
    return (
        best if (best.cloth, best.spread, best.pieces) == (first.cloth, first.spread, first.pieces) else first
    )


def _lay_words(on: _OnCloth, search: Search | None, units: Units) -> Json:
    """The lay, or why there is none; and what is to be bought."""
    lay, first = _best(on, search), first_row(on.pieces, on.asked.cloth, on.asked.way)
    return {
        "lay": None if lay is None else lay_words(lay, units),
        "why": [problem.message for problem in first.problems],
        "list": list_words(on.outcome, _all_lays(on, lay), units),
        **_search_words(search, units),
    }


def _search_words(search: Search | None, units: Units) -> Json:
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


def _found_so_far(room: Room, search: Search, asked: Asked) -> str:
    on = _OnCloth(room, asked, dict(asked.typed))
    return words(room, "cloth_found.html", **_lay_words(on, search, room.preferences.units))
