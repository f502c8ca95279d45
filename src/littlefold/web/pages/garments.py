"""All garments, to look at and to search."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse  # noqa: TC002 - FastAPI reads the signature

from littlefold.web.garment import garment
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

LONGEST = 60


def routes(room: Room) -> APIRouter:
    """The routes of the garments."""
    router = APIRouter()

    @router.get("/garments")
    def garments(look: str = "", tall: str = "") -> HTMLResponse:
        found = _found(room, look[:LONGEST], _height(tall))
        return render(room, "garments.html", garments=found, look=look[:LONGEST], tall=tall[:LONGEST])

    @router.get("/garments.json")
    def garments_as_data(look: str = "", tall: str = "") -> list[dict[str, Any]]:
        return _found(room, look[:LONGEST], _height(tall))

    return router


def _found(room: Room, look: str, tall: float | None) -> list[dict[str, Any]]:
    cards = [garment(recipe) for recipe in room.recipes()]
    return [card for card in cards if _says(card, look.lower()) and _suits(card, tall)]


def _says(card: dict[str, Any], look: str) -> bool:
    told = " ".join((card["name"], card["title"], card["kind"], card["source"], *card["measures"]))
    return all(word in told.lower() for word in look.split())


def _suits(card: dict[str, Any], tall: float | None) -> bool:
    return tall is None or card["low_cm"] <= tall <= card["high_cm"]


def _height(text: str) -> float | None:
    """A height in centimetres; None where none was written."""
    number = text.strip().lower().removesuffix("cm").strip().replace(",", ".")
    return float(number) if number.replace(".", "", 1).isdigit() and number.isascii() else None
