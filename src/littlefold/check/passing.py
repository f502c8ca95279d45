"""What several checks of openings share: an opening against the part of the body it must pass over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.problem import say

from .body import PASSED_OVER, passed_over
from .report import cm, found, mm, on_piece, on_tape
from .worn import opening

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

    from .roles import Role


def too_small(code: str, pattern: Pattern, role: Role, stretch: float) -> Iterator[Problem]:
    """The problem of an opening that, undone and stretched, is smaller than what it must pass over."""
    around, body = opening(pattern, role), passed_over(pattern, role)
    if around is None or body is None:
        return
    reach = around.opened * (1 + stretch)
    if reach < body:
        piece, edge = around.parts[0]
        name, words = PASSED_OVER[role]
        yield found(
            code,
            say(
                'The {role} opening is {reach} as worn, with everything undone (edge "{edge}" of the piece '
                '"{piece}"); {body_part} is {body}.',
                role=say(role.value),
                reach=cm(reach),
                edge=edge.name,
                piece=piece.name,
                body_part=say(words),
                body=on_tape(body),
            ),
            say(
                "Make it {wider} wider, or add a slit of {slit}, half the difference.",
                wider=cm(body - reach),
                slit=cm((body - reach) / 2),
            ),
            place=on_piece(piece, edge.name),
            numbers=(mm("opening", reach), mm(name, body), mm("slit", (body - reach) / 2)),
        )
