"""One large sheet for a copy shop: an A0, or a length off a roll."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from littlefold.problem import Number, Problem
from littlefold.sheet.grid import BLEED
from littlefold.sheet.paper import LONGEST
from littlefold.sheet.tile import cut_off, in_the_corner

if TYPE_CHECKING:
    from datetime import date

    from littlefold.drawing import Drawing
    from littlefold.geometry import Bounds
    from littlefold.sheet.page import Page
    from littlefold.sheet.paper import Paper


def one_sheet(
    drawing: Drawing,
    paper: Paper,
    made: date,
    title: str = "",
    cautions: tuple[str, ...] = (),
    *,
    language: str = "en",
) -> Page | Problem:
    """The drawing on a single sheet, upright or on its side, or how much larger the paper has to be."""
    box = drawing.bounds()
    if box is None:
        return Problem("sheet-bare", "There is nothing to print.", cure="Draw a piece first.")
    sheets = (cut_off(paper, drawing), paper.turned())
    sheet = next((sheet for sheet in sheets if _fits(box, sheet)), None)
    return (
        in_the_corner(drawing, sheet, made, title, cautions, language=language)
        if sheet
        else _too_large(box, paper)
    )


def _fits(box: Bounds, paper: Paper) -> bool:
    return box.width + 2 * BLEED <= paper.room_across and box.height + 2 * BLEED <= paper.room_up


def _too_large(box: Bounds, paper: Paper) -> Problem:
    width, height = (ceil(side + 2 * (BLEED + paper.margin)) for side in (box.width, box.height))
    have = f"{paper.width:.0f} x {paper.longest:.0f} mm"
    cure = "Print pages to join."
    if height <= LONGEST:
        cure = f"Take a roll at least {width} mm wide, or print pages to join."
    message = f"The sheet needs {width} x {height} mm, but {paper.name} is at most {have}. {cure}"
    numbers = (Number("width needed", width), Number("width", paper.width), Number("height needed", height))
    return Problem("sheet-too-small", message, numbers=numbers, cure=cure)
