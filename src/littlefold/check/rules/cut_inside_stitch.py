"""The cutting line holds the stitch line."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

from littlefold.check.area import area
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
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
        stitch, cut = area(piece.outline.stitch), area(piece.outline.cut)
        if not (stitch.is_valid and cut.is_valid):
            continue
        outside = max(_out_of(cut, stitch), _into(stitch, cut))
        if outside > ALLOWED:
            yield found(
                CODE,
                f'The stitch line of the piece "{piece.name}" comes {cm(outside)} out of its cutting line; '
                f"{cm(ALLOWED)} is allowed.",
                "Make the allowance narrower or the corner beside it wider.",
                place=on_piece(piece),
                numbers=(mm("outside", outside), mm("allowed", ALLOWED)),
            )


def _out_of(cut: shapely.Polygon, stitch: shapely.Polygon) -> float:
    """How far points of the stitch line lie outside the cutting line [mm]."""
    points = shapely.points(shapely.get_coordinates(stitch.exterior))
    return float(shapely.distance(cut, points).max())


def _into(stitch: shapely.Polygon, cut: shapely.Polygon) -> float:
    """How far points of the cutting line lie inside the stitch line [mm]."""
    points = shapely.points(shapely.get_coordinates(cut.exterior))
    shapely.prepare(stitch)
    inside = points[shapely.contains(stitch, points)]
    return float(shapely.distance(stitch.exterior, inside).max(initial=0.0))
