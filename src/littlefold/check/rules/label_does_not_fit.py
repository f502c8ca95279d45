"""The words of a piece fit into it."""

from __future__ import annotations

from itertools import product
from math import hypot
from typing import TYPE_CHECKING, Final

import numpy as np
import shapely

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "label-does-not-fit"
# Where on the label, in parts of its width and height, it is held; corners first, since they soonest leave no room.
PLACES: Final = tuple(sorted(product((-0.5, -0.25, 0.0, 0.25, 0.5), repeat=2), key=lambda p: -hypot(*p)))
TRIED: Final = tuple(k / 8 for k in range(9))  # where it is tried first, in parts of the way across and up
LEFT_OVER: Final = 1.0  # mm2: a smaller rest is rounding
SPARE: Final = 1.0  # mm: that much to spare each way leaves `LEFT_OVER`


@rule(
    code=CODE,
    title="The words of a piece fit into it",
    why="A piece without its name, size and cut number is put away and cut wrong the next time.",
    source=COMMON_PRACTICE,
)
def label_does_not_fit(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Pieces into whose stitch line the label fits neither across nor along."""
    width, height = circumstances.label
    for piece in pattern.pieces:
        inside = piece.outline.within
        if not piece.outline.stitch_is_simple or fits_either_way(inside, width, height):
            continue
        bounds = piece.outline.stitch.bounds()
        yield found(
            CODE,
            say(
                'The words of the piece "{piece}" need {width} by {height}; the piece is {piece_width} by '
                "{piece_height} and has no room for them.",
                piece=piece.name,
                width=cm(width),
                height=cm(height),
                piece_width=cm(bounds.width),
                piece_height=cm(bounds.height),
            ),
            say("Write them beside the piece, with a line that leads to it."),
            place=on_piece(piece),
            numbers=(mm("label", width), mm("piece", max(bounds.width, bounds.height))),
            severity=Severity.NOTE,
        )


def fits_either_way(inside: shapely.Polygon, width: float, height: float) -> bool:
    """Whether a rectangle fits inside, upright or lying; what is quick to see is looked for both ways first."""
    ways = [way for way in ((width, height), (height, width)) if _is_as_large(inside, *way)]
    return (
        any(_lies_in_middle(inside, *way) for way in ways)
        or any(_lies_somewhere(inside, *way) for way in ways)
        or any(has_room(inside, *way) for way in ways)
    )


def _is_as_large(inside: shapely.Polygon, width: float, height: float) -> bool:
    left, bottom, right, top = inside.bounds
    return bool(right - left >= width and top - bottom >= height)


def has_room(inside: shapely.Polygon, width: float, height: float) -> bool:
    """Whether an upright rectangle fits inside, tried as the places its middle may take.

    Where the shape is moved by corners, sides and inner points of the rectangle and all the moved shapes
    still cover a place, the rectangle fits there.
    """
    room, corners = inside, shapely.get_coordinates(inside)
    for across, along in PLACES:
        room = room.intersection(shapely.polygons(np.add(corners, (across * width, along * height))))
        if room.area < LEFT_OVER:
            return False
    return True


def _lies_in_middle(inside: shapely.Polygon, width: float, height: float) -> bool:
    """Whether the rectangle fits at the middle of the shape, which is so for most pieces and quick to see."""
    middle = inside.centroid
    left, bottom = middle.x - width / 2, middle.y - height / 2
    return bool(inside.covers(shapely.box(left, bottom, left + width, bottom + height)))


def _lies_somewhere(inside: shapely.Polygon, width: float, height: float) -> bool:
    """Whether the rectangle, with a little to spare, fits at one of some places all over the shape: quick to see too."""
    left, bottom, right, top = inside.bounds
    width, height = width + SPARE, height + SPARE
    corners = [
        (left + (right - left - width) * across, bottom + (top - bottom - height) * up)
        for across, up in product(TRIED, TRIED)
    ]
    x, y = np.array(corners).T
    shapely.prepare(inside)
    return bool(shapely.covers(inside, shapely.box(x, y, x + width, y + height)).any())
