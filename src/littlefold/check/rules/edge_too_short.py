"""No edge is too short to be sewn or to carry its allowance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.draft.model import EdgeKind
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "edge-too-short"
LEAST = 2.0  # mm: a shorter edge is a slip of the draft, a chalk line is nearly as wide


@rule(
    code=CODE,
    title="Every edge is long enough for a seam and for its allowance",
    why="A very short edge is mostly a slip of the draft, and one shorter than its allowance is all corner.",
    source=COMMON_PRACTICE,
)
def edge_too_short(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Edges under 2 mm (error), and edges shorter than their allowance (warning)."""
    for piece in pattern.pieces:
        for edge in piece.edges:
            yield from _judged(piece, edge)


def _judged(piece: Piece, edge: DraftEdge) -> Iterator[Problem]:
    length = edge.path.length()
    least = LEAST if edge.kind is EdgeKind.FOLD else max(LEAST, edge.allowance)
    if length < least:
        yield found(
            CODE,
            say(
                'The edge "{edge}" of the piece "{piece}" is {length} long; it needs {least}.',
                edge=edge.name,
                piece=piece.name,
                length=cm(length),
                least=cm(least),
            ),
            say("Join it to its neighbour, move its points apart, or make its allowance narrower."),
            place=on_piece(piece, edge.name),
            numbers=(mm("length", length), mm("least", least)),
            severity=Severity.ERROR if length < LEAST else Severity.WARNING,
        )
