"""How two pages find each other: a paper boat, half on each, with the neighbour's name beside it.

The page further right or further down is trimmed at its edge and laid over the line drawn on the page before
it.  Then the two halves make one boat, and its water line runs straight through.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.drawing import Label, Meaning, Stroke
from littlefold.geometry import Bounds, Path, Point, Vector
from littlefold.sheet.grid import cell_name
from littlefold.sheet.placing import places_in
from littlefold.sheet.wording import sheet_words

if TYPE_CHECKING:
    import numpy as np

    from littlefold.drawing import Mark
    from littlefold.sheet.grid import Cell, Grid

SMALL = 1.9
"""The height of a capital in the words along an edge [mm]."""
NAME = 3.4
"""The height of a capital in the neighbour's name [mm]."""

BOAT = 8.0
"""How far a boat reaches from the joining line [mm]; no part of the drawing further off matters to its place."""

# Half a paper boat: heights along the mast, which stands on the joining line, and distances from it [mm].
HULL = ((-0.8, 0.0), (2.2, BOAT), (-4.0, 4.8), (-4.0, 0.0))
SAIL = ((6.0, 0.0), (0.4, 3.2))
# The places on an edge that are tried for the boat, as parts of its length.
BERTHS = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12)
# Where words begin and the name ends along the mast, clear of the boat [mm].
AFTER, BEFORE = 9.0, -6.5


@dataclass(frozen=True, slots=True)
class Edge:
    """One joining line of a page; the page's own half of the boat lies to the left of the way."""

    start: Point
    end: Point
    neighbour: str
    words: str


def joining_marks(grid: Grid, cell: Cell, places: np.ndarray, language: str = "en") -> tuple[Mark, ...]:
    """The lines, boats and words at the edges of a page that have a neighbour, where they lie on the drawing.

    `places` are points of the drawing (n x 2) [mm], which the boats keep away from where they can.
    """
    return tuple(mark for edge in joining_edges(grid, cell, language) for mark in _marks(edge, places))


def joining_edges(grid: Grid, cell: Cell, language: str = "en") -> tuple[Edge, ...]:
    """The edges at which a printed neighbour is joined: left, top, right, bottom as far as there are any."""
    row, column = cell
    words = sheet_words(language)["join"]
    window = grid.window(cell)
    left, bottom, right, top = window.left, window.bottom, window.right, window.top
    far, low = right - grid.overlap, bottom + grid.overlap
    sides = {
        (row, column - 1): (Point(left, top), Point(left, bottom), "trim"),
        (row - 1, column): (Point(right, top), Point(left, top), "trim"),
        (row, column + 1): (Point(far, bottom), Point(far, top), "lay"),
        (row + 1, column): (Point(left, low), Point(right, low), "lay"),
    }
    return tuple(
        Edge(start, end, cell_name(near), words[said].format(page=cell_name(near)))
        for near, (start, end, said) in sides.items()
        if near in grid.printed
    )


def _marks(edge: Edge, places: np.ndarray) -> tuple[Mark, ...]:
    way = (edge.end - edge.start).unit()
    mast = way if way.x + way.y > 0 else -way
    middle, inside = _quiet_place(edge, mast, places), way.turned_left()
    line = Stroke(Path.line_through(edge.start, edge.end), Meaning.FRAME, "join")
    boat = (_half(part, middle, mast, inside) for part in (HULL, SAIL))
    return (line, *boat, *_words(edge, middle, mast, inside))


def _quiet_place(edge: Edge, mast: Vector, places: np.ndarray) -> Point:
    """Where on the edge a boat with its words covers the least of the drawing; the same for both pages."""
    first, last = (edge.start, edge.end) if (edge.end - edge.start).dot(mast) > 0 else (edge.end, edge.start)
    spots = (first.towards(last, share) for share in BERTHS)
    return min(spots, key=lambda spot: len(places_in(_berth(spot, mast), places)))


def _berth(spot: Point, mast: Vector) -> Bounds:
    """The room that a boat takes up with its words, on both sides of the line."""
    across = mast.turned_left() * BOAT
    low, high = spot + mast * (BEFORE - 3 * NAME), spot + mast * (AFTER + 16 * SMALL)
    return Bounds.of_points(low + across, low + -across, high + across, high + -across)


def _half(part: tuple[tuple[float, float], ...], middle: Point, mast: Vector, inside: Vector) -> Stroke:
    points = (middle + mast * up + inside * out for up, out in part)
    return Stroke(Path.line_through(*points), Meaning.RULER, "boat")


def _words(edge: Edge, middle: Point, mast: Vector, inside: Vector) -> tuple[Label, ...]:
    """The neighbour's name before the boat, what to do after it; read along the mast, inside the page."""
    over = inside.dot(mast.turned_left()) > 0  # the letters stand between the line and the inside, or hang
    name, words = (middle + inside * (1.3 if over else 1.3 + height) for height in (NAME, SMALL))
    turn = mast.angle
    return (
        Label(edge.neighbour, name + mast * BEFORE, Meaning.TITLE, NAME, turn, "end", "join"),
        Label(edge.words, words + mast * AFTER, Meaning.FRAME, SMALL, turn, "start", "join"),
    )
