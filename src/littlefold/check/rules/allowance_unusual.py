"""Seam allowances are of a width that can be sewn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.draft.model import EdgeKind
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "allowance-unusual"
LEAST, MOST = 5.0, 38.1  # mm: 0.5 cm, and the side inlay of 1 1/2 in


@rule(
    code=CODE,
    title="Seam allowances are 0.5 to 3.8 cm wide",
    why="A narrower one slips out of the seam, a wider one is mostly a length in the wrong unit.",
    source="0.5 to 3.5 cm (Fashion2Apparel, techniques of seam and hem allowance); a side inlay of 1 1/2 "
    "in (Balakumar, princess petticoat)",
)
def allowance_unusual(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Seam edges whose allowance is present but outside the usual widths."""
    for piece in pattern.pieces:
        for edge in piece.edges:
            if edge.kind is EdgeKind.SEAM and edge.allowance > 0 and not LEAST <= edge.allowance <= MOST:
                yield found(
                    CODE,
                    say(
                        'The seam edge "{edge}" of the piece "{piece}" has an allowance of {allowance}; {least} to '
                        "{most} is usual.",
                        edge=edge.name,
                        piece=piece.name,
                        allowance=cm(edge.allowance),
                        least=cm(LEAST),
                        most=cm(MOST),
                    ),
                    say("Look at the number and its unit."),
                    place=on_piece(piece, edge.name),
                    numbers=(mm("allowance", edge.allowance), mm("least", LEAST), mm("most", MOST)),
                    severity=Severity.WARNING,
                )
