"""The cutting line holds the stitch line."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Outline, Pattern
    from littlefold.problem import Problem

CODE = "cut-inside-stitch"
# Both lines lie on each other at folds and bound edges, each flattened for itself to 0.1 mm [mm].
ALLOWED = 0.3


@rule(
    code=CODE,
    title="The cutting line goes round the stitch line",
    why="Where the scissors cross the stitch line there is no cloth left to sew.",
    source=COMMON_PRACTICE,
)
def cut_inside_stitch(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Pieces whose stitch line comes out of the cutting line."""
    for piece in pattern.pieces:
        if not (piece.outline.stitch_is_simple and piece.outline.cut_is_simple):
            continue
        outside = _bared(piece.outline)
        if outside > ALLOWED:
            yield found(
                CODE,
                say(
                    'The stitch line of the piece "{piece}" comes {outside} out of its cutting line; {allowed} '
                    "is allowed.",
                    piece=piece.name,
                    outside=cm(outside),
                    allowed=cm(ALLOWED),
                ),
                say("Make the allowance narrower or the corner beside it wider."),
                place=on_piece(piece),
                numbers=(mm("outside", outside), mm("allowed", ALLOWED)),
            )


def _bared(outline: Outline) -> float:
    """How far the stitch line comes out of the cutting line, or the cutting line into it [mm]: by corners of what is bare."""
    if outline.bare.is_empty:
        return 0.0
    corners = shapely.points(shapely.get_coordinates(outline.bare))
    out_of = shapely.distance(outline.around, corners)
    into = shapely.distance(outline.within.exterior, corners)
    return float(max(out_of.max(), into.max()))
