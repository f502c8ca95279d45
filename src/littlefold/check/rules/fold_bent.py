"""A fold is one straight line without an allowance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.draft.model import EdgeKind
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "fold-bent"
ALLOWED = 0.1  # mm: how far a fold may leave the straight line between its ends


@rule(
    code=CODE,
    title="A fold is straight and has no allowance",
    why="Cloth folds along one straight line, and an allowance beside the fold makes the piece wider "
    "than drafted.",
    source=COMMON_PRACTICE,
)
def fold_bent(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Fold edges that bend, or that carry an allowance."""
    for piece in pattern.pieces:
        for edge in piece.edges:
            if edge.kind is EdgeKind.FOLD:
                yield from _judged(piece, edge)


def _judged(piece: Piece, edge: DraftEdge) -> Iterator[Problem]:
    bend = edge.path.length() - edge.path.start.distance(edge.path.end)
    for what, value in (
        ("is longer than the straight line by", bend),
        ("has an allowance of", edge.allowance),
    ):
        if value > ALLOWED:
            yield found(
                CODE,
                say(
                    'The fold "{edge}" of the piece "{piece}" {what} {value}; {allowed} is allowed.',
                    edge=edge.name,
                    piece=piece.name,
                    what=say(what),
                    value=cm(value),
                    allowed=cm(ALLOWED),
                ),
                say("Draw the fold as one straight line, with no allowance."),
                place=on_piece(piece, edge.name),
                numbers=(mm("measured", value), mm("allowed", ALLOWED)),
            )
