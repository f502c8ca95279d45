"""What every page carries besides the drawing: name, title, date, and check marks both ways."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from littlefold.drawing import Label, Mark, Meaning, mark_bounds, ruler, shortened
from littlefold.drawing.ruler import BREADTH, LENGTH
from littlefold.geometry import Bounds, Point
from littlefold.sheet.placing import least_disturbing

if TYPE_CHECKING:
    from datetime import date

    import numpy as np

CAPTION = (58.0, 11.5)
"""Width and height kept for the name, title and date of a page [mm]."""
GAP = 2.0
"""Bare paper between a figure of the sheet and the edge of its room [mm]."""


def furniture(
    places: np.ndarray, room: Bounds, there: tuple[Mark, ...], *, name: str, title: str, made: date
) -> tuple[Mark, ...]:
    """Check marks across and down and a caption, each where it covers least of the drawing.

    `places` are points of the drawing (n x 2) [mm]; `there` are marks of the sheet to keep away from.
    """
    taken = tuple(mark_bounds(mark) for mark in there)
    inner = room.grown(-GAP)
    level = least_disturbing(LENGTH, BREADTH + 2, inner, places, taken)
    upright = least_disturbing(BREADTH + 2, LENGTH, inner, places, (*taken, level))
    caption = least_disturbing(*CAPTION, inner, places, (*taken, level, upright))
    return (
        *ruler(Point(level.left, level.bottom + 1), 0.0, "check.across"),
        *ruler(Point(upright.right - 1, upright.bottom), pi / 2, "check.down"),
        *caption_marks(Point(caption.left, caption.bottom + 1.5), name, title, made),
    )


def caption_marks(at: Point, name: str, title: str, made: date) -> tuple[Mark, ...]:
    """The name of a page in large letters, with the title and the date beside it."""
    beside = Point(at.x + (15.0 if name else 0.0), at.y)
    width = CAPTION[0] - 15.0
    return (
        *((Label(name, at, Meaning.TITLE, 6.5, name="page.name"),) if name else ()),
        Label(
            shortened(title, width, 2.2), Point(beside.x, at.y + 4.4), Meaning.TEXT, 2.2, name="page.title"
        ),
        Label(spoken_date(made), beside, Meaning.TEXT, 2.2, name="page.date"),
    )


def spoken_date(made: date) -> str:
    """A date nobody can take for another: `25 Nov 2026`."""
    months = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
    return f"{made.day} {months[made.month - 1]} {made.year}"
