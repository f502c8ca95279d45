"""All sheets of one draft: the pattern as a drawing, as pages to join and on one sheet, and the instructions.

Each is a name, a title and a way to make it; nothing is made before it is asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.booklet.instructions import instruction_sheet
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
    from littlefold.drawing import Drawing
    from littlefold.pattern.model import Pattern

ROLLS = ("A0", "roll 914mm", "roll 1200mm", "roll 1600mm")
"""Papers of a copy shop, the smallest first: A0, the 36 in roll, and two rolls for wide skirts."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One file to be written."""

    name: str
    title: str
    make: Callable[[], bytes]


def bundle(
    pattern: Pattern, problems: tuple[Problem, ...], speech: Speech, paper: Paper, made: date
) -> Iterator[Sheet]:
    """The sheets of a draft, those that can be made of it.

    Args:
        pattern: The traced pattern.
        problems: All findings, which the instructions tell.
        speech: Units, tape and language of the sheets.
        paper: The paper the maker prints on.
        made: The date that every sheet carries.
    """
    pieces = pieces_drawn(pattern, speech, made)
    if pieces:
        yield Sheet("pattern.svg", "Pattern, full size", lambda: _svg(pattern, pieces))
        yield Sheet(
            "pages.pdf", f"Pattern to join, {paper.name}", lambda: joined_pages(pattern, pieces, paper, made)
        )
        yield Sheet("one-sheet.pdf", "Pattern on one sheet", lambda: large_sheet(pattern, pieces, made))
    yield Sheet(
        "printer-check.pdf",
        "Printer check",
        lambda: write_pdf((printer_check_page(paper, made),), "Printer check", made),
    )
    yield Sheet(
        "instructions.pdf", "Instructions", lambda: instruction_sheet(pattern, problems, speech, paper, made)
    )


def printer_check(paper: Paper, made: date) -> bytes:
    """The page to print first."""
    return write_pdf((printer_check_page(paper, made),), "Printer check", made)


def pieces_drawn(pattern: Pattern, speech: Speech, made: date) -> tuple[Drawing, ...]:
    """All pieces at full size, labelled."""
    how = Labelling(date=spoken_date(made), units=speech.units)
    return draw_pattern(pattern, how)


def _svg(pattern: Pattern, pieces: tuple[Drawing, ...]) -> bytes:
    arranged = arrange(pieces, _roll(ROLLS[1]), pattern.draft.title)
    return write_svg(arranged.drawing).encode()


def joined_pages(pattern: Pattern, pieces: tuple[Drawing, ...], paper: Paper, made: date) -> bytes:
    """The pattern on pages to join, with a cover."""
    arranged = arrange(pieces, paper, pattern.draft.title)
    title = _title(pattern)
    return write_pdf(tile(arranged.drawing, arranged.paper, made, title), title, made)


def large_sheet(pattern: Pattern, pieces: tuple[Drawing, ...], made: date) -> bytes:
    """The pattern on the smallest paper of a copy shop that holds it."""
    title = _title(pattern)
    for name in ROLLS:
        arranged = arrange(pieces, _roll(name), pattern.draft.title)
        page = one_sheet(arranged.drawing, arranged.paper, made, title)
        if not isinstance(page, Problem):
            return write_pdf((page,), title, made)
    widest = _roll(ROLLS[-1])
    return write_pdf(tile(arrange(pieces, widest, title).drawing, widest, made, title), title, made)


def _roll(name: str) -> Paper:
    paper = read_paper(name)
    assert isinstance(paper, Paper)  # noqa: S101 - the names are our own
    return paper


def _title(pattern: Pattern) -> str:
    nickname = pattern.draft.measurements.nickname
    return f"{pattern.draft.title}, {nickname}" if nickname else pattern.draft.title
