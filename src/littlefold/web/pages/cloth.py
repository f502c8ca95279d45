"""Cloth: a lay at once for each cloth of the garment, better ones as the search goes on, and one shopping list."""

from __future__ import annotations

import secrets
from contextlib import asynccontextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal
from urllib.parse import parse_qsl, urlencode

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.chart import SIZES
from littlefold.web.asked import MOST_FIELDS, understand
from littlefold.web.at_door import NOT_FOUND, asked_in, recipe_named
from littlefold.web.pages.children_box import Field  # noqa: TC001 - FastAPI reads the signature
from littlefold.web.pages.cloth_compared import comparing, parts_of
from littlefold.web.pages.cloth_laid import best_lay, improving, lays_to_buy, on_cloths
from littlefold.web.pages.cloth_prices import read_prices
from littlefold.web.pages.cloth_printed import plan_of, printed, to_buy
from littlefold.web.pages.cloth_said import list_words
from littlefold.web.pages.cloth_slips import lay_told, price_slip, slip
from littlefold.web.rendering import render, words

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Mapping

    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.shopping import ShoppingList
    from littlefold.pipeline import Outcome
    from littlefold.web.asked import Asked
    from littlefold.web.long_work import LongWork
    from littlefold.web.pages.cloth_laid import OnCloth
    from littlefold.web.pages.cloth_prices import Prices
    from littlefold.web.room import Room

Json = dict[str, Any]

SEE_OTHER = 303
BUSY = 503
LONGEST_QUERY = 12_000
SECONDS = {"10": 10.0, "30": 30.0, "120": 120.0}
LONGEST_COMPARING = 120.0
PASSING = ("search", "search-of", "on-cloth")
"""Words of a link that say what is going on, not what is laid."""


@dataclass(frozen=True, slots=True)
class Garment:
    """A draft on its cloths.

    Attributes:
        outcome: The draft.
        cloths: What is cut from each cloth, the first one first.
        prices: Of notions and thread.
    """

    outcome: Outcome
    cloths: tuple[OnCloth, ...]
    prices: Prices

    def on(self, name: str) -> OnCloth:
        """The cloth of that name; the first where there is none."""
        return next((one for one in self.cloths if one.name == name), self.cloths[0])


def routes(room: Room) -> APIRouter:
    """The routes of the cloth."""

    @asynccontextmanager
    async def while_open(_: Any) -> AsyncIterator[None]:
        yield
        room.searches.stop_all()

    router = APIRouter(lifespan=while_open)
    _pages(router, room)
    _sheets(router, room)
    _searching(router, room)
    return router


def _pages(router: APIRouter, room: Room) -> None:
    @router.get("/cloth/{recipe}")
    def cloth(recipe: str, request: Request) -> Response:
        asked = asked_in(room, recipe, request)
        if request.query_params.get("bare-numbers"):  # a form: answered by the link that means the same
            return RedirectResponse(f"/cloth/{recipe}?{asked.query()}", SEE_OTHER)
        return _page(room, recipe, asked)

    @router.get("/cloth/{recipe}/search/{name}.json")
    def progress(recipe: str, name: str, request: Request, seen: int = -1) -> Response:
        search = room.searches.find(name)
        if search is None:
            raise HTTPException(NOT_FOUND)
        told: Json = {"share": round(search.share, 3), "over": search.is_over, "count": len(search.found)}
        if len(search.found) != seen or search.is_over:
            told |= _found_so_far(room, recipe, asked_in(room, recipe, request))
        return JSONResponse(told)


def _sheets(router: APIRouter, room: Room) -> None:
    @router.get("/cloth/{recipe}/{sheet}.pdf")
    def one_sheet(recipe: str, sheet: Literal["lay", "marker"], request: Request) -> Response:
        garment = _garment(room, asked_in(room, recipe, request))
        on = garment.on(request.query_params.get("on-cloth", ""))
        lay = _best(room, on)
        if lay is None:
            raise HTTPException(NOT_FOUND)
        units = room.preferences.units
        plan = plan_of(on, lay, _rows(room, on), _shopping(room, garment), units)
        made = printed(plan, room, sheet)
        if made is None:
            raise HTTPException(NOT_FOUND)
        headers = {"content-disposition": f'inline; filename="{sheet}.pdf"'}
        return Response(made, media_type="application/pdf", headers=headers)


