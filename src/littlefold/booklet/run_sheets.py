"""The sheets of a size run: all sizes stacked, and the table of how far each point moves."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass, replace
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from littlefold.booklet.bundle import ROLLS, Sheet, cautions
from littlefold.booklet.spoken import spoken
from littlefold.check import check
from littlefold.drawing import plain
from littlefold.grading import moves, stacked
from littlefold.pattern.block import Labelling
from littlefold.problem import Problem
from littlefold.sheet.arrange import arrange
from littlefold.sheet.one_sheet import one_sheet
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.pdf import typeset, write_pdf
from littlefold.sheet.svg import write_svg
from littlefold.sheet.tile import tile
from littlefold.sheet.too_large import too_large
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date

    from littlefold.check import Circumstances
    from littlefold.draft.sentence import Speech
    from littlefold.drawing import Drawing
    from littlefold.geometry import Vector
    from littlefold.grading import SizeRun

INCH = 25.4


def run_sheets(
    run: SizeRun, circumstances: Circumstances, speech: Speech, paper: Paper, made: date
) -> Iterator[Sheet]:
    """The sheets that show all sizes together, those that can be made."""
    pieces = stacked(run, Labelling(date=spoken_date(made, speech.language), units=speech.units))
    title = f"{run.title}, sizes {run.sizes[0].label} to {run.sizes[-1].label}"
    if pieces and not any(too_large(piece, paper) for piece in pieces):
        job = _Stack(pieces, title, run_cautions(run, circumstances, speech), made, speech.language)
        yield Sheet("all-sizes.svg", "All sizes, full size", job.drawing)
        yield Sheet("all-sizes-pages.pdf", f"All sizes to join, {paper.name}", lambda: job.pages(paper))
        yield Sheet("all-sizes-one-sheet.pdf", "All sizes on one sheet", job.large_sheet)
    yield Sheet("moves.pdf", "How far each point moves", lambda: moves_sheet(run, speech, paper, made))
    yield Sheet("moves.csv", "The same as a table", lambda: moves_table(run).encode())


def run_cautions(run: SizeRun, circumstances: Circumstances, speech: Speech) -> tuple[str, ...]:
    """What is printed heavy on stacked sizes, each caution with the sizes it holds for where those are not all."""
    holds: dict[str, list[str]] = {}
    for size in run.sizes:
        around = replace(circumstances, stretch=size.pattern.draft.stretch)
        found = spoken(check(size.pattern, around), speech)
        for caution in dict.fromkeys(cautions(size.pattern, found, speech.language)):
            holds.setdefault(caution, []).append(size.label)
    return tuple(
        caution if len(labels) == len(run.sizes) else f"{', '.join(labels)}: {caution}"
        for caution, labels in sorted(holds.items(), key=lambda pair: len(pair[1]) == len(run.sizes))
    )


def moves_table(run: SizeRun) -> str:
    """The movement of each point as CSV [mm]: x to the right and y up, from each size to the next."""
    steps = [f"{low.label} to {high.label}" for low, high in zip(run.sizes, run.sizes[1:], strict=False)]
    out = io.StringIO()
    table = csv.writer(out)
    table.writerow(["point", *(f"{step} {axis} mm" for step in steps for axis in ("x", "y"))])
    for move in moves(run):
        table.writerow([move.point, *(f"{number:.2f}" for step in move.steps for number in (step.x, step.y))])
    return out.getvalue()


def moves_sheet(run: SizeRun, speech: Speech, paper: Paper, made: date) -> bytes:
    """The movement of each point as a printed table."""
    found = moves(run)
    data = {
        "paper": {"width": paper.width, "height": paper.height or paper.width},
        "language": speech.language,
        "title": plain(run.title),
        "made": spoken_date(made, speech.language),
        "unit": "in" if speech.units == "in" else "mm",
        "sizes": [size.label for size in run.sizes],
        "rows": [_row(move.point, move.steps, move.whole, speech) for move in found],
    }
    return typeset(_template(), data, made)


def _row(point: str, steps: tuple[Vector, ...], whole: Vector, speech: Speech) -> dict[str, Any]:
    drawing, _, name = point.rpartition(".")
    return {
        "drawing": plain(drawing),
        "name": plain(name),
        "steps": [[_said(step.x, speech), _said(step.y, speech)] for step in (*steps, whole)],
    }


def _said(mm: float, speech: Speech) -> str:
    """A way with its sign; nothing for a point that stands still."""
    number = f"{mm / INCH:+.2f}" if speech.units == "in" else f"{mm:+.1f}"
    return "0" if float(number) == 0 else number.replace("-", "\N{MINUS SIGN}")


@dataclass(frozen=True, slots=True)
class _Stack:
    """What the sheets of stacked sizes have in common."""

    pieces: tuple[Drawing, ...]
    title: str
    cautions: tuple[str, ...]
    made: date
    language: str

    def drawing(self) -> bytes:
        """All pieces beside each other as SVG, at full size."""
        return write_svg(arrange(self.pieces, _roll(ROLLS[1]), self.title).drawing).encode()

    def pages(self, paper: Paper) -> bytes:
        """Pages to join, with a cover."""
        arranged = arrange(self.pieces, paper, self.title)
        pages = tile(
            arranged.drawing, arranged.paper, self.made, self.title, self.cautions, language=self.language
        )
        return write_pdf(pages, self.title, self.made)

    def large_sheet(self) -> bytes:
        """One sheet of the narrowest roll that holds it, or the widest in parts."""
        for name in ROLLS:
            arranged = arrange(self.pieces, _roll(name), self.title)
            page = one_sheet(
                arranged.drawing, arranged.paper, self.made, self.title, self.cautions, language=self.language
            )
            if not isinstance(page, Problem):
                return write_pdf((page,), self.title, self.made)
        return self.pages(_roll(ROLLS[-1]))


def _roll(name: str) -> Paper:
    paper = read_paper(name)
    assert isinstance(paper, Paper)  # noqa: S101 - the names are our own
    return paper


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.booklet").joinpath("moves.typ").read_text("utf-8")
