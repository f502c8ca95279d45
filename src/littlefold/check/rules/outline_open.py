"""The outline of a piece is closed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.corners import corners
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "outline-open"
# Edges are cut where they meet and joined to `SAME_POINT`; ten times that allows for rounding in the cutting.
JOINT = 10 * SAME_POINT


@rule(
    code=CODE,
    title="The outline of every piece is closed",
    why="Where one edge stops short of the next there is no line for the scissors to follow.",
    source=COMMON_PRACTICE,
)
def outline_open(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Gaps between the end of an edge and the start of the next."""
    for piece in pattern.pieces:
        yield from _gaps(piece)


def _gaps(piece: Piece) -> Iterator[Problem]:
    for corner in corners(piece):
        gap = corner.before.path.end.distance(corner.after.path.start)
        if gap > JOINT:
            yield found(
                CODE,
                say(
                    'On the piece "{piece}" the edge "{before}" ends {gap} from the start of "{after}"; the gap '
                    "may be {nothing}.",
                    piece=piece.name,
                    before=corner.before.name,
                    gap=cm(gap),
                    after=corner.after.name,
                    nothing=cm(0),
                ),
                say("Let both edges end in the same point."),
                place=on_piece(piece, corner.before.name, corner.before.end),
                numbers=(mm("gap", gap), mm("allowed", JOINT)),
            )