def _searching(router: APIRouter, room: Room) -> None:
    @router.post("/cloth/{recipe}/search")
    def search(
        recipe: str, query: Field = "", seconds: Field = "", kind: Field = "lay", cloth: Field = ""
    ) -> Response:
        fields = _lasting(query)
        on = _garment(room, understand(recipe_named(room, recipe), fields, room.preferences)).on(cloth)
        started = _compare(room, on) if kind == "ways" else _improve(room, on, seconds)
        if started is None:
            sentence = "Two searches are going on already. Stop one of them, or wait for its end."
            return render(room, "sentence.html", BUSY, sentence=sentence, typed=list(fields.items()))
        going = {"search": started.name} | ({"search-of": "ways"} if kind == "ways" else {})
        return _to(recipe, fields | going, on.name)

    @router.post("/cloth/{recipe}/search/{name}/stop")
    def stop(recipe: str, name: str, query: Field = "", cloth: Field = "") -> Response:
        recipe_named(room, recipe)
        going = room.searches.find(name)
        if going is None:
            raise HTTPException(NOT_FOUND)
        going.stop()
        going.wait(5.0)
        return _to(recipe, _lasting(query), cloth)


def _lasting(query: str) -> dict[str, str]:
    """What a link says of garment and cloth."""
    fields = parse_qsl(query[:LONGEST_QUERY])[:MOST_FIELDS]
    return {name: text for name, text in fields if name not in PASSING}


def _to(recipe: str, fields: Mapping[str, str], cloth: str) -> Response:
    place = f"lay-{cloth}" if cloth.isidentifier() else "lays"
    return RedirectResponse(f"/cloth/{recipe}?{urlencode(fields)}#{place}", SEE_OTHER)


def _improve(room: Room, on: OnCloth, seconds: str) -> LongWork | None:
    """Sets off a search, or goes on from what an earlier one has found; None where too many are going on."""
    going = room.searches.about(on.question)
    if going is not None and not going.is_over:
        return going
    limit = SECONDS.get(seconds, SECONDS["10"])
    known = room.lays.find(on.who, on.question)
    seed = 1 if known is None else secrets.randbelow(2**31)
    work = improving(on, room.engine, limit, known, seed)
    return room.searches.start(room.lays.keeping(on.who, on.question, work), limit, label=on.question)


def _compare(room: Room, on: OnCloth) -> LongWork | None:
    going = room.searches.about(_ways(on))
    if going is not None and not going.is_over:
        return going
    return room.searches.start(comparing(on), LONGEST_COMPARING, parts_of(on), _ways(on))


def _ways(on: OnCloth) -> str:
    """What a comparison is about: its rows name prices."""
    return f"ways {on.question} {on.asked.cloth.price}"


def _garment(room: Room, asked: Asked) -> Garment:
    outcome, fields, units = room.fulfil(asked.wish), dict(asked.typed), room.preferences.units
    return Garment(outcome, on_cloths(outcome, fields, units), read_prices(fields, outcome, units))


def _best(room: Room, on: OnCloth) -> Lay | None:
    """The shortest lay known: of the search that goes on, of one whose lay was kept, else the first."""
    work, kept = room.searches.about(on.question), room.lays.find(on.who, on.question)
    return best_lay(on, [*(work.found[-1:] if work else ()), *([kept] if kept else ())])


def _rows(room: Room, on: OnCloth) -> tuple[Row, ...]:
    work = room.searches.about(_ways(on))
    return tuple(work.found) if work else ()


def _shopping(room: Room, garment: Garment) -> ShoppingList:
    best = [_best(room, on) for on in garment.cloths]
    lays = lays_to_buy(garment.cloths, best)
    return to_buy(garment.outcome, lays, garment.prices, room.preferences.units)


def _page(room: Room, recipe: str, asked: Asked) -> HTMLResponse:
    garment, units = _garment(room, asked), room.preferences.units
    name = dict(asked.typed).get("search", "")
    told: Json = {
        "title": garment.outcome.draft.title,
        "slips": [slip(on, units) for on in garment.cloths],
        "prices": price_slip(garment.prices),
        "cloths": [_told(room, on) for on in garment.cloths],
        "sizes": SIZES,
        "units": units,
        "query": _lasting_query(asked),
        "seconds": tuple(SECONDS),
        "gone": bool(name) and room.searches.find(name) is None,
        "of_ways": dict(asked.typed).get("search-of") == "ways",
        "list": list_words(_shopping(room, garment), units),
    }
    return render(room, "cloth.html", recipe=recipe, asked=asked, **told)


def _lasting_query(asked: Asked) -> str:
    return asked.query(dict.fromkeys((*PASSING, "seen"), ""))


def _told(room: Room, on: OnCloth) -> Json:
    searches = room.searches
    going = (searches.about(on.question), searches.about(_ways(on)))
    return lay_told(on, _best(room, on), going, room.preferences.units)


def _found_so_far(room: Room, recipe: str, asked: Asked) -> Json:
    """What a search has changed on the page: one lay, and the shopping list."""
    garment, units = _garment(room, asked), room.preferences.units
    cloth = _told(room, garment.on(dict(asked.typed).get("on-cloth", "")))
    shopping = list_words(_shopping(room, garment), units)
    told: Json = {"recipe": recipe, "query": _lasting_query(asked), "cloth": cloth, "list": shopping}
    return {
        "html": words(room, "cloth_found.html", **told),
        "list": words(room, "cloth_list.html", prices=price_slip(garment.prices), **told),
    }
