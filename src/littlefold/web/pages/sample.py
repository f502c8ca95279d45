"""The sample taken away with one click; what the maker has changed of it is asked about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from littlefold.problem import Problem
from littlefold.store.sample import sample_in, take_away
from littlefold.web.kept_lays import ENDING
from littlefold.web.pages import children_drafts, children_growth
from littlefold.web.pages.children_box import Cards, Field, refusal
from littlefold.web.recent import forget_child
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.store import CardBox
    from littlefold.store.sample import Sample

SEE_OTHER = 303


def routes(cards: Cards) -> APIRouter:
    """The routes of the sample."""
    router, room = APIRouter(), cards.room

    @router.get("/sample")
    def question() -> HTMLResponse:
        box = cards.box()
        return refusal(room, box) if isinstance(box, Problem) else _question(cards, sample_in(box))

    @router.post("/sample/away")
    def away(changed: Field = "") -> Response:
        box = cards.box()
        if isinstance(box, Problem):
            return refusal(room, box)
        found = sample_in(box)
        if (found.changed_children or found.changed_classes) and changed not in ("keep", "away"):
            return _question(cards, found)
        _take_away(cards, box, also_changed=changed == "away")
        return RedirectResponse("/?done=sample-away", SEE_OTHER)

    return router


def _question(cards: Cards, found: Sample) -> HTMLResponse:
    return render(cards.room, "sample.html", sample=found)


def _take_away(cards: Cards, box: CardBox, *, also_changed: bool) -> None:
    before = box.names()
    take_away(box, also_changed=also_changed)
    cards.room.searches.end_all(ENDING)
    for name in set(before) - set(box.names()):
        forget_child(cards.room.folder, name)
    children_drafts.forget()
    cards.room.making.forget()
    children_growth.forget()
