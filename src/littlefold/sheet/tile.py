"""Pages to join: a drawing cut into sheets of home paper, with a cover that shows how they go together."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.drawing import Drawing, Label, Meaning, mark_bounds
from littlefold.drawing.crop import boxed, crop_boxed
from littlefold.geometry import Affine, Bounds, Point, Vector
from littlefold.sheet.cover import cover
from littlefold.sheet.furniture import furniture
from littlefold.sheet.grid import BLEED, UPPER_LEFT, cell_name, fit_grid, sample_boxed, whole_cell
from littlefold.sheet.imprint import Imprint
from littlefold.sheet.joining import BOAT, joining_marks
from littlefold.sheet.page import Page
from littlefold.sheet.paper import LEAST
from littlefold.sheet.placing import ground, places_in
from littlefold.sheet.words_whole import words_whole

if TYPE_CHECKING:
    from datetime import date

    import numpy as np

    from littlefold.drawing.crop import Boxed
    from littlefold.sheet.grid import Cell, Grid
    from littlefold.sheet.paper import Paper


def tile(
    drawing: Drawing,
    paper: Paper,
    made: date,
    title: str = "",
    cautions: tuple[str, ...] = (),
    *,
    language: str = "en",
) -> tuple[Page, ...]:
    """A cover and the pages to join, in reading order; pages with nothing on them are left out.

    A drawing that fits one page has no cover, and nothing drawn makes no page.

    Args:
        drawing: What to print at full size.
        paper: The sheet, its margins, and how far pages overlap; a roll is taken as one very long page.
        made: The date that every page carries.
        title: Printed on every page; the title of the drawing if empty.
        cautions: Printed on the cover, or on the page itself where there is but one.
        language: Of the words that the pages carry beside the drawing.

    Raises:
        ValueError: The drawing takes more pages than `grid.MOST_PAGES`; ask `too_large` first.
    """
    sheet = cut_off(paper, drawing)
    grid = fit_grid(drawing, sheet)
    drawing = words_whole(drawing, grid)
    imprint = Imprint(title or drawing.title, made, cautions, language)
    if len(grid.printed) <= 1:
        return _pages(drawing, grid, sheet, imprint)
    return (
        *cover(drawing, grid, sheet, imprint),
        *_pages(drawing, grid, sheet, replace(imprint, cautions=())),
    )


def in_the_corner(
    drawing: Drawing,
    paper: Paper,
    made: date,
    title: str = "",
    cautions: tuple[str, ...] = (),
    *,
    language: str = "en",
) -> Page:
    """The one page of a drawing that fits a paper, begun at its upper left, so that the rest can be cut off."""
    sheet = cut_off(paper, drawing)
    grid = fit_grid(drawing, sheet, UPPER_LEFT)
    return _pages(drawing, grid, sheet, Imprint(title or drawing.title, made, cautions, language))[0]


def _pages(drawing: Drawing, grid: Grid, paper: Paper, imprint: Imprint) -> tuple[Page, ...]:
    marks = boxed(drawing)
    outlines = tuple(box for mark, box in marks if mark.meaning is Meaning.CUT)
    followed = sample_boxed(one for one in marks if one[0].meaning in FOLLOWED)
    job = _Job(grid, marks, sample_boxed(marks), followed, outlines, paper, imprint)
    return tuple(_page(cell, job) for cell in grid.printed)


FOLLOWED = (Meaning.CUT, Meaning.FOLD, Meaning.STITCH, Meaning.TURN, Meaning.NOTCH)
"""Lines by which people cut, fold and sew: nothing of the sheet should cross them."""


def cut_off(paper: Paper, drawing: Drawing) -> Paper:
    """A sheet as it is; of a roll as much as the drawing needs, and at least room for the check marks."""
    box = drawing.bounds()
    if not paper.is_roll or box is None:
        return paper
    length = max(box.height + 2 * BLEED, LEAST) + 2 * paper.margin
    return replace(paper, height=min(length, paper.longest))


@dataclass(frozen=True, slots=True)
class _Job:
    """What all pages of one drawing have in common."""

    grid: Grid
    marks: tuple[Boxed, ...]
    places: np.ndarray
    followed: np.ndarray
    outlines: tuple[Bounds, ...]
    paper: Paper
    imprint: Imprint


def _page(cell: Cell, job: _Job) -> Page:
    window, margin, name = job.grid.window(cell), job.paper.margin, _name(cell, job.grid)
    shown = tuple(mark for mark in job.marks if not _stands_on_top(mark, cell, job.grid))
    near = places_in(window.grown(BOAT), job.places)
    joins = joining_marks(job.grid, cell, near, job.imprint.language)
    # Where the next page will lie on top, a line that is crossed is seen on that page.
    seen = places_in(job.grid.share(cell), job.followed)
    below = ground(near, seen, job.outlines, tuple(mark_bounds(mark) for mark in joins))
    extra = furniture(below, window, name, job.imprint)
    corner = Point(window.left - margin, window.bottom - margin)
    home = Affine.translation(Vector(-corner.x, -corner.y))
    return Page(
        job.paper.width,
        job.paper.longest,
        Drawing(crop_boxed(shown, window)).transformed(home),
        Bounds(margin, margin, margin + window.width, margin + window.height),
        Drawing((*joins, *extra)).transformed(home),
        name,
        corner,
    )


def _name(cell: Cell, grid: Grid) -> str:
    """The name of a page to join; a single page needs none."""
    return cell_name(cell) if len(grid.printed) > 1 else ""


def _stands_on_top(mark: Boxed, cell: Cell, grid: Grid) -> bool:
    """Whether words stand whole on a page that is laid over this one, which then needs no part of them."""
    if not isinstance(mark[0], Label):
        return False
    whole = whole_cell(mark[1], grid)
    return whole is not None and whole != cell and cell[0] <= whole[0] and cell[1] <= whole[1]
