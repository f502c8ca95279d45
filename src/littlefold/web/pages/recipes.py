"""Recipes to read beside their drawing, and to take along as text."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.recipe.shelf import shipped_names
from littlefold.web.at_door import recipe_named
from littlefold.web.garment import garment
from littlefold.web.reading import read_recipe
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

Json = dict[str, Any]


def routes(room: Room) -> APIRouter:
    """The routes of the recipes."""
    router = APIRouter()

    @router.get("/recipes")
    def shelf() -> HTMLResponse:
        cards = [garment(recipe) for recipe in room.recipes()]
        return render(room, "shelf.html", cards=cards)

    @router.get("/recipes/{name}.recipe")
    def export(name: str) -> Response:
        recipe = recipe_named(room, name)
        called = {"content-disposition": f'attachment; filename="{recipe.file}.recipe"'}
        return Response(recipe.text, media_type="text/plain; charset=utf-8", headers=called)

    @router.get("/recipes/{name}.json")
    def as_data(name: str, request: Request) -> Json:
        return read_recipe(room, recipe_named(room, name), request.query_params.get("on-sheet", ""))

    @router.get("/recipes/{name}")
    def read(name: str, request: Request) -> HTMLResponse:
        recipe = recipe_named(room, name)
        told = read_recipe(room, recipe, request.query_params.get("on-sheet", ""))
        own = name not in shipped_names()
        return render(
            room,
            "recipe.html",
            name=name,
            title=recipe.title,
            lines=recipe.text.split("\n"),
            told=told,
            own=own,
        )

    return router
