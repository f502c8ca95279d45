"""Printing: paper chosen once, every page seen before it is printed, all sheets to take along."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Form
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.booklet.bundle import Sheet, bundle, pieces_drawn
from littlefold.drawing import Drawing, Meaning, Stroke
from littlefold.geometry import Path, Point
from littlefold.problem import Problem, Severity
from littlefold.sheet.arrange import arrange
from littlefold.sheet.paper import SIZES, Paper, read_paper
from littlefold.sheet.svg import write_svg
from littlefold.sheet.tile import tile
from littlefold.sheet.too_large import too_large
from littlefold.web.at_door import NOT_FOUND, asked_in, recipe_named
from littlefold.web.preferences import keep_preferences
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import Hashable

    from littlefold.sheet.page import Page
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml"}
LONGEST = 2000


@dataclass(frozen=True, slots=True)
class _Job:
    """What is printed, on which paper; two jobs are the same when their keys are."""

    key: Hashable
    paper: Paper
    asked: Asked = field(compare=False)


def routes(room: Room) -> APIRouter:
    """The routes of printing."""
    router = APIRouter()

    @lru_cache(maxsize=8)
    def pages_of(job: _Job) -> tuple[Page, ...]:
        return _pages(room, job)

    def job_in(recipe: str, request: Request) -> _Job | Problem:
        asked = asked_in(room, recipe, request)
        paper = read_paper(dict(asked.typed).get("on-paper", room.preferences.paper))
        key = (asked.wish.key, asked.speech.units, room.today())
        return paper if isinstance(paper, Problem) else _Job(key, paper, asked)

    def job_or_nothing(recipe: str, request: Request) -> _Job:
        job = job_in(recipe, request)
        if isinstance(job, Problem):
            raise HTTPException(422, job.message)
        return job

    @router.get("/print/{recipe}")
    def printing(recipe: str, request: Request) -> HTMLResponse:
        job = job_in(recipe, request)
        if isinstance(job, Problem):
            usual = _Job((), _usual(room), asked_in(room, recipe, request))
            return render(room, "printing.html", 422, **_page(room, recipe, usual, (), job.message))
        return render(room, "printing.html", **_page(room, recipe, job, pages_of(job), ""))

    @router.post("/print/{recipe}/paper")
    def choose_paper(recipe: str, paper: Annotated[str, Form()], query: Annotated[str, Form()] = "") -> Response:
        recipe_named(room, recipe)
        chosen = read_paper(paper)
        if isinstance(chosen, Problem):
            return render(room, "sentence.html", 422, sentence=chosen.message, typed=[("paper", paper[:60])])
        keep_preferences(room.folder, replace(room.preferences, paper=paper[:60]))
        kept = query[:LONGEST].replace("\r", "").replace("\n", "")
        return RedirectResponse(f"/print/{recipe}?{kept}", 303)

    @router.get("/print/{recipe}/pages/{number}.svg")
    def one_page(recipe: str, number: int, request: Request) -> Response:
        pages = pages_of(job_or_nothing(recipe, request))
        if not 1 <= number <= len(pages):
            raise HTTPException(NOT_FOUND)
        return Response(_seen(pages[number - 1]), media_type=KINDS["svg"])

    @router.get("/print/{recipe}/{file}")
    def one_file(recipe: str, file: str, request: Request) -> Response:
        job = job_or_nothing(recipe, request)
        sheet = next((one for one in _bundle(room, job) if one.name == file), None)
        if sheet is None:
            raise HTTPException(NOT_FOUND)
        kind = KINDS.get(file.rpartition(".")[2], "application/octet-stream")
        called = f'inline; filename="{_plain(recipe)}-{sheet.name}"'
        return Response(sheet.make(), media_type=kind, headers={"content-disposition": called})

    return router


def _plain(name: str) -> str:
    return "".join(letter for letter in name if letter.isascii() and (letter.isalnum() or letter == "-"))


def _usual(room: Room) -> Paper:
    paper = read_paper(room.preferences.paper)
    assert isinstance(paper, Paper)  # noqa: S101 - only papers are kept
    return paper


def _bundle(room: Room, job: _Job) -> tuple[Sheet, ...]:
    outcome = room.fulfil(job.asked.wish)
    return tuple(bundle(outcome.pattern, outcome.problems, job.asked.speech, job.paper, room.today()))


def _pages(room: Room, job: _Job) -> tuple[Page, ...]:
    """The pages to join; none where the pattern is too large for them."""
    pattern = room.fulfil(job.asked.wish).pattern
    pieces = pieces_drawn(pattern, job.asked.speech, room.today())
    if not pieces or any(too_large(piece, job.paper) for piece in pieces):
        return ()
    laid = arrange(pieces, job.paper, pattern.draft.title)
    return tile(laid.drawing, laid.paper, room.today(), pattern.draft.title)


def _seen(page: Page) -> str:
    """A page as it will lie in the tray, to be looked at small."""
    corners = ((0.0, 0.0), (page.width, 0.0), (page.width, page.height), (0.0, page.height), (0.0, 0.0))
    edge = Stroke(Path.line_through(*(Point(x, y) for x, y in corners)), Meaning.FRAME, "paper")
    return write_svg(Drawing((edge, *page.drawing.marks, *page.surround.marks), page.name), border=0.0)


def _page(room: Room, recipe: str, job: _Job, pages: tuple[Page, ...], complaint: str) -> dict[str, Any]:
    outcome = room.fulfil(job.asked.wish)
    return {
        "recipe": recipe,
        "asked": job.asked,
        "title": outcome.draft.title,
        "paper": job.paper.name,
        "papers": tuple(SIZES),
        "kept": room.preferences.paper,
        "complaint": complaint,
        "pages": [(number, page.name) for number, page in enumerate(pages, start=1)],
        "files": [(sheet.name, sheet.title) for sheet in _bundle(room, job)],
        "grave": [one.message for one in outcome.problems if one.severity is Severity.ERROR],
    }
