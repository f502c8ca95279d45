"""A drawing is a link: `/draw/casing-top.svg?chest=560&ease=120`.

The same without findings, sooner made, is what the drafting table asks for while something moves:
`/draw/casing-top/moving.svg?chest=560&ease=120`.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from fastapi import APIRouter
from fastapi.responses import Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.sheet.svg import STYLE
from littlefold.web.at_door import recipe_named
from littlefold.web.small_drawing import small_drawing
from littlefold.web.telling import drawn, moving

if TYPE_CHECKING:
    from littlefold.web.room import Room

SVG = "image/svg+xml"


def routes(room: Room) -> APIRouter:
    """The routes of the drawings."""
    router = APIRouter()

    @lru_cache(maxsize=64)
    def remembered(name: str, fingerprint: str) -> str:
        del fingerprint  # it only parts a changed recipe from the one before
        return small_drawing(room, name)

    @router.get("/draw/{recipe}.svg")
    def draw(recipe: str, request: Request) -> Response:
        recipe_named(room, recipe)
        return Response(room.hands.ask(room, drawn, recipe, request.query_params.items()), media_type=SVG)

    @router.get("/draw/{recipe}/moving.svg")
    def redraw(recipe: str, request: Request) -> Response:
        recipe_named(room, recipe)
        return Response(room.hands.ask(room, moving, recipe, request.query_params.items()), media_type=SVG)

    @router.get("/small/{recipe}.svg")
    def small(recipe: str) -> Response:
        drawing = remembered(recipe, recipe_named(room, recipe).fingerprint)
        return Response(drawing, media_type=SVG)

    @router.get("/marks.css")
    def marks() -> Response:
        return Response(STYLE, media_type="text/css")

    return router
