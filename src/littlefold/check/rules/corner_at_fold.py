"""Every edge that meets a fold stands square to it."""

from __future__ import annotations

from math import pi, radians
from typing import TYPE_CHECKING

from littlefold.check.corners import Corner, corners
from littlefold.check.register import rule
from littlefold.check.report import angle_words, found, on_piece, turn
from littlefold.draft.model import EdgeKind
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "corner-at-fold"
SQUARE = pi / 2
# Unfolded, the corner is twice as far from straight as this; common practice, no source.
ALLOWED = radians(2)


@rule(
    code=CODE,
    title="Every edge that meets a fold stands square to it",
    why="Unfolded, an edge that slants at the fold makes a point or a dip in the middle of the neck or "
    "the hem.",
    source="trueing rule 3: a new neckline is drawn square to the centre back (Mueller & Sohn); the "
    "tolerance is common practice, no source",
)
def corner_at_fold(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Corners between a fold and another edge that are not square; a V neck is meant so, hence a warning."""
    for piece in pattern.pieces:
        for corner in corners(piece):
            folds = [edge for edge in (corner.before, corner.after) if edge.kind is EdgeKind.FOLD]
            if len(folds) == 1 and abs(corner.angle - SQUARE) > ALLOWED:
                yield _problem(corner, corner.other(folds[0]).name)


def _problem(corner: Corner, edge: str) -> Problem:
    return found(
        CODE,
        say(
            'The edge "{edge}" of the piece "{piece}" meets the fold at {angle}; 90 degrees, within '
            "{allowed}, lets it run on smoothly over the fold.",
            edge=edge,
            piece=corner.piece.name,
            angle=angle_words(corner.angle),
            allowed=angle_words(ALLOWED),
        ),
        say("Draw it square to the fold for the first centimetre, unless a point is meant."),
        place=on_piece(corner.piece, edge, corner.before.end or corner.after.start),
        numbers=(turn("angle", corner.angle), turn("square", SQUARE), turn("tolerance", ALLOWED)),
        severity=Severity.WARNING,
    )
