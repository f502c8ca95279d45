"""The settings: units, the marks of the tape, paper, region, light; and where everything is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

from fastapi import APIRouter, Form
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from littlefold.body.tape import MARKS
from littlefold.problem import Problem
from littlefold.sheet.paper import SIZES, read_paper
from littlefold.web.preferences import Light, Preferences, Region, Units, keep_preferences
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

MARK_WORDS = {
    "exact": "not at all: to a tenth of a millimetre",
    "1mm": "1 mm",
    "0.5cm": "0.5 cm",
    "1/8in": "1/8 in",
    "1/16in": "1/16 in",
}
REGIONS = {"eu": "the European Union", "uk": "the United Kingdom", "us": "the United States"}


def routes(room: Room) -> APIRouter:
    """The routes of the settings."""
    router = APIRouter()

    @router.get("/settings")
    def show(kept: bool = False) -> HTMLResponse:  # noqa: FBT001, FBT002 - a word of the link
        return _page(room, room.preferences, kept=kept)

    @router.post("/settings")
    def keep(
        units: Annotated[Units, Form()],
        tape: Annotated[str, Form()],
        paper: Annotated[str, Form()],
        region: Annotated[Region, Form()],
        light: Annotated[Light, Form()],
    ) -> Response:
        wanted = Preferences(units, tape, paper.strip()[:60], region, light)
        read = read_paper(wanted.paper)
        if isinstance(read, Problem):
            return _page(room, wanted, read.message)
        if tape not in MARKS:
            return _page(room, wanted, "Choose one of the marks of the tape.")
        keep_preferences(room.folder, wanted)
        return RedirectResponse("/settings?kept=1", 303)

    return router


def _page(room: Room, wanted: Preferences, complaint: str = "", *, kept: bool = False) -> HTMLResponse:
    status = 422 if complaint else 200
    values = {"wanted": wanted, "complaint": complaint, "kept": kept, "marks": MARK_WORDS, "regions": REGIONS}
    return render(room, "settings.html", status, papers=tuple(SIZES), folder=str(room.folder), **values)
