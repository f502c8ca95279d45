"""The neck of a block lies at the neck."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.body import girth
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role
from littlefold.check.worn import opening
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "block-neck-wide"
MOST = 1.3  # times the neck


@rule(
    code=CODE,
    title="The neck of a block is at most 1.3 times the child's neck",
    why="Styles are cut lower from a block that fits; a block whose neck is too wide slips off the "
    "shoulders.",
    source=COMMON_PRACTICE,
)
def block_neck_wide(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Blocks whose neck is far larger than the child's."""
    neck, throat = opening(pattern, Role.NECK), girth(pattern, "neck")
    if neck is None or throat is None or pattern.draft.garment != "block" or neck.closed <= MOST * throat:
        return
    piece, edge = neck.parts[0]
    yield found(
        CODE,
        say(
            'The neck of the block is {neck} round (edge "{edge}" of the piece "{piece}" and those '
            "beside it); the child's neck is {throat}, and {most} is the most that fits.",
            neck=cm(neck.closed),
            edge=edge.name,
            piece=piece.name,
            throat=on_tape(throat),
            most=on_tape(MOST * throat),
        ),
        say("Look at the formulas of neck width and depth: a sixth of the full neck."),
        place=on_piece(piece, edge.name),
        numbers=(mm("opening", neck.closed), mm("neck", throat), mm("most", MOST * throat)),
        severity=Severity.WARNING,
    )
