"""All sheets of one draft: the pattern as a drawing, as pages to join and on one sheet, and the instructions.

Each is a name, a title and a way to make it; nothing is made before it is asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.booklet.instructions import instruction_sheet
from littlefold.booklet.reduced_pages import reduced_pages
from littlefold.booklet.spoken import spoken
from littlefold.booklet.step_pages import step_pages
from littlefold.booklet.wording import wording
from littlefold.pattern.block import Labelling
from littlefold.pattern.picture import draw_pattern
from littlefold.pattern.wording import piece_wording
from littlefold.problem import Problem, Severity
from littlefold.sheet.arrange import arrange
from littlefold.sheet.one_sheet import one_sheet
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.pdf import write_pdf
from littlefold.sheet.printer_check import printer_check_page
from littlefold.sheet.svg import write_svg
from littlefold.sheet.tile import tile
from littlefold.sheet.too_large import too_large
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from datetime import date

    from littlefold.draft.sentence import Speech
    from littlefold.drawing import Drawing
    from littlefold.pattern.model import Pattern

ROLLS = ("roll 914mm", "roll 1200mm", "roll 1600mm")
"""Rolls of a copy shop, the narrowest first: 36 in, and two for wide skirts."""
SHEETS = ("A2", "A1", "A0")
"""Its sheets, the smallest first."""
TO_READ = {"cm": "A4", "in": "US Letter"}
"""What is read at the table is printed on, where the pattern's own paper is too large to hold, by unit."""
WIDEST_TO_READ = 300.0
"""The widest paper that is still read at the table [mm]: an A3 upright, 297 mm."""

QUARTER = 0.25
"""The scale of a pupil's record book (drafts in 1/4 scale; Hand Sewing Lessons)."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One file to be written."""

    name: str
    title: str
    make: Callable[[], bytes]


def bundle(
    pattern: Pattern,
    problems: tuple[Problem, ...],
    speech: Speech,
    paper: Paper,
    made: date,
    *,
    least: float = 1.0,
) -> Iterator[Sheet]:
    """The sheets of a draft, those that can be made of it.

    Args:
        pattern: The traced pattern.
        problems: All findings, which the instructions tell.
        speech: Units, tape and language of the sheets.
        paper: The paper the maker prints on; what is to be read comes on smaller paper where this is a copy shop's.
        made: The date that every sheet carries.
        least: The reduced drawings are at no larger scale than 1 : least.
    """
    warned = cautions(pattern, spoken(problems, speech), speech.language)
    read_on = _read_on(paper, speech.units)
    job = _Job(pattern, pieces_drawn(pattern, speech, made), warned, made, speech.language)
    if job.pieces and not any(too_large(piece, paper) for piece in job.pieces):
        yield Sheet("pattern.svg", "Pattern, full size", job.drawing)
        yield Sheet("quarter.svg", "Pattern, a quarter of the size", lambda: job.drawing(QUARTER))
        yield Sheet("pages.pdf", f"Pattern to join, {paper.name}", lambda: job.pages(paper))
        yield Sheet("one-sheet.pdf", "Pattern on one sheet", lambda: job.large_sheet(paper))
    yield Sheet("printer-check.pdf", "Printer check", lambda: printer_check(paper, made, speech.language))
    yield Sheet(
        "instructions.pdf",
        "Instructions",
        lambda: instruction_sheet(pattern, problems, speech, read_on, made),
    )
    if pattern.draft.steps:
        yield Sheet(
            "drawings.pdf",
            "Drawings, reduced, with dimensions",
            lambda: reduced_pages(pattern.draft, speech, read_on, made, job.title, least=least),
        )
        yield Sheet(
            "steps.pdf",
            "Step cards, four on a page",
            lambda: step_pages(pattern.draft, speech, read_on, made, across=2),
        )


def printer_check(paper: Paper, made: date, language: str = "en") -> bytes:
    """The page to print first."""
    page = printer_check_page(paper, made, language)
    return write_pdf((page,), page.drawing.title, made)


def cautions(pattern: Pattern, problems: tuple[Problem, ...], language: str = "en") -> tuple[str, ...]:
    """What is printed heavy on every pattern: the recipe's cautions, what the safety rules found, and what they are not."""
    found = (
        problem.message for problem in problems if problem.rule and problem.severity is not Severity.NOTE
    )
    return (*pattern.draft.cautions, *dict.fromkeys(found), wording(language)["said"]["no_advice"])


def pieces_drawn(pattern: Pattern, speech: Speech, made: date) -> tuple[Drawing, ...]:
    """All pieces at full size, labelled."""
    how = Labelling(
        date=spoken_date(made, speech.language), units=speech.units, wording=piece_wording(speech.language)
    )
    return draw_pattern(pattern, how)


@dataclass(frozen=True, slots=True)
class _Job:
    """What all sheets of one pattern have in common."""

    pattern: Pattern
    pieces: tuple[Drawing, ...]
    cautions: tuple[str, ...]
    made: date
    language: str = "en"

    @property
    def title(self) -> str:
        """The garment, and whose it is."""
        nickname = self.pattern.draft.measurements.nickname
        return ", ".join(filter(None, (self.pattern.draft.title, nickname)))

    def drawing(self, scale: float = 1.0) -> bytes:
        """All pieces beside each other as SVG, at full size or reduced."""
        return write_svg(arrange(self.pieces, _copied_on(ROLLS[0]), self.title).drawing, scale).encode()

    def pages(self, paper: Paper) -> bytes:
        """The pattern on pages to join, with a cover."""
        arranged = arrange(self.pieces, paper, self.title)
        pages = tile(
            arranged.drawing, arranged.paper, self.made, self.title, self.cautions, language=self.language
        )
        return write_pdf(pages, self.title, self.made)

    def large_sheet(self, paper: Paper) -> bytes:
        """The pattern on one sheet: of the maker's own paper if that is a copy shop's, or the smallest that holds it.

        What no sheet holds comes on the widest roll in parts.
        """
        own = () if _is_read(paper) else (paper,)
        for large in (*own, *map(_copied_on, (*SHEETS, *ROLLS))):
            arranged = arrange(self.pieces, large, self.title)
            page = one_sheet(
                arranged.drawing, arranged.paper, self.made, self.title, self.cautions, language=self.language
            )
            if not isinstance(page, Problem):
                return write_pdf((page,), self.title, self.made)
        return self.pages(_copied_on(ROLLS[-1]))


def _is_read(paper: Paper) -> bool:
    return min(paper.width, paper.longest) <= WIDEST_TO_READ


def _read_on(paper: Paper, units: str) -> Paper:
    return paper if _is_read(paper) else _copied_on(TO_READ[units])


def _copied_on(name: str) -> Paper:
    paper = read_paper(name)
    assert isinstance(paper, Paper)  # noqa: S101 - the names are our own
    return paper
