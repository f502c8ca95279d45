"""Draws docs/pictures/casing-top.png: front and back of the sample child's top, as on the sheet in one piece.

The product writes the PDF; `pdftoppm` (Debian's poppler-utils) turns it into a picture.

    python tools/readme_picture.py
"""

from __future__ import annotations

import subprocess
import tempfile
from dataclasses import replace
from datetime import date
from importlib.resources import files
from math import ceil
from pathlib import Path

from littlefold.body.child import child_from_json
from littlefold.booklet.bundle import pieces_drawn
from littlefold.check import Circumstances
from littlefold.draft.sentence import Speech
from littlefold.drawing.ruler import INCH
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.problem import Problem
from littlefold.sheet.arrange import arrange
from littlefold.sheet.one_sheet import one_sheet
from littlefold.sheet.page import Page
from littlefold.sheet.paper import read_paper
from littlefold.sheet.pdf import write_pdf

PICTURE = Path(__file__).parents[1] / "docs" / "pictures" / "casing-top.png"
WIDE = 900  # dots
MADE = date(2026, 3, 1)
AIR = 4.0  # round the pieces [mm]
PIECES = frozenset({"front", "back"})


def main() -> None:
    """Writes the picture."""
    page = _page()
    box = page.drawing.bounds()
    assert box is not None  # noqa: S101 - the top has pieces
    box = box.grown(AIR)
    dots = WIDE / box.width  # per millimetre
    corner = ["-x", str(int(box.left * dots)), "-y", str(int((page.height - box.top) * dots))]
    size = ["-r", f"{dots * INCH:.3f}", "-W", str(WIDE), "-H", str(ceil(box.height * dots))]
    with tempfile.TemporaryDirectory() as folder:
        pdf = Path(folder) / "top.pdf"
        pdf.write_bytes(write_pdf((page,), "Top", MADE))
        target = str(PICTURE.with_suffix(""))
        subprocess.run(["pdftoppm", "-png", "-gray", "-singlefile", *size, *corner, pdf, target], check=True)
    print(f"{PICTURE.name}: {PICTURE.stat().st_size} bytes")


def _page() -> Page:
    """The sheet with the two pieces, without check marks and captions."""
    recipe, paper = on_the_shelf("casing-top"), read_paper("A1")
    child, _ = child_from_json(files("littlefold.cli").joinpath("sample.json").read_text("utf-8"), MADE)
    assert recipe and child and not isinstance(paper, Problem)  # noqa: S101, PT018 - all are our own
    pattern = fulfil(Wish(recipe, child, Circumstances())).pattern
    shown = replace(pattern, pieces=tuple(piece for piece in pattern.pieces if piece.name in PIECES))
    arranged = arrange(pieces_drawn(shown, Speech(), MADE), paper)
    page = one_sheet(arranged.drawing, arranged.paper, MADE)
    assert isinstance(page, Page)  # noqa: S101 - a child's top fits
    return Page(page.width, page.height, page.drawing, page.window)


if __name__ == "__main__":
    main()
