"""Drafts for a child: begun with her readings, kept on her card, printed again exactly, and what trying on showed."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING, Annotated, Any
from urllib.parse import parse_qsl, urlencode

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.booklet.bundle import bundle
from littlefold.problem import Problem
from littlefold.sheet.paper import read_paper
from littlefold.store import Card, PastDraft
from littlefold.store.reprint import findings_again, past_draft, pattern_again, speech_of
from littlefold.web.asked import MOST_FIELDS, understand
from littlefold.web.pages.children_begin import offer
from littlefold.web.pages.children_box import NOT_UNDERSTOOD, Cards, Field, refusal
from littlefold.web.pages.children_fittings import (
    LONGEST_WORDS,
    Tried,
    changed_draft,
    read_fitting,
    with_tried,
)
from littlefold.web.pages.children_said import draft_line
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.booklet.bundle import Sheet

Json = dict[str, Any]

SEE_OTHER = 303
LONGEST_QUERY = 6000
_PLACE = re.compile(r"^[^,\s]+, line \d+, column \d+: ")
"""What a message begins with where it stands alone; on a card nobody asks for the line of the recipe."""
KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml"}


def routes(cards: Cards) -> APIRouter:
    """The routes of a child's drafts."""
    router = APIRouter()
    _beginning(router, cards)
    _again(router, cards)
    return router


def _beginning(router: APIRouter, cards: Cards) -> None:
    room = cards.room

    @router.get("/child/garments")
    def garments(name: str = "") -> HTMLResponse:
        card = cards.card(name)
        if isinstance(card, Problem):
            return refusal(room, card)
        units = room.preferences.units
        found = [offer(card, recipe, room.today(), units) for recipe in room.recipes()]
        told: Json = {
            "fitting": [one for one in found if one["suits"]],
            "others": [one for one in found if not one["suits"]],
        }
        return render(room, "child_garments.html", name=card.name, measured=card.latest() is not None, **told)

    @router.post("/child/keep")
    def keep(name: Field = "", recipe: Field = "", query: Field = "") -> Response:
        found = room.recipe(recipe)
        if found is None:
            unknown = Problem(
                "recipe-unknown", f"There is no recipe “{recipe[:60]}” any more, so nothing was kept."
            )
            return refusal(room, unknown, {"name": name})
        fields = dict(parse_qsl(query[:LONGEST_QUERY])[:MOST_FIELDS])
        wish = understand(found, fields, room.preferences).wish
        draft = past_draft(wish, room.fulfil(wish), room.today(), units=room.preferences.units)
        return _changed(cards, name, lambda card: card.with_draft(draft), len)


def _again(router: APIRouter, cards: Cards) -> None:
    @router.get("/child/draft/{number:int}")
    def one_draft(number: int, name: str = "") -> HTMLResponse:
        found = _draft(cards, name, number)
        return refusal(cards.room, found) if isinstance(found, Problem) else _page(cards, name, number, found)

    @router.post("/child/draft/{number:int}/fitting")
    def fitting(number: int, fields: Annotated[dict[str, str], Depends(_in_form)]) -> Response:
        name = fields.get("name", "")
        found = _draft(cards, name, number)
        if isinstance(found, Problem):
            return refusal(cards.room, found, fields)
        tried = read_fitting(cards.room, found, _pattern_again(found)[0].draft, fields)
        if tried.complaint:
            return _page(cards, name, number, found, tried)
        return _kept(cards, name, number, found, tried)

    @router.get("/child/draft/{number:int}/{file}")
    def one_file(number: int, file: str, name: str = "") -> Response:
        found = _draft(cards, name, number)
        if isinstance(found, Problem):
            return refusal(cards.room, found)
        sheet = next((one for one in _sheets(cards, found) if one.name == file), None)
        if sheet is None:
            return refusal(cards.room, Problem("draft-not-known", f"This draft has no sheet “{file[:60]}”."))
        headers = {"content-disposition": f'inline; filename="draft-{number}-{sheet.name}"'}
        return Response(sheet.make(), media_type=KINDS[file.rpartition(".")[2]], headers=headers)


async def _in_form(request: Request) -> dict[str, str]:
    """The fields of a form, whatever they are called."""
    form = await request.form(max_files=0, max_fields=MOST_FIELDS)
    return {name: text[:LONGEST_WORDS] for name, text in form.items() if isinstance(text, str)}


def _kept(cards: Cards, name: str, number: int, draft: PastDraft, tried: Tried) -> Response:
    """The fitting kept; the page of the changed draft where there is one, else of the one that was tried on."""
    day, anew = cards.room.today(), changed_draft(cards.room, draft, tried, number)
    if isinstance(anew, Problem):
        return _page(cards, name, number, draft, replace(tried, complaint=_PLACE.sub("", anew.message)))

    def fitted(card: Card) -> Card:
        return with_tried(card, number, tried, anew, day)

    return _changed(cards, name, fitted, lambda drafts: len(drafts) if anew else number)


def _draft(cards: Cards, name: str, number: int) -> PastDraft | Problem:
    card = cards.card(name)
    if isinstance(card, Problem):
        return card
    if 1 <= number <= len(card.drafts):
        return card.drafts[number - 1]
    return Problem(
        "draft-not-known", f"{card.name} has {len(card.drafts)} drafts; there is no draft {number}."
    )


_pattern_again = lru_cache(maxsize=4)(pattern_again)


def forget() -> None:
    """Lets go of the patterns that are remembered; nothing of an erased child may stay."""
    _pattern_again.cache_clear()


def _sheets(cards: Cards, draft: PastDraft) -> tuple[Sheet, ...]:
    pattern, problems = _pattern_again(draft)
    paper = read_paper(cards.room.preferences.paper)
    assert not isinstance(paper, Problem)  # noqa: S101 - only papers are kept
    found = (*problems, *findings_again(draft, pattern))
    return tuple(bundle(pattern, found, speech_of(draft), paper, draft.made))


def _page(cards: Cards, name: str, number: int, draft: PastDraft, tried: Tried | None = None) -> HTMLResponse:
    pattern, problems = _pattern_again(draft)
    room = cards.room
    told = tried or read_fitting(room, draft, pattern.draft, {})
    return render(
        room,
        "child_draft.html",
        NOT_UNDERSTOOD if tried else 200,
        name=name,
        draft=draft_line(draft, number, pattern.draft.title, room.preferences.units),
        files=[(sheet.name, sheet.title) for sheet in _sheets(cards, draft)],
        problems=[problem.message for problem in problems],
        tried=told,
    )


def _changed(cards: Cards, name: str, revise: Any, number_of: Any) -> Response:
    box = cards.box()
    kept = (box,) if isinstance(box, Problem) else box.change(name, revise)
    if not isinstance(kept, Card):
        return refusal(cards.room, kept[0], {"name": name})
    number = number_of(kept.drafts)
    return RedirectResponse(f"/child/draft/{number}?" + urlencode({"name": kept.name}), SEE_OTHER)
