"""Whether a drawing is too large to be laid out on pages at all, as after a slip of the keys."""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING

from littlefold.problem import Number, Problem
from littlefold.sheet.grid import BLEED, MOST_PAGES, rows_and_columns

if TYPE_CHECKING:
    from littlefold.drawing import Drawing
    from littlefold.sheet.paper import Paper


def too_large(drawing: Drawing, paper: Paper) -> Problem | None:
    """That a drawing takes more than `MOST_PAGES`, with the numbers; None if it does not."""
    box = drawing.bounds()
    if box is None:
        return None
    if not isfinite(box.width) or not isfinite(box.height):
        return Problem("sheet-endless", "A part of the drawing lies at infinity, so it fits no paper.")
    rows, columns = rows_and_columns(box.grown(BLEED), paper)
    if rows * columns <= MOST_PAGES:
        return None
    cure = "Check the measurements, or take larger paper."
    message = (
        f"The drawing is {box.width:.0f} x {box.height:.0f} mm and takes {rows * columns} pages of {paper.name}; "
        f"{MOST_PAGES} is the most. {cure}"
    )
    numbers = (Number("pages", rows * columns, "count"), Number("most", MOST_PAGES, "count"))
    return Problem("sheet-too-many-pages", message, numbers=numbers, cure=cure)
