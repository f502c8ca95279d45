"""One child's card: readings beside each other, growth, notes, drafts; corrected, printed, erased."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from littlefold.body.plausible import examine
from littlefold.problem import Problem
from littlefold.sheet.wording import spoken_date
from littlefold.store import Card, Note, birth_fault, key_of, not_searchable, remove_not_searchable
from littlefold.web.box_keeper import address_in
from littlefold.web.forgetting import forget_everywhere
from littlefold.web.kept_lays import ENDING
from littlefold.web.pages import children_drafts, children_growth
from littlefold.web.pages.children_box import NOT_UNDERSTOOD, Cards, Field, refusal
from littlefold.web.pages.children_head import new_card
from littlefold.web.pages.children_said import age_on, doubt, draft_line, readings_old, sets_beside
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.store import PastDraft

Json = dict[str, Any]

SEE_OTHER = 303
LONGEST_NOTE = 10_000


def routes(cards: Cards) -> APIRouter:
    """The routes of one card."""
    router = APIRouter()
    _showing(router, cards)
    _changing(router, cards)
    _erasing(router, cards)
    return router


def _showing(router: APIRouter, cards: Cards) -> None:
    @router.get("/child")
    def child(  # noqa: PLR0917 - words of a link
        name: str = "", done: str = "", on: str = "", fits: str = "", limit: str = "", of: str = ""
    ) -> HTMLResponse:
        asked = {"on": on[:40], "fits": fits[:80], "limit": limit[:60], "of": of[:80]}
        return page(cards, name, asked, done=done)


def _changing(router: APIRouter, cards: Cards) -> None:
    @router.post("/child/note")
    def note(name: Field = "", text: Field = "") -> Response:
        words = text.strip()[:LONGEST_NOTE]
        if not words:
            return page(cards, name, complaint="There were no words in the note.")
        return _changed(
            cards, name, {"note": text}, lambda card: card.with_note(Note(cards.room.today(), words))
        )

    @router.post("/child/correct")
    def correct(name: Field = "", to: Field = "", born: Field = "", sex: Field = "") -> Response:
        head = new_card({"name": to, "born": born, "sex": sex}, cards.room.today())
        if isinstance(head, Problem):
            return page(cards, name, complaint=head.message, head={"name": to, "born": born, "sex": sex})

        def corrected(card: Card) -> Card | Problem:
            fault = None if head.born is None else birth_fault(head.born, cards.room.today(), card)
            return fault or replace(card, name=head.name, born=head.born, sex=head.sex)

        return _changed(cards, name, {"name": to, "born": born, "sex": sex}, corrected)


def _erasing(router: APIRouter, cards: Cards) -> None:
    @router.get("/child/erase")
    def question(name: str = "", again: str = "") -> HTMLResponse:
        card = cards.card(name)
        if isinstance(card, Problem):
            return refusal(cards.room, card)
        return _question(cards, card, again=bool(again))

    @router.post("/child/erase")
    def erase(name: Field = "", written: Field = "", damaged: Field = "") -> Response:
        box = cards.box()
        card = box if isinstance(box, Problem) else box.card(name)
        if isinstance(box, Problem) or isinstance(card, Problem):
            assert isinstance(card, Problem)  # noqa: S101 - a box that is shut is one
            return refusal(cards.room, card)
        if key_of(written) != card.key:
            return _question(cards, card, again=True, written=written[:80])
        not_removed = remove_not_searchable(box.address) if damaged else None
        told = box.erase(card.name) or not_removed
        children_drafts.forget()
        cards.room.making.forget()
        cards.room.searches.end_all(ENDING)
        children_growth.forget()
        forget_everywhere(cards.room.folder, card.name)
        return RedirectResponse(f"/children?done={told.code if told else 'erased'}", SEE_OTHER)


def page(
    cards: Cards,
    name: str,
    asked: dict[str, str] | None = None,
    *,
    done: str = "",
    complaint: str = "",
    head: dict[str, str] | None = None,
    note: str = "",
) -> HTMLResponse:
    """The page of a card; what was typed and could not be kept stands in its field again."""
    card = cards.card(name)
    if isinstance(card, Problem):
        return refusal(cards.room, card)
    growth = children_growth.growth_words(card, asked or {}, cards.room)
    status = NOT_UNDERSTOOD if complaint else 200
    told = _told(cards, card) | {"growth": growth, "done": done, "complaint": complaint, "note": note}
    return render(cards.room, "child.html", status, **told, head=head or _head(card))


def _told(cards: Cards, card: Card) -> Json:
    room, units = cards.room, cards.room.preferences.units
    found = examine(card.body(), units) if card.measured else ()
    return {
        "name": card.name,
        "age": age_on(card, room.today()),
        "born": spoken_date(card.born) if card.born else "",
        "sex": card.sex,
        "old": readings_old(card, room.today()),
        "sets": sets_beside(card, units),
        "found": [
            {"severity": one.severity.value, "heading": doubt(one), "message": one.message} for one in found
        ],
        "notes": [
            (note.day.isoformat(), spoken_date(note.day), note.text)
            for note in sorted(card.notes, key=lambda note: (note.day, note.text), reverse=True)
        ],
        "drafts": [_draft(cards, draft, number) for number, draft in enumerate(card.drafts, start=1)],
        "today": room.today(),
    }


def _draft(cards: Cards, draft: PastDraft, number: int) -> Json:
    name = draft.recipes[0].name
    known = cards.room.recipe(name)
    return draft_line(draft, number, known.title if known else name, cards.room.preferences.units)


def _head(card: Card) -> dict[str, str]:
    return {"name": card.name, "born": card.born.isoformat() if card.born else "", "sex": card.sex or ""}


def _changed(cards: Cards, name: str, typed: dict[str, str], revise: Any) -> Response:
    """The card after a change, by its own link; where it cannot be kept, the page with what was typed."""
    box = cards.box()
    kept = (box,) if isinstance(box, Problem) else box.change(name, revise)
    if isinstance(kept, Card):
        return RedirectResponse("/child?" + urlencode({"name": kept.name}), SEE_OTHER)
    if kept[0].code in ("child-not-known", "card-box-not-opened"):
        return refusal(cards.room, kept[0], typed)
    head = typed if "name" in typed else None
    return page(cards, name, complaint=kept[0].message, head=head, note=typed.get("note", ""))


def _question(cards: Cards, card: Card, *, again: bool, written: str = "") -> HTMLResponse:
    return render(
        cards.room,
        "child_erase.html",
        NOT_UNDERSTOOD if written else 200,
        name=card.name,
        again=again,
        written=written,
        sets=len(card.measured),
        notes=len(card.notes),
        drafts=len(card.drafts),
        damaged=_damaged(cards),
    )


def _damaged(cards: Cards) -> list[str]:
    """The files that may hold the child and that erasing cannot reach."""
    address = address_in(cards.room.folder)
    return [] if isinstance(address, Problem) else list(map(str, not_searchable(address)))
