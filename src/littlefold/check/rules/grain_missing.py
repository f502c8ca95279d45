"""Every piece has a grain line inside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import shapely

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "grain-missing"
LEAST = 10.0  # mm: a shorter arrow gives no direction
OUTSIDE = 1.0  # mm: the grain of a piece on the fold may lie on its edge


@rule(
    code=CODE,
    title="Every piece has a grain line, and it lies inside",
    why="Off the grain, a garment twists round the body after the first wash.",
    source="grain arrow among the marks to check before cutting (Sewcraftful, drafter's corner); off "
    "grain is one "
    'of five faults "everyone" makes (Sassy Sewing); the lengths are common practice, no source',
)
def grain_missing(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Grain lines shorter than 1 cm (error), or reaching out of their piece (warning)."""
    for piece in pattern.pieces:
        start, end = piece.grain
        length = start.distance(end)
        tips = shapely.points([(tip.x, tip.y) for tip in piece.grain])
        outside = float(shapely.distance(piece.outline.around, tips).max())
        if length < LEAST or outside > OUTSIDE:
            yield found(
                CODE,
                say(
                    'The grain line of the piece "{piece}" is {length} long and reaches {outside} out of the '
                    "piece; it needs {least}, inside.",
                    piece=piece.name,
                    length=cm(length),
                    outside=cm(outside),
                    least=cm(LEAST),
                ),
                say("Name two points inside the piece, along the lengthwise threads of the cloth."),
                place=on_piece(piece),
                numbers=(mm("length", length), mm("least", LEAST), mm("outside", outside)),
                severity=Severity.ERROR if length < LEAST else Severity.WARNING,
            )
