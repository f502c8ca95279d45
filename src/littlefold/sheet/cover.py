"""The cover of pages to join: what to do with them, and a map of which page lies where."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from littlefold.drawing import (
    Drawing,
    Label,
    Mark,
    Meaning,
    Stroke,
    ruler,
    text_block,
    wrapped,
)
from littlefold.drawing.ruler import BREADTH, LENGTH
from littlefold.drawing.words import LEADING
from littlefold.geometry import Affine, Bounds, Path, Point, Vector
from littlefold.sheet.furniture import spoken_date
from littlefold.sheet.grid import cell_name
from littlefold.sheet.page import Page

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import date

    from littlefold.sheet.grid import Cell, Grid
    from littlefold.sheet.paper import Paper

BODY = 2.5
"""The height of a capital in the text [mm]."""
HEAD = 6.0
"""The height of a capital in the title [mm]."""
LINES_OF_TITLE = 3
"""A longer title is cut off."""
EDGE = 12.0
"""Bare paper kept on this page where the margin is smaller [mm]."""
WIDEST_TEXT = 165.0
"""Longer lines are hard to follow [mm]."""


def cover(drawing: Drawing, grid: Grid, paper: Paper, title: str, made: date) -> Page:
    """The first page: title, how to join, check marks, and the map of the pages."""
    edge = max(EDGE, paper.margin)
    room = Bounds(edge, edge, paper.width - edge, paper.longest - edge)
    level = Point(room.left, room.bottom)
    upright = Point(room.right, room.bottom + BREADTH + 6.0)
    checks = (*ruler(level, 0.0, "check.across"), *ruler(upright, pi / 2, "check.down"))
    words_room, map_room = _rooms(room)
    words = _words(grid, paper, title, made, words_room)
    lowest = min(mark.at.y for mark in words) if map_room.left == words_room.left else map_room.top + 8
    map_room = Bounds(map_room.left, map_room.bottom, map_room.right, min(map_room.top, lowest - 8.0))
    marks = (*words, *page_map(drawing, grid, map_room))
    return Page(paper.width, paper.longest, Drawing(marks), surround=Drawing(checks), name="cover")


def _rooms(room: Bounds) -> tuple[Bounds, Bounds]:
    """Where the words and the map go: one over the other on a tall page, side by side on a wide one."""
    inner = Bounds(room.left, room.bottom + BREADTH + 8.0, room.right - BREADTH - 8.0, room.top)
    if room.width <= 1.2 * room.height or room.width < 2 * LENGTH:
        return inner, inner
    middle = room.left + 0.45 * room.width
    return (
        Bounds(inner.left, inner.bottom, middle - 8.0, inner.top),
        Bounds(middle, inner.bottom, inner.right, inner.top),
    )


def _words(grid: Grid, paper: Paper, title: str, made: date, room: Bounds) -> tuple[Label, ...]:
    width = min(room.width, WIDEST_TEXT)
    heads = wrapped(title or "Pattern", width, HEAD, "heavy")[:LINES_OF_TITLE]
    top = Point(room.left, room.top - HEAD)
    head = text_block(heads, top, height=HEAD, meaning=Meaning.TITLE, name="cover.title")
    below = head[-1].at.y - HEAD
    facts = wrapped(_facts(grid, paper, made), width, BODY)
    fact = text_block(facts, Point(room.left, below), height=BODY, name="cover.facts")
    return (*head, *fact, *_steps(Point(room.left, fact[-1].at.y - 3.2 * BODY), width))


def _facts(grid: Grid, paper: Paper, made: date) -> str:
    bare = [cell_name(cell) for cell in grid.cells() if cell not in grid.printed]
    left_out = f" Bare and left out: {', '.join(bare)}." if bare else ""
    return (
        f"{spoken_date(made)}. Full size on {_counted(len(grid.printed), 'page')} of {paper.name}, "
        f"in {_counted(grid.rows, 'row')} and {_counted(grid.columns, 'column')}.{left_out}"
    )


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


STEPS = (
    "Print at actual size, 100 %. Never choose to fit or shrink to the page.",
    (
        "Measure the check marks on every page, across and down: 10 cm, 4 in. Print a page again if one is "
        "off by more than half a millimetre (1/64 in)."
    ),
    (
        'Trim a page where it says "trim here". Lay it over the page it names, so that the two halves '
        "make one paper boat."
    ),
    "Join each row from left to right, then row to row from the top. Glue or tape it flat.",
)


def _steps(at: Point, width: float) -> tuple[Label, ...]:
    """The numbered steps, each number standing out to the left of its lines."""
    labels: list[Label] = []
    indent, y = 6.0, at.y
    for number, step in enumerate(STEPS, start=1):
        lines = wrapped(step, width - indent, BODY)
        labels.append(Label(str(number), Point(at.x, y), Meaning.TITLE, BODY, name="cover.steps"))
        labels.extend(text_block(lines, Point(at.x + indent, y), height=BODY, name="cover.steps"))
        y -= (len(lines) + 0.25) * BODY * LEADING
    return tuple(labels)


def page_map(drawing: Drawing, grid: Grid, room: Bounds) -> tuple[Mark, ...]:
    """The drawing, reduced to fit a room, under the grid of its printed pages and their names."""
    whole = _joined(grid.share(cell) for cell in grid.cells())
    scale = min(room.width / whole.width, room.height / whole.height)
    start = Point(room.left, room.top - whole.height * scale)
    home = Affine.translation(Vector(-whole.left, -whole.bottom)).then(Affine.scale(scale))
    place = home.then(Affine.translation(Vector(start.x, start.y)))
    lines = (
        Stroke(mark.path.transformed(place), Meaning.OLD, "map")
        for mark in drawing.only(*OUTLINES).marks
        if isinstance(mark, Stroke)
    )
    cells = (mark for cell in grid.printed for mark in _map_cell(grid.share(cell), place, cell, scale))
    return (*lines, *cells)


OUTLINES = frozenset({Meaning.CUT, Meaning.STITCH, Meaning.FOLD, Meaning.DRAFT, Meaning.CLOTH})


def _joined(boxes: Iterable[Bounds]) -> Bounds:
    all_boxes = tuple(boxes)
    return Bounds(
        min(box.left for box in all_boxes),
        min(box.bottom for box in all_boxes),
        max(box.right for box in all_boxes),
        max(box.top for box in all_boxes),
    )


def _map_cell(share: Bounds, place: Affine, cell: Cell, scale: float) -> tuple[Mark, ...]:
    """A page on the map: its frame, and its name in the middle."""
    corners = (
        Point(share.left, share.bottom),
        Point(share.right, share.bottom),
        Point(share.right, share.top),
        Point(share.left, share.top),
        Point(share.left, share.bottom),
    )
    height = max(1.6, min(5.0, 0.2 * scale * min(share.width, share.height)))
    middle = place.apply(share.centre) + Vector(0.0, -height / 2)
    return (
        Stroke(Path.line_through(*(place.apply(corner) for corner in corners)), Meaning.FRAME, "map.page"),
        Label(cell_name(cell), middle, Meaning.TITLE, height, 0.0, "middle", "map.page"),
    )
