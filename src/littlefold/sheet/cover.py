"""The cover of pages to join: what to do with them, and a map of which page lies where."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import TYPE_CHECKING

from littlefold.drawing import Drawing, ruler
from littlefold.drawing.ruler import BREADTH, LENGTH
from littlefold.geometry import Bounds, Point
from littlefold.sheet.cover_words import BODY, cover_words
from littlefold.sheet.page import Page
from littlefold.sheet.page_map import page_map

if TYPE_CHECKING:
    from littlefold.drawing import Label, Mark
    from littlefold.sheet.grid import Grid
    from littlefold.sheet.imprint import Imprint
    from littlefold.sheet.paper import Paper

EDGE = 12.0
"""Bare paper kept on this page where the margin is smaller [mm]."""
SMALLEST_MAP = 55.0
"""Where the words leave less height than this [mm], the map gets a page of its own."""
AIR = 8.0
"""Between the words and the map [mm]."""


def cover(drawing: Drawing, grid: Grid, paper: Paper, imprint: Imprint) -> tuple[Page, ...]:
    """The first page: title, how to join, cautions, check marks, and the map; more pages if it takes more."""
    edge = max(EDGE, paper.margin)
    room = Bounds(edge, edge, paper.width - edge, paper.longest - edge)
    inner = Bounds(room.left, room.bottom + BREADTH + AIR, room.right - BREADTH - AIR, room.top)
    words_room, map_room = _rooms(inner)
    sheets = _in_sheets(cover_words(grid, paper, imprint, words_room), words_room)
    left = _left_for_the_map(sheets[-1], words_room, map_room)
    pictures: list[tuple[Mark, ...]] = list(sheets)
    if left is None:
        pictures.append(page_map(drawing, grid, inner))
    else:
        pictures[-1] = (*sheets[-1], *page_map(drawing, grid, left))
    return tuple(_page(picture, number, room, paper) for number, picture in enumerate(pictures, start=1))


def _page(picture: tuple[Mark, ...], number: int, room: Bounds, paper: Paper) -> Page:
    level = Point(room.left, room.bottom)
    upright = Point(room.right, room.bottom + BREADTH + 6.0)
    checks = Drawing((*ruler(level, 0.0, "check.across"), *ruler(upright, pi / 2, "check.down")))
    name = "cover" if number == 1 else f"cover {number}"
    return Page(paper.width, paper.longest, Drawing(picture), surround=checks, name=name)


def _rooms(inner: Bounds) -> tuple[Bounds, Bounds]:
    """Where the words and the map go: one over the other on a tall page, side by side on a wide one."""
    if inner.width <= 1.2 * inner.height or inner.width < 2 * LENGTH:
        return inner, inner
    middle = inner.left + 0.47 * inner.width
    return (
        Bounds(inner.left, inner.bottom, middle - AIR, inner.top),
        Bounds(middle, inner.bottom, inner.right, inner.top),
    )


def _in_sheets(words: tuple[Label, ...], room: Bounds) -> list[tuple[Label, ...]]:
    """The lines dealt out to as many sheets as their height takes."""
    sheets: list[list[Label]] = [[]]
    shift = 0.0
    for line in words:
        if line.at.y + shift < room.bottom:
            sheets.append([])
            shift = room.top - BODY - line.at.y
        sheets[-1].append(replace(line, at=Point(line.at.x, line.at.y + shift)))
    return [tuple(sheet) for sheet in sheets]


def _left_for_the_map(words: tuple[Label, ...], words_room: Bounds, map_room: Bounds) -> Bounds | None:
    """The room that the last words leave; None if it is too little."""
    if map_room.left > words_room.left:
        return map_room
    top = min(line.at.y for line in words) - AIR
    if top - map_room.bottom < SMALLEST_MAP:
        return None
    return Bounds(map_room.left, map_room.bottom, map_room.right, top)
