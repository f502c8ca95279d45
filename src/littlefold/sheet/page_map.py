"""The map of the pages: the drawing, reduced, under the grid of its pages and their names."""

from __future__ import annotations

from functools import reduce
from typing import TYPE_CHECKING

from littlefold.drawing import Label, Meaning, Stroke
from littlefold.geometry import Affine, Bounds, Path, Point, Vector
from littlefold.sheet.grid import cell_name

if TYPE_CHECKING:
    from littlefold.drawing import Drawing, Mark
    from littlefold.sheet.grid import Cell, Grid

OUTLINES = frozenset({Meaning.CUT, Meaning.STITCH, Meaning.FOLD, Meaning.DRAFT, Meaning.CLOTH})
"""What is shown of the drawing; the rest would only blur a small map."""


def page_map(drawing: Drawing, grid: Grid, room: Bounds) -> tuple[Mark, ...]:
    """The drawing, reduced to fit a room, under the grid of its printed pages and their names."""
    whole = reduce(Bounds.union, (grid.share(cell) for cell in grid.cells()))
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
