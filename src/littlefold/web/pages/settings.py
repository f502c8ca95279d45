"""The settings: units, the marks of the tape, paper, allowances, language, region, light."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Form
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from pydantic import BaseModel, Field
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.body.tape import MARKS, read_length, say_length
from littlefold.draft.desk import DEFAULT_ALLOWANCES
from littlefold.draft.sentence import languages
from littlefold.problem import Problem
from littlefold.sheet.paper import SIZES, read_paper
from littlefold.web.pages import keeping, sharing
from littlefold.web.pages.children_box import Cards
from littlefold.web.preferences import WIDEST, Light, Preferences, Region, Units, keep_preferences
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

Json = dict[str, Any]

SEE_OTHER = 303
NOT_UNDERSTOOD = 422
MARK_WORDS = {
    "exact": "not at all: to a tenth of a millimetre",
    "1mm": "1 mm",
    "0.5cm": "0.5 cm",
    "1/8in": "1/8 in",
    "1/16in": "1/16 in",
}
REGIONS = {"eu": "the European Union", "uk": "the United Kingdom", "us": "the United States"}
LANGUAGES = {"en": "English", "de": "Deutsch"}
LONGEST = 60


class Sent(BaseModel):
    """The form of the settings as it is sent; an allowance of nothing is the common one."""

    units: Units
    tape: str
    paper: str = Field(max_length=LONGEST)
    region: Region
    light: Light
    language: str = "en"
    seam: str = Field("", max_length=LONGEST)
    hem: str = Field("", max_length=LONGEST)


def routes(room: Room) -> APIRouter:
    """The routes of the settings."""
    router, cards = APIRouter(), Cards(room)

    def page(
        request: Request, complaint: str = "", wanted: Preferences | None = None, typed: Json | None = None
    ) -> HTMLResponse:
        shown = room.preferences if wanted is None else wanted
        told = {
            "wanted": shown,
            "typed": typed or _widths(shown),
            "complaint": complaint,
            "kept": "kept" in request.query_params,
            **_choices(),
            **keeping.told(cards, request),
            **sharing.told(room, request),
        }
        return render(room, "settings.html", NOT_UNDERSTOOD if complaint else 200, **told)

    router.include_router(keeping.routes(cards, page))
    router.include_router(sharing.routes(room, page))

    @router.get("/settings")
    def show(request: Request) -> HTMLResponse:
        return page(request)

    @router.post("/settings")
    def keep(request: Request, sent: Annotated[Sent, Form()]) -> Response:
        wanted = Preferences(
            sent.units, sent.tape, sent.paper.strip(), sent.region, sent.light, sent.language
        )
        seam, hem = _width("seam", sent.seam, sent.units), _width("hem", sent.hem, sent.units)
        complaint = " ".join(filter(None, (_complaint(wanted), *map(_message, (seam, hem)))))
        if isinstance(seam, Problem) or isinstance(hem, Problem) or complaint:
            return page(request, complaint, wanted, {"seam": sent.seam, "hem": sent.hem})
        keep_preferences(room.folder, replace(wanted, seam=seam, hem=hem))
        return RedirectResponse("/settings?kept=1", SEE_OTHER)

    return router


def _choices() -> Json:
    known = {code: LANGUAGES.get(code, code) for code in languages()}
    return {"marks": MARK_WORDS, "regions": REGIONS, "languages": known, "papers": tuple(SIZES)}


def _widths(shown: Preferences) -> Json:
    return {kind: say_length(getattr(shown, kind), shown.units) for kind in ("seam", "hem")}


def _complaint(wanted: Preferences) -> str:
    """What is wrong with the settings, in a sentence; empty where they are sound."""
    paper = read_paper(wanted.paper)
    if isinstance(paper, Problem):
        return paper.message
    if wanted.tape not in MARKS:
        return "Choose one of the marks of the tape."
    return "" if wanted.language in languages() else "Choose one of the languages."


def _message(found: float | Problem) -> str:
    return found.message if isinstance(found, Problem) else ""


def _width(kind: str, text: str, units: Units) -> float | Problem:
    """An allowance [mm]; the common one where none is written."""
    found = read_length(text, units) if text.strip() else DEFAULT_ALLOWANCES[kind]
    if isinstance(found, Problem):
        return Problem("allowance-not-understood", f"The allowance of a {kind}: {found.message}")
    if 0 < found <= WIDEST:
        return found
    message = f"The allowance of a {kind} lies between 0 and {say_length(WIDEST, units)}."
    return Problem("allowance-not-possible", message)
