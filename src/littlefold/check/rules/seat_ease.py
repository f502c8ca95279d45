"""Trousers go round the hip."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.across import along, width_at
from littlefold.check.body import girth
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role, edges_with
from littlefold.check.stretch import stretch
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.geometry import Point
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "seat-ease"
LEAST = 25.0  # mm
MOST = 0.9  # of the hip: beyond it a formula has a wrong basis
HIP_LINE = 1 / 3  # of the way up the crotch seam: 7.4 of 22.1 cm in a published draft


@rule(
    code=CODE,
    title="Trousers are at least 2.5 cm larger than the hip, and not nearly twice as large",
    why="Tight trousers split when the child squats; far too wide ones come from a formula with a wrong "
    "basis.",
    source="hip ease 4 cm (a Scandinavian children's-pants lesson), 5 cm and the height of the hip line "
    "(Grishchenko, Cutting children's clothes, 1976); the limits are common practice, no source",
)
def seat_ease(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Legs narrower at the hip line than the hip (error), or with unusual ease (warning)."""
    hip, seats = girth(pattern, "hip"), tuple(edges_with(pattern, Role.CROTCH))
    if hip is None or not seats:
        return
    given = stretch(pattern, circumstances)
    widths = {
        piece.name: width_at(piece, hip_line(piece, edge)) * piece.cutting.count for piece, edge in seats
    }
    reach = sum(widths.values()) * (1 + given)
    least = 0.0 if given > 0 else LEAST
    if not hip + least <= reach <= hip * (1 + MOST):
        yield _problem(seats[0][0], reach, hip, least)


def hip_line(piece: Piece, seat: DraftEdge) -> Point:
    """A point at the level of the hip, a third of the way from the fork of the crotch to the waist."""
    fork, top = sorted((seat.path.start, seat.path.end), key=lambda end: along(piece, end))
    return fork.towards(top, HIP_LINE)


def _problem(piece: Piece, reach: float, hip: float, least: float) -> Problem:
    most = hip * (1 + MOST)
    return found(
        CODE,
        say(
            'The trousers are {reach} round at the hip line (piece "{piece}" and those beside it); the '
            "hip is {hip}, and {least} to {most} is wearable.",
            reach=cm(reach),
            piece=piece.name,
            hip=on_tape(hip),
            least=on_tape(hip + least),
            most=on_tape(most),
        ),
        say("Look at the formula of the width: a quarter of the full girth, and ease."),
        place=on_piece(piece),
        numbers=(mm("garment", reach), mm("hip", hip), mm("least", hip + least), mm("most", most)),
        severity=Severity.ERROR if reach < hip else Severity.WARNING,
    )
