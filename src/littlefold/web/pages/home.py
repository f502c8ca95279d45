"""The first page: begin with a garment, or with a first draft in two minutes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fastapi import APIRouter
from fastapi.responses import HTMLResponse  # noqa: TC002 - FastAPI reads the signature

from littlefold.web.garment import garment
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

FIRST = ("casing-top", "bloomers", "bib")
"""Garments that a newcomer draws first: few lines, little cloth."""


def routes(room: Room) -> APIRouter:
    """The routes of the first page."""
    router = APIRouter()

    @router.get("/")
    def home() -> HTMLResponse:
        found = (room.recipe(name) for name in FIRST)
        first = [garment(recipe) for recipe in found if recipe is not None]
        return render(room, "home.html", first=first)

    return router
