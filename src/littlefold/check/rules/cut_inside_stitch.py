"""The cutting line holds the stitch line."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

from littlefold.check.area import area, ring
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cut-inside-stitch"
# Both lines lie on each other at folds and bound edges, each flattened for itself [mm].
ALLOWED = 0.1


@rule(
    code=CODE,
    title="The cutting line goes round the stitch line",
    why="Where the scissors cross the stitch line there is no cloth left to sew.",
    source=COMMON_PRACTICE,
)
def cut_inside_stitch(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Pieces whose stitch line comes out of the cutting line."""
    for piece in pattern.pieces:
        stitch, cut = ring(piece.outline.stitch), area(piece.outline.cut)
        if not (stitch.is_simple and cut.is_valid) or cut.buffer(ALLOWED).covers(stitch):
            continue
        outside = max(cut.distance(shapely.Point(spot)) for spot in stitch.coords)
        yield found(
            CODE,
            f'The stitch line of the piece "{piece.name}" comes {cm(outside)} out of its cutting line; '
            f"{cm(ALLOWED)} is allowed.",
            "Make the allowance narrower or the corner beside it wider.",
            place=on_piece(piece),
            numbers=(mm("outside", outside), mm("allowed", ALLOWED)),
        )
