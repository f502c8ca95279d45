"""The children: their cards in the box, a new card, all cards taken out and in again."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import urlencode

from fastapi import APIRouter, UploadFile
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from littlefold.problem import Problem
from littlefold.store import Card, cards_from_json, cards_to_json, readings_from_csv, readings_to_csv
from littlefold.web.pages import (
    children_card,
    children_drafts,
    children_growth,
    children_measure,
    classes,
    sample,
)
from littlefold.web.pages.children_box import NOT_UNDERSTOOD, Cards, Field, refusal
from littlefold.web.pages.children_head import new_card
from littlefold.web.pages.children_said import on_list
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

SEE_OTHER = 303
KEPT_APART = {"content-disposition": 'attachment; filename="{}"', "cache-control": "no-store"}
ENDINGS = {"json": "application/json", "csv": "text/csv"}


def routes(room: Room) -> APIRouter:
    """The routes of the children."""
    cards = Cards(room)
    router = APIRouter(lifespan=cards.while_open)
    router.include_router(_list(cards))
    for family in (children_card, children_measure, children_growth, children_drafts, classes, sample):
        router.include_router(family.routes(cards))
    return router


def _list(cards: Cards) -> APIRouter:
    router, room = APIRouter(), cards.room

    @router.get("/children")
    def children(done: str = "") -> HTMLResponse:
        return _page(cards, done=done)

    @router.post("/children")
    def add(name: Field = "", born: Field = "", sex: Field = "") -> Response:
        typed = {"name": name, "born": born, "sex": sex}
        card = new_card(typed, room.today())
        faults = (card,) if isinstance(card, Problem) else _added(cards, card)
        if faults:
            return _page(cards, typed, tuple(fault.message for fault in faults))
        return RedirectResponse("/child?" + urlencode({"name": name.strip()}), SEE_OTHER)

    @router.get("/children/cards.{ending}")
    def export(ending: str, name: str = "") -> Response:
        return _file(cards, ending, name)

    @router.post("/children/import")
    def take_in(file: UploadFile | None = None) -> Response:
        found = _read(file)
        faults = [one.message for one in found if isinstance(one, Problem)]
        if not faults:
            taken = tuple(one for one in found if isinstance(one, Card))
            faults = [fault.message for fault in _added(cards, *taken)]
        return _page(cards, complaints=tuple(faults)) if faults else _see("taken-in")

    return router


def _added(cards: Cards, *new: Card) -> tuple[Problem, ...]:
    box = cards.box()
    return (box,) if isinstance(box, Problem) else box.add(*new)


def _see(done: str) -> Response:
    return RedirectResponse(f"/children?done={done}", SEE_OTHER)


def _page(
    cards: Cards, typed: dict[str, str] | None = None, complaints: tuple[str, ...] = (), done: str = ""
) -> HTMLResponse:
    box, room = cards.box(), cards.room
    if isinstance(box, Problem):
        return refusal(room, box, typed)
    units = room.preferences.units
    return render(
        room,
        "children.html",
        NOT_UNDERSTOOD if complaints else 200,
        children=[on_list(card, room.today(), units) for card in box.cards()],
        typed=typed or {"name": "", "born": "", "sex": ""},
        complaints=complaints,
        done=done,
        today=room.today().isoformat(),
    )


def _file(cards: Cards, ending: str, name: str) -> Response:
    """One card, or all, as a file to keep."""
    box = cards.box()
    found = (box,) if isinstance(box, Problem) else (box.card(name),) if name else box.cards()
    fault = next((one for one in found if isinstance(one, Problem)), None)
    if fault is None and ending not in ENDINGS:
        fault = Problem("file-kind", "Cards are kept as .json, readings alone as .csv.")
    if fault is not None:
        return refusal(cards.room, fault)
    taken = tuple(one for one in found if isinstance(one, Card))
    text = readings_to_csv(taken) if ending == "csv" else cards_to_json(taken)
    headers = {key: value.format(f"cards.{ending}") for key, value in KEPT_APART.items()}
    return Response(text, media_type=ENDINGS[ending], headers=headers)


def _read(file: UploadFile | None) -> tuple[Card | Problem, ...]:
    """The cards of a file that was chosen; its size was bounded at the door."""
    if file is None:
        return (Problem("file-missing", "Choose a file first."),)
    try:
        text = file.file.read().decode("utf-8")
    except UnicodeDecodeError:
        return (Problem("file-not-text", "This file is not text. Choose one that the workroom wrote."),)
    is_table = (file.filename or "").lower().endswith(".csv")
    return readings_from_csv(text) if is_table else cards_from_json(text)
