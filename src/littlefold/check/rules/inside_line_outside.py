"""Slits, darts and buttonholes lie inside their piece."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import Inside
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "inside-line-outside"
OUTSIDE = 0.5  # mm: how far a line inside a piece may reach over its cutting line


@rule(
    code=CODE,
    title="Slits, darts, buttons and buttonholes lie inside their piece",
    why="A slit or a buttonhole beside the piece is cut into nothing; its points were taken from another "
    "drawing.",
    source=COMMON_PRACTICE,
)
def inside_line_outside(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Inside lines that reach out of the cutting line."""
    for piece in pattern.pieces:
        whole = piece.outline.around
        if piece.outline.cut_is_simple:
            for line in piece.inside:
                yield from _judged(piece, line, whole)


def _judged(piece: Piece, line: Inside, whole: shapely.Polygon) -> Iterator[Problem]:
    points = shapely.points([(point.x, point.y) for point in line.path.flatten(OUTSIDE)])
    outside = float(shapely.distance(whole, points).max())
    if outside > OUTSIDE:
        yield found(
            CODE,
            say(
                'The {kind} "{line}" of the piece "{piece}", {length} long, reaches {outside} out of the '
                "piece; {allowed} is allowed.",
                kind=say(line.kind),
                line=line.name,
                piece=piece.name,
                length=cm(line.path.length()),
                outside=cm(outside),
                allowed=cm(OUTSIDE),
            ),
            say("Look at its points: are they on the drawing of this piece?"),
            place=on_piece(piece, line.edge or None),
            numbers=(mm("length", line.path.length()), mm("outside", outside), mm("allowed", OUTSIDE)),
        )
