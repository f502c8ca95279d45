"""What every page carries besides the drawing: name, title, date, and check marks both ways."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from littlefold.drawing import Label, Mark, Meaning, ruler, shortened, wrapped
from littlefold.drawing.ruler import BREADTH, LENGTH
from littlefold.geometry import Bounds, Point, Vector
from littlefold.sheet.cautions import caution_lines
from littlefold.sheet.placing import Ground, least_disturbing
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from littlefold.sheet.imprint import Imprint

CAPTION = (62.0, 12.0)
"""Width and height kept for the name, title and date of a page [mm]."""
NAME_ROOM = 16.0
"""How much of it the name takes [mm]."""
SMALL, STEP = 2.1, 3.9
"""The height of a capital beside the name, and from line to line [mm]."""
MOST_LINES = 2
"""A longer title is cut off."""
CAUTION, CAUTION_WIDTH = 2.8, 130.0
"""The height of a capital in cautions, and where they are broken into lines [mm]."""
GAP = 2.0
"""Bare paper between a figure of the sheet and the edge of its room [mm]."""


def furniture(ground: Ground, room: Bounds, name: str, imprint: Imprint) -> tuple[Mark, ...]:
    """Check marks across and down, a caption and any cautions, each where it covers least of what is there."""
    inner = room.grown(-GAP)
    level = least_disturbing(LENGTH, BREADTH + 2, inner, ground)
    ground = ground.with_taken(level)
    upright = least_disturbing(BREADTH + 2, LENGTH, inner, ground)
    ground = ground.with_taken(upright)
    caption = least_disturbing(*CAPTION, inner, ground)
    return (
        *ruler(Point(level.left, level.bottom + 1), 0.0, "check.across"),
        *ruler(Point(upright.right - 1, upright.bottom), pi / 2, "check.down"),
        *caption_marks(
            Point(caption.left, caption.bottom + 1.0),
            name,
            imprint.title,
            spoken_date(imprint.made, imprint.language),
        ),
        *_cautions(imprint.cautions, inner, ground.with_taken(caption)),
    )


def _cautions(cautions: tuple[str, ...], room: Bounds, ground: Ground) -> tuple[Mark, ...]:
    """All cautions in one block."""
    width = min(CAUTION_WIDTH, room.width)
    lines = caution_lines(cautions, Point(0.0, 0.0), width, CAUTION)
    if not lines:
        return ()
    height = lines[0].at.y - lines[-1].at.y + 2 * CAUTION
    box = least_disturbing(width, height, room, ground)
    return caution_lines(cautions, Point(box.left, box.top - 1.5 * CAUTION), width, CAUTION)


def caption_marks(at: Point, name: str, title: str, made: str) -> tuple[Mark, ...]:
    """The name of a page in large letters; beside it the title, in two lines at most, and the date."""
    room = NAME_ROOM if name else 0.0
    lines = (*_title_lines(title, CAPTION[0] - room), made)
    first = Point(at.x + room, at.y + STEP * (len(lines) - 1))
    letters = Label(name, at, Meaning.TITLE, 6.5, name="page.name")
    return (*((letters,) if name else ()), *_lines(lines, first))


def _title_lines(title: str, width: float) -> tuple[str, ...]:
    lines = wrapped(title, width, SMALL)
    return (
        lines if len(lines) <= MOST_LINES else (lines[0], shortened(f"{lines[1]} {lines[2]}", width, SMALL))
    )


def _lines(lines: tuple[str, ...], first: Point) -> tuple[Mark, ...]:
    return tuple(
        Label(line, first + Vector(0.0, -STEP * number), Meaning.TEXT, SMALL, name="page.words")
        for number, line in enumerate(lines)
    )
