"""A lopsided piece that is cut once says which side it is for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import found, on_piece
from littlefold.check.rules.two_of_a_side import is_its_own_mirror
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "side-not-said"


@rule(
    code=CODE,
    title="A piece for one side of the body says which",
    why="A single piece that is not its own mirror image fits one side of the wearer only, or is half of "
    "a piece that was meant to lie on the fold.",
    source=COMMON_PRACTICE,
)
def side_not_said(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Pieces cut once, neither on the fold nor for a side, whose mirror image is another shape."""
    for piece in pattern.pieces:
        cut = piece.cutting
        single = cut.count == 1 and not (cut.pair or cut.on_fold or cut.side)
        if single and not is_its_own_mirror(piece):
            yield found(
                CODE,
                say(
                    'The piece "{piece}" is cut 1 time, is not its own mirror image, and 0 sides are named for '
                    "it.",
                    piece=piece.name,
                ),
                say("Say the wearer's left or right, cut it as a pair, or cut it on the fold."),
                place=on_piece(piece),
                numbers=(Number("count", 1, "count"), Number("sides named", 0, "count")),
                severity=Severity.WARNING,
            )
