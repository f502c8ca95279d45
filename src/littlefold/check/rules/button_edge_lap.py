"""Edges that button lap over each other, and have something to close them."""

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

CODE = "button-edge-lap"
LEAST = 10.0  # mm: the smallest child's button with 3 mm beyond it


@rule(
    code=CODE,
    title="An edge that buttons laps over its partner by at least 1 cm",
    why="Without a lap the button has no cloth to sit on and the opening gapes.",
    source=COMMON_PRACTICE + " (button diameter and 0.3 to 0.5 cm; 1.5 cm on a shirt, 2 cm on a dress)",
)
def button_edge_lap(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Button edges with less than 1 cm of lap."""
    for piece in pattern.pieces:
        for edge in piece.edges:
            if edge.kind is EdgeKind.BUTTON and edge.lap < LEAST:
                yield _problem(piece, edge)


def _problem(piece: Piece, edge: DraftEdge) -> Problem:
    return found(
        CODE,
        say(
            'The button edge "{edge}" of the piece "{piece}" laps over its partner by {lap}; it needs '
            "{least}.",
            edge=edge.name,
            piece=piece.name,
            lap=cm(edge.lap),
            least=cm(LEAST),
        ),
        say("Add a button stand as wide as the button and half a centimetre."),
        place=on_piece(piece, edge.name),
        numbers=(mm("lap", edge.lap), mm("least", LEAST)),
        severity=Severity.ERROR if edge.lap <= 0 else Severity.WARNING,
    )
