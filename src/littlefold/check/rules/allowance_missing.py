"""Edges that are sewn or turned have an allowance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import made_as
from littlefold.check.worn import is_sewn
from littlefold.draft.model import EdgeKind
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "allowance-missing"
LEAST = 3.0  # mm, about 1/8 in: the narrowest seam that holds; common practice, no source
_NEEDS_CLOTH = frozenset({EdgeKind.SEAM, EdgeKind.GATHERED, EdgeKind.HEM, EdgeKind.CASING, EdgeKind.FACED})


@rule(
    code=CODE,
    title="Every edge that is sewn or turned has an allowance",
    why="Without cloth beyond the stitch line the piece comes out smaller than drafted, or frays out of "
    "its seam.",
    source="no allowance added to a collar: it came out smaller than drafted (AKrams Ideas, Peter Pan "
    "collar); the least width is common practice, no source",
)
def allowance_missing(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Seam, gathered, hem, casing and faced edges under 3 mm, and raw edges in a seam; not those of bias strips."""
    for piece in pattern.pieces:
        for edge in piece.edges if made_as(pattern, piece) != "bias" else ():
            if edge.allowance < LEAST and _needs_cloth(pattern, piece, edge):
                yield _problem(piece, edge)


def _needs_cloth(pattern: Pattern, piece: Piece, edge: DraftEdge) -> bool:
    sewn_raw = edge.kind is EdgeKind.RAW and is_sewn(pattern, piece, edge)
    return edge.kind in _NEEDS_CLOTH or sewn_raw


def _problem(piece: Piece, edge: DraftEdge) -> Problem:
    return found(
        CODE,
        say(
            'The {kind} edge "{edge}" of the piece "{piece}" has an allowance of {allowance}; it needs '
            "at least {least}.",
            kind=say(edge.kind.value),
            edge=edge.name,
            piece=piece.name,
            allowance=cm(edge.allowance),
            least=cm(LEAST),
        ),
        say("Say how wide its allowance is, or that it is bound or lies on the selvedge."),
        place=on_piece(piece, edge.name),
        numbers=(mm("allowance", edge.allowance), mm("least", LEAST)),
    )
