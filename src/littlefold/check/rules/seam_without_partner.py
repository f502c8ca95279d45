"""Every edge that is to be sewn has a partner."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import is_sewn_on, made_as
from littlefold.check.worn import is_sewn
from littlefold.draft.model import EdgeKind
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "seam-without-partner"
_LAID_ON = frozenset({"bias", "band", "facing"})
_TO_SEW = frozenset({EdgeKind.SEAM, EdgeKind.GATHERED})


@rule(
    code=CODE,
    title="Every seam edge is sewn to something",
    why="A seam edge without a partner is left over when the garment is put together: a seam was "
    "forgotten, or its edge stands in another one by mistake.",
    source=COMMON_PRACTICE,
)
def seam_without_partner(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Edges of kind seam or gathered that no seam takes in; not on a block, nor on strips and facings."""
    pieces = () if pattern.draft.garment == "block" else pattern.pieces
    for piece in pieces:
        for edge in () if _is_laid_on(pattern, piece) else piece.edges:
            if edge.kind in _TO_SEW and not is_sewn(pattern, piece, edge):
                yield found(
                    CODE,
                    say(
                        'The edge "{edge}" of the piece "{piece}" is a seam of {length}, but 0 of the recipe\'s seams '
                        "sew it to anything.",
                        edge=edge.name,
                        piece=piece.name,
                        length=cm(edge.path.length()),
                    ),
                    say("Say what it is sewn to, or say that it is a hem, bound or faced."),
                    place=on_piece(piece, edge.name),
                    numbers=(mm("length", edge.path.length()), Number("seams", 0, "count")),
                    severity=Severity.WARNING,
                )


def _is_laid_on(pattern: Pattern, piece: Piece) -> bool:
    """Whether a piece is a strip or facing, or a band, collar or cuff of which one edge is sewn: the rest is folded."""
    if made_as(pattern, piece) in _LAID_ON:
        return True
    return is_sewn_on(pattern, piece) and any(is_sewn(pattern, piece, edge) for edge in piece.edges)
