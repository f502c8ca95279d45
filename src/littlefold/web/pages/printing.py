"""Printing: paper chosen once, every page seen before it is printed, all files to take along."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Annotated, Any
from urllib.parse import urlencode

from fastapi import APIRouter, Form
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.problem import Problem, Severity
from littlefold.sheet.paper import SIZES, Paper, read_paper
from littlefold.web.at_door import NOT_FOUND, asked_in, recipe_named
from littlefold.web.preferences import keep_preferences
from littlefold.web.print_job import Job, files_of, job_for, remembering, seen
from littlefold.web.recent import on_the_table
from littlefold.web.rendering import render
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from littlefold.sheet.page import Page
    from littlefold.web.room import Room

KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml"}
NOT_UNDERSTOOD = 422
GROUPS = (
    ("At home", ("printer-check.pdf", "pages.pdf")),
    ("For the copy shop", ("one-sheet.pdf", "pattern.svg")),
    ("To sew and to teach by", ("instructions.pdf", "steps.pdf", "drawings.pdf", "quarter.svg")),
)
"""The files by where they are wanted, in the order in which they are."""
LONGEST = 2000


def routes(room: Room) -> APIRouter:
    """The routes of printing."""
    router = APIRouter()
    pages_of = remembering(room)

    @router.get("/print/{recipe}")
    def printing(recipe: str, request: Request) -> HTMLResponse:
        asked = asked_in(room, recipe, request)
        on_the_table(room, recipe, asked)
        job = job_for(room, asked)
        if isinstance(job, Problem):
            usual = Job((), _usual(room), asked)
            return render(
                room, "printing.html", NOT_UNDERSTOOD, **_page(room, recipe, usual, (), job.message)
            )
        return render(room, "printing.html", **_page(room, recipe, job, pages_of(job)))

    @router.post("/print/{recipe}/paper")
    def choose_paper(
        recipe: str, paper: Annotated[str, Form()], query: Annotated[str, Form()] = ""
    ) -> Response:
        recipe_named(room, recipe)
        return _choose(room, recipe, paper, query)

    @router.get("/print/{recipe}/pages/{number}.svg")
    def one_page(recipe: str, number: int, request: Request) -> Response:
        pages = pages_of(_job(room, recipe, request))
        if not 1 <= number <= len(pages):
            raise HTTPException(NOT_FOUND)
        return Response(seen(pages[number - 1]), media_type=KINDS["svg"])

    @router.get("/print/{recipe}/{file}")
    def one_file(recipe: str, file: str, request: Request) -> Response:
        return _file(room, recipe, file, _job(room, recipe, request))

    return router


def _job(room: Room, recipe: str, request: Request) -> Job:
    """The job of a link.

    Raises:
        HTTPException: Its paper is not understood.
    """
    job = job_for(room, asked_in(room, recipe, request))
    if isinstance(job, Problem):
        raise HTTPException(NOT_UNDERSTOOD, job.message)
    return job


def _choose(room: Room, recipe: str, paper: str, query: str) -> Response:
    chosen = read_paper(paper)
    if isinstance(chosen, Problem):
        typed = [("paper", paper[:60])]
        return render(room, "sentence.html", NOT_UNDERSTOOD, sentence=chosen.message, typed=typed)
    kept = "".join(letter for letter in query[:LONGEST] if letter.isprintable())
    if room.visitor is Visitor.PUPIL:  # a pupil's paper is for her own sheets
        return RedirectResponse(f"/print/{recipe}?{kept}&{urlencode({'on-paper': paper[:60]})}", 303)
    keep_preferences(room.folder, replace(room.preferences, paper=paper[:60]))
    return RedirectResponse(f"/print/{recipe}?{kept}", 303)


def _file(room: Room, recipe: str, file: str, job: Job) -> Response:
    sheet = next((one for one in files_of(room, job) if one.name == file), None)
    if sheet is None:
        raise HTTPException(NOT_FOUND)
    kind = KINDS.get(file.rpartition(".")[2], "application/octet-stream")
    plain = "".join(letter for letter in recipe if letter.isascii() and (letter.isalnum() or letter == "-"))
    called = f'inline; filename="{plain}-{sheet.name}"'
    return Response(sheet.make(), media_type=kind, headers={"content-disposition": called})


def _usual(room: Room) -> Paper:
    paper = read_paper(room.preferences.paper)
    assert isinstance(paper, Paper)  # noqa: S101 - only papers are kept
    return paper


def _page(room: Room, recipe: str, job: Job, pages: tuple[Page, ...], complaint: str = "") -> dict[str, Any]:
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
        "files": _grouped({sheet.name: sheet.title for sheet in files_of(room, job)}),
        "grave": [one.message for one in outcome.problems if one.severity is Severity.ERROR],
    }


def _grouped(titles: dict[str, str]) -> list[tuple[str, list[tuple[str, str]]]]:
    """Names and titles of the files that there are, by where they are wanted."""
    rest = [name for name in titles if not any(name in names for _, names in GROUPS)]
    groups = (*GROUPS, ("Also", tuple(rest)))
    told = [
        (heading, [(name, titles[name]) for name in names if name in titles]) for heading, names in groups
    ]
    return [(heading, files) for heading, files in told if files]
