"""The sheets of all pupils of a class in one file: made beside the pages, with a bar that shows how far it is."""

from __future__ import annotations

import re
import zipfile
from typing import IO, TYPE_CHECKING, Final, cast
from urllib.parse import urlencode

from fastapi import APIRouter
from fastapi.responses import JSONResponse, RedirectResponse, Response

from littlefold.booklet.bundle import bundle
from littlefold.problem import Problem
from littlefold.sheet.paper import read_paper
from littlefold.web.in_work import busy, progress
from littlefold.web.pages.children_box import Cards, Field, refusal
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.recipe.recipe import Recipe
    from littlefold.store import SewingClass
    from littlefold.web.long_work import LongWork
    from littlefold.web.pages.class_drafts import PupilDraft

    Drawn = Callable[[str], tuple[SewingClass, Recipe, tuple[PupilDraft, ...]] | Problem]

FOR_EACH: Final = ("pages.pdf", "instructions.pdf", "steps.pdf")
"""What every pupil is given."""
LONGEST: Final = 1800.0
"""So long the sheets of a class may take [s]; a pupil's take about half a second."""
PRIVATE: Final = {"cache-control": "no-store"}
SEE_OTHER: Final = 303
_PLAIN: Final = re.compile(r"[^\w-]+")


def routes(cards: Cards, drawn: Drawn) -> APIRouter:
    """The routes of the sheets of a class.

    Args:
        cards: The cards.
        drawn: Gives a class with the drafts of its pupils.
    """
    router, room, works = APIRouter(), cards.room, cards.room.making

    @router.post("/class/sheets")
    def begin(name: Field = "") -> Response:
        found = drawn(name)
        if isinstance(found, Problem):
            return refusal(room, found)
        drafts = found[2]
        started = works.start(lambda _: _sheets(cards, drafts), LONGEST, len(drafts) * len(FOR_EACH))
        if started is None:
            return busy(room, [("class", name)])
        return RedirectResponse("/class/sheets?" + urlencode({"name": name, "work": started.name}), SEE_OTHER)

    @router.get("/class/sheets")
    def sheets(name: str = "", work: str = "") -> Response:
        going = works.find(work)
        return _to_class(name) if going is None else _page(cards, name, going)

    @router.get("/class/sheets.json")
    def how_far(work: str = "") -> JSONResponse:
        return progress(works, work)

    @router.post("/class/sheets/stop")
    def stop(name: Field = "", work: Field = "") -> Response:
        going = works.find(work)
        if going is not None:
            going.stop()
        return _to_class(name)

    @router.get("/class/sheets.zip")
    def taken(name: str = "", work: str = "") -> Response:
        going = works.find(work)
        if going is None or not going.is_spent:
            return _to_class(name)
        headers = PRIVATE | {"content-disposition": 'attachment; filename="class-sheets.zip"'}
        return Response(b"".join(going.found), media_type="application/zip", headers=headers)

    return router


def _to_class(name: str) -> Response:
    return RedirectResponse("/class?" + urlencode({"name": name}), SEE_OTHER)


def _page(cards: Cards, name: str, going: LongWork) -> Response:
    """How far the sheets are; the file, where it is done; the class again, where it was stopped.

    Raises:
        Exception: What broke the work off.
    """
    words = {"name": name, "work": going.name}
    if not going.is_over:
        return render(
            cards.room,
            "in_work.html",
            title=f"All sheets for {name}",
            doing="Drawing the sheets of every pupil",
            share=going.share,
            asks="/class/sheets.json?" + urlencode(words),
            stops="/class/sheets/stop",
            fields=list(words.items()),
        )
    if going.fault is not None:
        raise going.fault
    if not going.is_spent:
        return _to_class(name)
    return render(cards.room, "class_sheets.html", name=name, link="/class/sheets.zip?" + urlencode(words))


class _Passed:
    """A file that is passed on as it is written; zip files can be made so."""

    def __init__(self) -> None:
        self._parts: list[bytes] = []

    def write(self, part: bytes, /) -> int:
        """Takes a part."""
        self._parts.append(bytes(part))
        return len(part)

    def flush(self) -> None:
        """Nothing is held back."""

    def taken(self) -> bytes:
        """What was written since this was asked last."""
        parts, self._parts = self._parts, []
        return b"".join(parts)


def _sheets(cards: Cards, drafts: tuple[PupilDraft, ...]) -> Iterator[bytes]:
    """The sheets of all pupils in one file, a folder for each, sheet by sheet."""
    room, passed = cards.room, _Passed()
    paper = read_paper(room.preferences.paper)
    assert not isinstance(paper, Problem)  # noqa: S101 - only papers are kept
    with zipfile.ZipFile(cast("IO[bytes]", passed), "w", zipfile.ZIP_DEFLATED) as together:
        for number, one in enumerate(drafts, start=1):
            folder = f"{number:02d} {_PLAIN.sub(' ', one.name).strip()}".strip()
            outcome = one.outcome
            for sheet in bundle(outcome.pattern, outcome.problems, one.asked.speech, paper, room.today()):
                if sheet.name in FOR_EACH:
                    together.writestr(f"{folder}/{sheet.name}", sheet.make())
                    yield passed.taken()
    yield passed.taken()
