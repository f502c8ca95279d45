"""A waist that nothing draws in holds at the waist."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.body import girth
from littlefold.check.notions import elastics, place_of
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

CODE = "waist-slips"
MORE = 60.0  # mm: ease that a closed waistband may have over the waist


@rule(
    code=CODE,
    title="A skirt or trousers without elastic close at most 6 cm wider than the waist",
    why="A closed waist that is much wider than the child's slides over its hips.",
    source=COMMON_PRACTICE,
)
def waist_slips(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Closed waists, of garments without a neck, far wider than the child's, where nothing draws them in."""
    around, waist = opening(pattern, Role.WAIST), girth(pattern, "waist")
    if around is None or waist is None or opening(pattern, Role.NECK) is not None:
        return
    drawn_in = around.casings > 0 or any(
        place_of(pattern, notion) is Role.WAIST for notion in elastics(pattern)
    )
    if not drawn_in and around.closed > waist + MORE:
        piece, edge = around.parts[0]
        yield found(
            CODE,
            say(
                'The waist is {closed} round when closed (edge "{edge}" of the piece "{piece}"); the child\'s '
                "waist is {waist}, and {most} holds.",
                closed=cm(around.closed),
                edge=edge.name,
                piece=piece.name,
                waist=on_tape(waist),
                most=on_tape(waist + MORE),
            ),
            say("Draw it in with elastic, or look at the formula of its width."),
            place=on_piece(piece, edge.name),
            numbers=(mm("opening", around.closed), mm("waist", waist), mm("most", waist + MORE)),
            severity=Severity.WARNING,
        )
