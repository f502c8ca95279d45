"""Every notch stands on its edge, clear of its ends."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Notch, Pattern, Piece
    from littlefold.problem import Problem

CODE = "notch-off-edge"
CLEAR = 3.0  # mm: nearer to a corner the notch is lost in the corner of the allowance
ON_LINE = 0.05  # mm: how far a notch may stand from its stitch line


@rule(
    code=CODE,
    title="Every notch stands on its edge, clear of the ends",
    why="A notch beside its edge or at a corner marks no place on the seam.",
    source=COMMON_PRACTICE,
)
def notch_off_edge(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Notches before the start, beyond the end or off the line of their edge."""
    for piece in pattern.pieces:
        for notch in piece.notches:
            yield from _judged(piece, notch)


def _judged(piece: Piece, notch: Notch) -> Iterator[Problem]:
    path = piece.edge(notch.edge).path
    length, off = path.length(), path.distance(notch.foot)
    if CLEAR <= notch.at <= length - CLEAR and off <= ON_LINE:
        return
    yield found(
        CODE,
        say(
            'A notch on the edge "{edge}" of the piece "{piece}" is at {at} of {length} and {off} off '
            "the stitch line; it should be {clear} clear of both ends and on the line.",
            edge=notch.edge,
            piece=piece.name,
            at=cm(notch.at),
            length=cm(length),
            off=cm(off),
            clear=cm(CLEAR),
        ),
        say("Move the notch along the edge."),
        place=on_piece(piece, notch.edge),
        numbers=(mm("at", notch.at), mm("length", length), mm("off", off)),
    )
