"""Pieces for left and right are cut as a pair."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import shapely

from littlefold.check.register import rule
from littlefold.check.report import found, on_piece
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "two-of-a-side"
# The part of its area by which a piece may differ from its mirror image and still be the same turned over.
SAME_SHAPE: Final = 0.01


@rule(
    code=CODE,
    title="Pieces for both sides of the body are cut as a pair",
    why="Two copies of a piece that is not its own mirror image are two left fronts, or two right sleeves.",
    source="the same side cut twice, and no cloth left (Jayme Grace 2008/11); sleeves identical and not "
    "mirrored (Taylor and Hart, mistakes that matter)",
)
def two_of_a_side(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Pieces cut several times, not as a pair, whose mirror image is another shape."""
    for piece in pattern.pieces:
        cut = piece.cutting
        if cut.count > 1 and not cut.pair and not cut.on_fold and not is_its_own_mirror(piece):
            yield _problem(piece)


def is_its_own_mirror(piece: Piece) -> bool:
    """Whether the piece laid on its mirror image covers it, mirrored across or along (middle on middle)."""
    shape = piece.outline.within
    if not piece.outline.stitch_is_simple:
        return True
    return any(_difference(shape, sides) <= SAME_SHAPE for sides in ((-1.0, 1.0), (1.0, -1.0)))


def _difference(shape: shapely.Polygon, sides: tuple[float, float]) -> float:
    """The part of its area by which a shape differs from its mirror image; -1 turns a side over, middle on middle."""
    left, bottom, right, top = shape.bounds
    across, along = sides
    moved = (left + right if across < 0 else 0.0, bottom + top if along < 0 else 0.0)
    mirrored = shapely.polygons(shapely.get_coordinates(shape) * sides + moved)
    return float(shape.symmetric_difference(mirrored).area / shape.area)


def _problem(piece: Piece) -> Problem:
    return found(
        CODE,
        say(
            'The piece "{piece}" is cut {count} times the same way up, but it is not its own mirror '
            "image: 2 would be for one side of the body and 0 for the other.",
            piece=piece.name,
            count=piece.cutting.count,
        ),
        say("Cut it as a pair, with the face of the cloth up once and down once."),
        place=on_piece(piece),
        numbers=(Number("count", piece.cutting.count, "count"), Number("mirrored", 0, "count")),
        severity=Severity.WARNING,
    )
