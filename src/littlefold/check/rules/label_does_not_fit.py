"""The words of a piece fit into it."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING, Final

from shapely import box
from shapely.affinity import translate

from littlefold.check.area import area
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    import shapely

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "label-does-not-fit"
PLACES: Final = (
    -0.5,
    -0.25,
    0.0,
    0.25,
    0.5,
)  # where on the label, in parts of its width or height, it is held
LEFT_OVER: Final = 1.0  # mm2: a smaller rest is rounding


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
        inside = area(piece.outline.stitch)
        if not inside.is_valid or has_room(inside, width, height) or has_room(inside, height, width):
            continue
        bounds = piece.outline.stitch.bounds()
        yield found(
            CODE,
            f'The words of the piece "{piece.name}" need {cm(width)} by {cm(height)}; the piece is '
            f"{cm(bounds.width)} by {cm(bounds.height)} and has no room for them.",
            "Write them beside the piece, with a line that leads to it.",
            place=on_piece(piece),
            numbers=(mm("label", width), mm("piece", max(bounds.width, bounds.height))),
            severity=Severity.NOTE,
        )


def has_room(inside: shapely.Polygon, width: float, height: float) -> bool:
    """Whether an upright rectangle fits inside, tried as the places its middle may take.

    Where the shape is moved by corners, sides and inner points of the rectangle and all the moved shapes
    still cover a place, the rectangle fits there.
    """
    if _lies_in_middle(inside, width, height):
        return True
    room = inside
    for across, along in product(PLACES, PLACES):
        room = room.intersection(translate(inside, across * width, along * height))
        if room.area < LEFT_OVER:
            return False
    return True


def _lies_in_middle(inside: shapely.Polygon, width: float, height: float) -> bool:
    """Whether the rectangle fits at the middle of the shape, which is so for most pieces and quick to see."""
    middle = inside.centroid
    left, bottom = middle.x - width / 2, middle.y - height / 2
    return bool(inside.covers(box(left, bottom, left + width, bottom + height)))
