"""Edges that button have something to close them with."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.notions import left_without
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import found, on_piece
from littlefold.draft.model import EdgeKind
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "fastener-missing"
FASTENERS: Final = frozenset(
    {"button", "stud", "snap", "hook", "zip", "fastener", "tie", "tape", "touch", "popper"}
)


@rule(
    code=CODE,
    title="An edge that buttons has a fastener among the things to buy",
    why="The list of notions is read in the shop: what is not on it is missing on the day of sewing.",
    source=COMMON_PRACTICE,
)
def fastener_missing(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Garments with button edges and no fastener in the list of notions."""
    edges = left_without(pattern, EdgeKind.BUTTON, FASTENERS)
    for piece, edge in edges[:1]:
        yield found(
            CODE,
            say(
                '{count} edges button, the first is "{edge}" of the piece "{piece}", and the list of notions '
                "has 0 fasteners.",
                count=len(edges),
                edge=edge.name,
                piece=piece.name,
            ),
            say("Add buttons, studs or another fastener with their number."),
            place=on_piece(piece, edge.name),
            numbers=(Number("edges", len(edges), "count"), Number("fasteners", 0, "count")),
            severity=Severity.WARNING,
        )
