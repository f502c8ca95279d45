"""All sheets of one draft: the pattern as a drawing, as pages to join and on one sheet, and the instructions.

Each is a name, a title and a way to make it; nothing is made before it is asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.booklet.instructions import instruction_sheet
from littlefold.drawing import Drawing
from littlefold.pattern.block import Labelling
from littlefold.pattern.picture import draw_pattern
from littlefold.problem import Problem
from littlefold.sheet.arrange import arrange
from littlefold.sheet.furniture import spoken_date
from littlefold.sheet.one_sheet import one_sheet
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.pdf import write_pdf
from littlefold.sheet.printer_check import printer_check_page
from littlefold.sheet.svg import write_svg
from littlefold.sheet.tile import tile

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from datetime import date

    from littlefold.draft.sentence import Speech
    from littlefold.pipeline import Outcome

ROLLS = ("A0", "roll 914mm", "roll 1200mm", "roll 1600mm")
"""Papers of a copy shop, the smallest first: A0, the 36 in roll, and two rolls for wide skirts."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One file to be written."""

    name: str
    title: str
    make: Callable[[], bytes]


def bundle(outcome: Outcome, speech: Speech, paper: Paper, made: date) -> Iterator[Sheet]:
    """The sheets of a draft, those that can be made of it."""
    pieces = pieces_drawn(outcome, speech, made)
    if pieces:
        yield Sheet("pattern.svg", "Pattern, full size", lambda: _svg(outcome, pieces))
        yield Sheet(
            "pages.pdf", f"Pattern to join, {paper.name}", lambda: joined_pages(outcome, pieces, paper, made)
        )
        yield Sheet("one-sheet.pdf", "Pattern on one sheet", lambda: large_sheet(outcome, pieces, made))
    yield Sheet(
        "printer-check.pdf",
        "Printer check",
        lambda: write_pdf((printer_check_page(paper, made),), "Printer check", made),
    )
    yield Sheet("instructions.pdf", "Instructions", lambda: instruction_sheet(outcome, speech, paper, made))


def pieces_drawn(outcome: Outcome, speech: Speech, made: date) -> tuple[Drawing, ...]:
    """All pieces at full size, labelled."""
    how = Labelling(date=spoken_date(made), units=speech.units)
    return draw_pattern(outcome.pattern, how)


def _svg(outcome: Outcome, pieces: tuple[Drawing, ...]) -> bytes:
    arranged = arrange(pieces, _roll(ROLLS[1]), outcome.draft.title)
    return write_svg(arranged.drawing).encode()


def joined_pages(outcome: Outcome, pieces: tuple[Drawing, ...], paper: Paper, made: date) -> bytes:
    """The pattern on pages to join, with a cover."""
    arranged = arrange(pieces, paper, outcome.draft.title)
    title = _title(outcome)
    return write_pdf(tile(arranged.drawing, arranged.paper, made, title), title, made)


def large_sheet(outcome: Outcome, pieces: tuple[Drawing, ...], made: date) -> bytes:
    """The pattern on the smallest paper of a copy shop that holds it."""
    title = _title(outcome)
    for name in ROLLS:
        arranged = arrange(pieces, _roll(name), outcome.draft.title)
        page = one_sheet(arranged.drawing, arranged.paper, made, title)
        if not isinstance(page, Problem):
            return write_pdf((page,), title, made)
    widest = _roll(ROLLS[-1])
    return write_pdf(tile(arrange(pieces, widest, title).drawing, widest, made, title), title, made)


def _roll(name: str) -> Paper:
    paper = read_paper(name)
    assert isinstance(paper, Paper)  # noqa: S101 - the names are our own
    return paper


def _title(outcome: Outcome) -> str:
    nickname = outcome.draft.measurements.nickname
    return f"{outcome.draft.title}, {nickname}" if nickname else outcome.draft.title
