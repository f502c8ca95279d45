"""A piece with a fold edge is cut on the fold, and the other way round."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import found, on_piece
from littlefold.draft.model import EdgeKind
from littlefold.problem import Number, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "fold-not-cut-on-fold"


@rule(
    code=CODE,
    title="A piece is cut on the fold exactly if one of its edges is a fold",
    why="A half piece that is not laid on the fold is cut as two halves without a seam between them.",
    source="the piece that belongs on the fold put on the selvedge cost a yard of cloth (Jayme Grace "
    "2008/11)",
)
def fold_not_cut_on_fold(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Pieces whose cutting and whose edges disagree about the fold."""
    for piece in pattern.pieces:
        folds = sum(edge.kind is EdgeKind.FOLD for edge in piece.edges)
        if folds != int(piece.cutting.on_fold):
            yield _problem(piece, folds)


def _problem(piece: Piece, folds: int) -> Problem:
    wanted = int(piece.cutting.on_fold)
    edges = "fold edge" if folds == 1 else "fold edges"
    how = "on the fold" if wanted else "without a fold"
    edges = "fold edge" if folds == 1 else "fold edges"
    return found(
        CODE,
        say(
            'The piece "{piece}" is cut {how} but has {folds} {edges}; it should have {wanted}.',
            piece=piece.name,
            how=say(how),
            folds=folds,
            edges=say(edges),
            wanted=wanted,
        ),
        say("Say `on fold` where the piece is cut, and let one edge be the fold."),
        place=on_piece(piece),
        numbers=(Number("folds", folds, "count"), Number("wanted", wanted, "count")),
    )
