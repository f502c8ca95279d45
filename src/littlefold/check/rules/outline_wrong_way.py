"""The edges of a piece run round it counter-clockwise."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import found, on_piece
from littlefold.problem import Measured, Number, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "outline-wrong-way"
# Half a square centimetre [mm2]: less than this is no piece of cloth, and its way round means nothing.
LEAST_AREA = 50.0


@rule(
    code=CODE,
    title="The edges run round every piece the right way, and enclose some cloth",
    why="Allowances are added to the right of the way round; listed the wrong way they would lie inside.",
    source=COMMON_PRACTICE,
)
def outline_wrong_way(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Pieces whose outline runs clockwise, or encloses nothing."""
    for piece in pattern.pieces:
        shape = piece.outline.within
        enclosed = shape.area if shapely.is_ccw(shape.exterior) else -shape.area
        if enclosed < LEAST_AREA and piece.outline.stitch_is_simple:
            yield found(
                CODE,
                say(
                    'The edges of the piece "{piece}" enclose {enclosed} square cm, counted counter-clockwise; '
                    "at least {least} are needed.",
                    piece=piece.name,
                    enclosed=Measured(enclosed, "mm2"),
                    least=Measured(LEAST_AREA, "mm2"),
                ),
                say("List the edges in the order in which they follow each other round the piece."),
                place=on_piece(piece),
                numbers=(Number("area", enclosed, "mm2"), Number("least", LEAST_AREA, "mm2")),
            )
