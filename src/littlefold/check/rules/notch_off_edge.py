"""Every notch stands on its edge, clear of its ends."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece

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
    length, off = path.length(), path.nearest(notch.foot).distance
    if CLEAR <= notch.at <= length - CLEAR and off <= ON_LINE:
        return
    yield found(
        CODE,
        f'A notch on the edge "{notch.edge}" of the piece "{piece.name}" is at {cm(notch.at)} of '
        f"{cm(length)} and {cm(off)} off the stitch line; it should be {cm(CLEAR)} clear of both ends and "
        "on the line.",
        "Move the notch along the edge.",
        place=on_piece(piece, notch.edge),
        numbers=(mm("at", notch.at), mm("length", length), mm("off", off)),
    )
