"""The piece as drawn fits the chosen paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "paper-too-small"


@rule(
    code=CODE,
    title="Every piece fits on the chosen paper",
    why="A pattern drawn by hand on too small a sheet runs off its edge when the widest line is drawn last.",
    source=COMMON_PRACTICE,
)
def paper_too_small(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Pieces whose cutting line is larger than the paper, whichever way it is turned."""
    if circumstances.paper is not None:
        short, long = sorted(circumstances.paper)
        for piece in pattern.pieces:
            yield from _judged(piece, short, long)


def _judged(piece: Piece, short: float, long: float) -> Iterator[Problem]:
    bounds = piece.outline.cut.bounds()
    narrow, tall = sorted((bounds.width, bounds.height))
    if narrow > short or tall > long:
        yield found(
            CODE,
            say(
                'The piece "{piece}" with its allowances is {narrow} by {tall}; the paper is {short} by '
                "{long}.",
                piece=piece.name,
                narrow=cm(narrow),
                tall=cm(tall),
                short=cm(short),
                long=cm(long),
            ),
            say("Take larger paper, or paste sheets together before drawing."),
            place=on_piece(piece),
            numbers=(mm("width", narrow), mm("height", tall), mm("paper", short), mm("paper", long)),
            severity=Severity.WARNING,
        )
