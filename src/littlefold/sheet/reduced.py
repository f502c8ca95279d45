"""A drawing at a stated scale, for teaching: the lines get smaller, the words stay readable."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from littlefold.drawing import Drawing, Label, Mark, Meaning, Stroke
from littlefold.drawing.ruler import INCH
from littlefold.geometry import Affine, Bounds, Path, Point, Vector
from littlefold.sheet.furniture import CAPTION, caption_marks
from littlefold.sheet.grid import sample
from littlefold.sheet.page import Page
from littlefold.sheet.wording import spoken_date
from littlefold.sheet.words_apart import words_apart

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from littlefold.sheet.paper import Paper

Unit = Literal["cm", "in"]
MM_PER: Mapping[Unit, float] = MappingProxyType({"cm": 10.0, "in": INCH})

DIVISORS = (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 500, 1000)
"""Scales that a pupil can multiply by: 1:4 and 1:5 are usual in class (drafting manuals; common practice)."""

READABLE = 1.8
"""Words are never set with smaller capitals [mm]; in the text face that is 8 point."""

BARS: Mapping[Unit, tuple[float, ...]] = MappingProxyType(
    {"cm": (10.0, 20.0, 50.0, 100.0, 200.0, 500.0), "in": (4.0, 8.0, 20.0, 40.0, 80.0, 200.0)}
)
"""What the scale bar may stand for, in its unit; the first that is long enough on paper is taken."""
SHORTEST_BAR = 15.0
"""On paper [mm]."""
FINE = 1.0
"""The points that stand for its lines while words look for a place lie this far apart [mm]."""
BELOW = 7.0
"""How far the scale bar stands below the drawing [mm]."""


def shrunk(drawing: Drawing, divisor: float) -> Drawing:
    """The drawing at 1 : divisor.

    Words are set smaller, but never too small to read, and moved apart where they would now overlap; words of
    a block (same name) stay together.  A word for which no place is found is left out, letters of points and
    cautions never.
    """
    small = drawing.transformed(Affine.scale(1 / divisor))
    labels = [_fitted(mark, divisor) for mark in small.marks if isinstance(mark, Label)]
    lines = tuple(mark for mark in small.marks if not isinstance(mark, Label))
    return Drawing((*lines, *words_apart(labels, sample(Drawing(lines), FINE))), drawing.title)


def _fitted(label: Label, divisor: float) -> Label:
    """Words set smaller by the root of the scale: the order of sizes stays, the picture is not drowned."""
    height = min(label.height, max(READABLE, label.height / sqrt(divisor)))
    return replace(label, height=height)


def scale_bar(picture: Drawing, divisor: float, unit: Unit = "cm", scale: str = "scale") -> tuple[Mark, ...]:
    """A bar of a round length below a reduced picture, and the scale in words.

    Args:
        picture: The reduced drawing.
        divisor: The scale is 1 : divisor.
        unit: What the maker's ruler shows.
        scale: The word for it in the maker's language.
    """
    box = picture.bounds()
    if box is None:
        return ()
    on_paper = MM_PER[unit] / divisor
    stands_for = next((bar for bar in BARS[unit] if bar * on_paper >= SHORTEST_BAR), BARS[unit][-1])
    start = Point(box.left, box.bottom - BELOW)
    end = start + Vector(stands_for * on_paper, 0.0)
    up = Vector(0.0, 1.6)
    bar = Path.line_through(start + up, start, end, end + up)
    words = f"{stands_for:.0f} {unit}    {scale} 1 : {divisor:g}"
    beside = end + Vector(2.0, 0.0)
    return (
        Stroke(bar, Meaning.RULER, "scale.bar"),
        Label(words, beside, Meaning.RULER, 2.0, name="scale.words"),
    )


def picture_room(paper: Paper) -> Bounds:
    """Where a reduced drawing may stand on a page: within the margins, below the caption."""
    sheet = _sheet(paper)
    room = Bounds(0.0, 0.0, sheet.width, sheet.longest).grown(-sheet.margin)
    return Bounds(room.left, room.bottom, room.right, room.top - CAPTION[1])


def picture_page(picture: Drawing, paper: Paper, made: date, title: str = "", language: str = "en") -> Page:
    """A drawing that is small enough in the middle of a page, with title and date; a roll is cut off square."""
    sheet, room = _sheet(paper), picture_room(paper)
    caption = caption_marks(
        Point(room.left, room.top + 2.0), "", title or picture.title, spoken_date(made, language)
    )
    whole = Drawing((*_centred(picture, room).marks, *caption), picture.title)
    return Page(sheet.width, sheet.longest, whole, name="reduced")


def _sheet(paper: Paper) -> Paper:
    return paper if paper.height is not None else replace(paper, height=paper.width)


def _centred(picture: Drawing, room: Bounds) -> Drawing:
    box = picture.bounds()
    if box is None:
        return picture
    return picture.transformed(Affine.translation(room.centre - box.centre))
