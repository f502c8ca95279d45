"""The label of a piece: as large as there is room, else smaller, else beside it with a leader."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

import shapely
from shapely import LineString

from littlefold.drawing import Dot, Label, Mark, Meaning, Stroke, text_width, wrapped
from littlefold.geometry import Path, Point
from littlefold.pattern.room import Place, Room, shifted
from littlefold.pattern.simple import polygon

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.pattern.model import Piece

# Heights of a capital [mm] of the title and of the lines below it, from the largest tried to the smallest
# that is still read at a table.  Common practice, no source.
HEIGHTS = ((5.0, 3.1), (4.0, 2.6), (3.2, 2.2), (2.6, 2.0), (2.2, 1.8))

# Widths tried for the block [mm], in this order.
WIDTHS = (70.0, 95.0, 130.0, 50.0, 180.0, 36.0, 260.0)

# A column of fewer capitals than this is broken after every second or third word: smaller letters come first.
NARROW = 22.0

# What stands between the lines where all are run together.
RUN_TOGETHER = " · "

LEADING = 1.75
"""From base line to base line, in heights of a capital."""

LEADER = 12.0
"""How far beside a small piece its label stands [mm]."""
REACH = 3.0
"""How far the leader goes into the piece [mm]; further, it would run through the words inside."""


@dataclass(frozen=True, slots=True)
class Block:
    """Title and lines broken to a width, with the heights of their capitals, and the room they take [mm]."""

    title: tuple[str, ...]
    lines: tuple[str, ...]
    heights: tuple[float, float]

    @property
    def rows(self) -> tuple[tuple[str, float, Meaning], ...]:
        """Every row with its height and meaning, from the top."""
        large, small = self.heights
        titles = tuple((row, large, Meaning.TITLE) for row in self.title)
        return (*titles, *((row, small, Meaning.TEXT) for row in self.lines))

    @property
    def deep(self) -> float:
        """From the top of the first row to below the last [mm]."""
        return sum(height * LEADING for _, height, _ in self.rows)

    @property
    def wide(self) -> float:
        """The width of the longest row [mm]."""
        return max(text_width(row, height) for row, height, _ in self.rows)

    def marks(self, place: Place, name: str) -> tuple[Mark, ...]:
        """The rows as labels in a block whose lower left corner is given."""
        base, drawn = self.deep, []
        for row, height, meaning in self.rows:
            base -= height * LEADING
            at = shifted(place, 0.0, base + height * (LEADING - 1) / 2)
            drawn.append(Label(row, at, meaning, height, place.angle, name=name))
        return tuple(drawn)


def label(piece: Piece, lines: tuple[str, ...], room: Room) -> tuple[Mark, ...]:
    """Title and lines inside the piece; where it is too small for all words, they stand beside it with a leader.

    Words are read level, if need be in smaller letters; then upwards; then in narrow columns; at last with all
    lines run together.  What has to stand beside begins inside all the same, with as many lines as there is room
    for, so that the piece still bears its name when it is cut out.
    """
    whole = _inside(piece, (lines, (RUN_TOGETHER.join(lines),)), room)
    if whole:
        return whole
    beginnings = tuple(lines[:count] for count in reversed(range(len(lines))))
    beside = _beside(piece, _block(piece.title, lines, WIDTHS[0], HEIGHTS[-2]))
    return (*_inside(piece, beginnings, room), *beside)


def _inside(piece: Piece, sayings: tuple[tuple[str, ...], ...], room: Room) -> tuple[Mark, ...]:
    """The first of several sayings for which there is a place; nothing if there is none for any."""
    for said, are_narrow, find in product(sayings, (False, True), (room.level, room.upright)):
        for blocks in _sizes(piece.title, said, are_narrow=are_narrow):
            found = _first(blocks, find)
            if found is not None:
                block, place = found
                return block.marks(place, f"{piece.name}.label")
    return ()


def _first(
    blocks: tuple[Block, ...], find: Callable[[float, float], Place | None]
) -> tuple[Block, Place] | None:
    """The first block for which there is a place, and the place."""
    places = ((block, find(block.wide, block.deep)) for block in blocks)
    return next(((block, place) for block, place in places if place is not None), None)


def _sizes(title: str, lines: tuple[str, ...], *, are_narrow: bool) -> Iterator[tuple[Block, ...]]:
    """Blocks to try in several widths, the largest letters first."""
    for heights in HEIGHTS:
        widths = (width for width in WIDTHS if (width < NARROW * heights[1]) is are_narrow)
        yield tuple(_block(title, lines, width, heights) for width in widths)


def _block(title: str, lines: tuple[str, ...], width: float, heights: tuple[float, float]) -> Block:
    large, small = heights
    rows = tuple(row for line in lines for row in wrapped(line, width, small))
    return Block(wrapped(title, width, large), rows, heights)


def _beside(piece: Piece, block: Block) -> tuple[Mark, ...]:
    box = piece.outline.cut.bounds()
    place = Place(Point(box.right + LEADER, box.centre.y - block.deep / 2), 0.0)
    leader = Path.line_through(
        Point(box.right + LEADER - 1.5, box.centre.y), _just_inside(piece, box.centre.y)
    )
    name = f"{piece.name}.label"
    return (
        Stroke(leader, Meaning.GUIDE, name),
        Dot(leader.end, Meaning.GUIDE, name),
        *block.marks(place, name),
    )


def _just_inside(piece: Piece, y: float) -> Point:
    """A place a little inside the right edge of a piece, at a height between its lowest and highest point."""
    box = piece.outline.cut.bounds()
    across = polygon(piece.outline.cut).intersection(LineString([(box.left, y), (box.right, y)]))
    left, _, right, _ = max((part.bounds for part in shapely.get_parts(across)), key=lambda bounds: bounds[2])
    return Point(max(right - REACH, (left + right) / 2), y)
