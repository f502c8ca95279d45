"""The page to print before any pattern: a square, tapes and long lines of known length, both ways."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import TYPE_CHECKING, Any

from littlefold.drawing import Drawing, Label, Mark, Meaning, Stroke, label_along, ruler, text_block, wrapped
from littlefold.drawing.ruler import BREADTH, LENGTH
from littlefold.drawing.words import LEADING
from littlefold.geometry import Bounds, Path, Point, Vector
from littlefold.sheet.page import Page
from littlefold.sheet.wording import sheet_words, spoken_date

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from littlefold.sheet.paper import Paper

BODY = 2.6
"""The height of a capital in the text [mm]."""
HEAD = 7.0
"""The height of a capital in the heading [mm]."""
EDGE = 12.0
"""Bare paper kept all round, whatever the margin [mm]."""
LONG = 180.0
"""The long lines, where the paper has room for them [mm]; a small error shows better on a long line."""
SQUARE = 100.0
"""The sides of the square [mm]."""


def printer_check_page(paper: Paper, made: date, language: str = "en") -> Page:
    """The page for one kind of paper, upright; of a roll, as much as it is wide."""
    sheet, said = _upright(paper), sheet_words(language)["check"]
    room = Bounds(0.0, 0.0, sheet.width, sheet.longest).grown(-EDGE)
    words = _words(room, f"{sheet.name}, {spoken_date(made, language)}", said)
    below = Bounds(room.left, room.bottom, room.right, min(label.at.y for label in words) - 6.0)
    figures = _all_figures(below, said) if _has_room(below) else _tapes_alone(room)
    drawing = Drawing((*words, *figures), said["title"])
    return Page(sheet.width, sheet.longest, drawing, name="printer check")


def _upright(paper: Paper) -> Paper:
    if paper.height is None:
        return replace(paper, height=paper.width)
    return paper if paper.height >= paper.width else paper.turned()


def _words(room: Bounds, about: str, said: Mapping[str, Any]) -> tuple[Label, ...]:
    top = Point(room.left, room.top - HEAD)
    labels = [
        Label(said["title"], top, Meaning.TITLE, HEAD, name="check.title"),
        Label(about, Point(room.left, top.y - HEAD), Meaning.TEXT, BODY, name="check.about"),
    ]
    y = top.y - 2 * HEAD - BODY
    for number, step in enumerate(said["steps"], start=1):
        lines = wrapped(step, min(room.width - 18.0, 160.0), BODY)
        labels.append(Label(str(number), Point(room.left, y), Meaning.TITLE, BODY, name="check.steps"))
        labels.extend(text_block(lines, Point(room.left + 6.0, y), height=BODY, name="check.steps"))
        y -= (len(lines) + 0.25) * BODY * LEADING
    return tuple(labels)


def _long_lines(room: Bounds, said: Mapping[str, Any]) -> tuple[Mark, ...]:
    """One line along the lower edge of the room and one along its right edge, meeting at neither end."""
    across = _whole_cm(min(LONG, room.width - 6.0))
    down = _whole_cm(min(LONG, room.height - 12.0))
    right = Point(room.right, room.bottom + 10.0)
    return (
        *_long_line(Point(room.left, room.bottom), 0.0, across, "check.long.across", said),
        *_long_line(right, pi / 2, down, "check.long.down", said),
    )


def _whole_cm(length: float) -> float:
    return 10.0 * int(length / 10.0)


def _long_line(
    start: Point, angle: float, length: float, name: str, said: Mapping[str, Any]
) -> tuple[Mark, ...]:
    """A line with a tick at every centimetre, longer ones at its ends, and its length in words."""
    along = Vector.polar(angle)
    up, end = along.turned_left(), start + along * length
    count = round(length / 10.0)
    ticks = (
        Path.line_through(foot, foot + up * (4.0 if k in (0, count) else 1.4))
        for k, foot in ((k, start + along * (10.0 * k)) for k in range(count + 1))
    )
    words = said["long"].format(length=f"{length / 10:.0f}")
    return (
        Stroke(Path.line_through(start, end), Meaning.RULER, name),
        *(Stroke(tick, Meaning.RULER, f"{name}.tick") for tick in ticks),
        label_along(words, start + up * 2.0, end + up * 2.0, Meaning.RULER, height=2.0, name=f"{name}.words"),
    )


# How far the tapes and the square stand above the long line, and how wide they are together [mm].
LOW = 14.0
ABREAST = LENGTH + 2 * BREADTH + 6.0


def _has_room(room: Bounds) -> bool:
    """Whether the square, both tapes and both long lines fit below the words."""
    return room.height >= LOW + BREADTH + 8.0 + SQUARE and room.width >= ABREAST + 10.0


def _all_figures(room: Bounds, said: Mapping[str, Any]) -> tuple[Mark, ...]:
    """The long lines along the edges, then the two tapes that every page carries, then the square."""
    across = Point(room.left, room.bottom + LOW)
    down = across + Vector(ABREAST, 0.0)
    square = across + Vector(0.0, BREADTH + 8.0)
    return (
        *_long_lines(room, said),
        *ruler(across, 0.0, "check.across"),
        *ruler(down, pi / 2, "check.down"),
        *_square(square, said),
    )


def _tapes_alone(room: Bounds) -> tuple[Mark, ...]:
    """On small paper: a tape along the lower edge and one along the right edge, beside the words."""
    right = Point(room.right, room.bottom + BREADTH + 2.0)
    return (
        *ruler(Point(room.left, room.bottom), 0.0, "check.across"),
        *ruler(right, pi / 2, "check.down"),
    )


def _square(a: Point, said: Mapping[str, Any]) -> tuple[Mark, ...]:
    """The square with its lower left corner, and lines inside to write on."""
    right, up = Vector(SQUARE, 0.0), Vector(0.0, SQUARE)
    outline = Path.line_through(a, a + right, a + right + up, a + up, a)
    return (
        Stroke(outline, Meaning.CUT, "check.square"),
        *_blank(a, 60.0, said["across"]),
        *_blank(a, 42.0, said["down"]),
    )


def _blank(corner: Point, height: float, way: str) -> tuple[Mark, ...]:
    """A line to write a number on."""
    at = corner + Vector(20.0, height)
    line = Path.line_through(at + Vector(20.0, -1.0), at + Vector(52.0, -1.0))
    return (
        Label(way, at, Meaning.TEXT, BODY, name="check.blank"),
        Stroke(line, Meaning.GUIDE, "check.blank"),
        Label("mm", at + Vector(54.0, 0.0), Meaning.TEXT, BODY, name="check.blank"),
    )
