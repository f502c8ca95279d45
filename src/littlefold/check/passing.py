"""What several checks of openings share: an opening against the part of the body it must pass over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .body import PASSED_OVER, passed_over
from .report import cm, found, mm, on_piece
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
            f'The {role} opening is {cm(reach)} as worn, with everything undone (edge "{edge.name}" of the '
            "piece "
            f'"{piece.name}"); {words} is {cm(body)}.',
            f"Make it {cm(body - reach)} wider, or add a slit of {cm((body - reach) / 2)}, half the "
            "difference.",
            place=on_piece(piece, edge.name),
            numbers=(mm("opening", reach), mm(name, body), mm("slit", (body - reach) / 2)),
        )
