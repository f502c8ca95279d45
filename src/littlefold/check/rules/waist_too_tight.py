"""A waist goes round the waist."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.body import girth
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role
from littlefold.check.stretch import stretch
from littlefold.check.worn import opening
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "waist-too-tight"
FAR = 0.8  # of the waist: less is no child a little too large for a fixed size, but a mistake in a formula
SLACK = 5.0  # mm: what a tape is read to; a waistband of just the waist is drafted in some books


@rule(
    code=CODE,
    title="A closed waist is at least as large as the child's",
    why="A waist smaller than the child's cannot be closed; mostly a formula took a part of the girth too few times.",
    source=COMMON_PRACTICE,
)
def waist_too_tight(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Waists that are smaller than the child's when they are closed, not drawn in and stretched."""
    around, waist = opening(pattern, Role.WAIST), girth(pattern, "waist")
    if around is None or waist is None:
        return
    reach = around.edges * (1 + stretch(pattern, circumstances))
    if reach < waist - SLACK:
        piece, edge = around.parts[0]
        yield found(
            CODE,
            say(
                'The waist is {opening} round when closed (edge "{edge}" of the piece "{piece}"); the child\'s waist is '
                "{waist}.",
                opening=cm(reach),
                edge=edge.name,
                piece=piece.name,
                waist=on_tape(waist),
            ),
            say(
                "Look at the formula of its width: is the girth counted as often as the piece goes round? A pattern of "
                "fixed size is too small for this child."
            ),
            place=on_piece(piece, edge.name),
            numbers=(mm("opening", reach), mm("waist", waist)),
            severity=Severity.ERROR if reach < FAR * waist else Severity.WARNING,
        )
