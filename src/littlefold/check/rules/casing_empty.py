"""Every casing has something to run in it, and is wide enough for it."""

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

CODE = "casing-empty"
RUNNING: Final = frozenset(
    {"elastic", "cord", "drawstring", "tie", "tape", "ribbon", "stud", "snap", "button"}
)


@rule(
    code=CODE,
    title="A casing has an elastic, a tape or another closing among the things to buy",
    why="An edge drafted to be drawn in falls off the body when nothing draws it in.",
    source=COMMON_PRACTICE,
)
def casing_empty(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Garments with a casing and nothing in the list of notions to run in it."""
    edges = left_without(pattern, EdgeKind.CASING, RUNNING)
    for piece, edge in edges[:1]:
        yield found(
            CODE,
            say(
                '{count} edges are casings, the first is "{edge}" of the piece "{piece}", and the list of '
                "notions has 0 things to run in them.",
                count=len(edges),
                edge=edge.name,
                piece=piece.name,
            ),
            say("Add the elastic with its length."),
            place=on_piece(piece, edge.name),
            numbers=(Number("casings", len(edges), "count"), Number("notions", 0, "count")),
            severity=Severity.WARNING,
        )
