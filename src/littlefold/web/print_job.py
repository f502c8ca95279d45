"""What is printed, on which paper: the pages to join and the files to take along."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

from littlefold.booklet.bundle import Sheet, bundle, pieces_drawn
from littlefold.drawing import Drawing, Meaning, Stroke
from littlefold.geometry import Path, Point
from littlefold.sheet.arrange import arrange
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.svg import write_svg
from littlefold.sheet.tile import tile
from littlefold.sheet.too_large import too_large

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable

    from littlefold.pipeline import Outcome
    from littlefold.problem import Problem
    from littlefold.sheet.page import Page
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room


@dataclass(frozen=True, slots=True)
class Job:
    """What is printed, on which paper; two jobs are the same when their keys and papers are."""

    key: Hashable
    paper: Paper
    asked: Asked = field(compare=False)


def job_for(room: Room, asked: Asked) -> Job | Problem:
    """The job that was asked for, on the paper that was asked for or else the maker's own."""
    paper = read_paper(dict(asked.typed).get("on-paper", room.preferences.paper))
    if not isinstance(paper, Paper):
        return paper
    return Job((asked.wish.key, asked.speech.units, room.today()), paper, asked)


def files_of(room: Room, job: Job) -> tuple[Sheet, ...]:
    """The files of a job; nothing is made before it is asked for."""
    outcome = room.fulfil(job.asked.wish)
    return tuple(bundle(outcome.pattern, outcome.problems, job.asked.speech, job.paper, room.today()))


def remembering(room: Room) -> Callable[[Job], tuple[Page, ...]]:
    """A function from a job to its pages that remembers the last jobs, since every page is asked for by itself."""

    @lru_cache(maxsize=8)
    def pages_of(job: Job) -> tuple[Page, ...]:
        return _pages(room, room.fulfil(job.asked.wish), job)

    return pages_of


def _pages(room: Room, outcome: Outcome, job: Job) -> tuple[Page, ...]:
    """The pages to join; none where nothing is drawn or the pattern is too large for them."""
    pieces = pieces_drawn(outcome.pattern, job.asked.speech, room.today())
    if not pieces or any(too_large(piece, job.paper) for piece in pieces):
        return ()
    title = outcome.draft.title
    laid = arrange(pieces, job.paper, title)
    return tile(laid.drawing, laid.paper, room.today(), title)


def seen(page: Page) -> str:
    """A page as it will lie in the tray, to be looked at small."""
    corners = ((0.0, 0.0), (page.width, 0.0), (page.width, page.height), (0.0, page.height), (0.0, 0.0))
    edge = Stroke(Path.line_through(*(Point(x, y) for x, y in corners)), Meaning.FRAME, "paper")
    return write_svg(Drawing((edge, *page.drawing.marks, *page.surround.marks), page.name), border=0.0)
