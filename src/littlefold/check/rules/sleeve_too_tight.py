"""A sleeve goes round the upper arm with room to move."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.across import across
from littlefold.check.body import girth
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role, is_sewn_on, role_of
from littlefold.check.stretch import stretch
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "sleeve-too-tight"
ROOM = 20.0  # mm


@rule(
    code=CODE,
    title="A sleeve at the foot of its cap is at least 2 cm wider than the upper arm",
    why="A sleeve that is tight round the arm pulls at the shoulder whenever the child reaches.",
    source="4 in over the arm (Scientific Sewing, child's dress), 2 in for an adult (Dresspatternmaking, "
    "sleeve block); the least of 2 cm is common practice, no source",
)
def sleeve_too_tight(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Sleeves narrower than the upper arm (error), or with less than 2 cm of room (warning)."""
    arm = girth(pattern, "upper_arm")
    for piece in pattern.pieces:
        width = None if is_sewn_on(pattern, piece) else width_under_cap(piece)
        if arm is None or width is None:
            continue
        reach = width * (1 + stretch(pattern, circumstances))
        if reach < arm + ROOM:
            yield _problem(piece, reach, arm)


def width_under_cap(piece: Piece) -> float | None:
    """The width of a sleeve between the ends of its cap, across the grain [mm]; None for other pieces."""
    caps = [edge.path for edge in piece.edges if role_of(piece, edge) is Role.CAP]
    ends = [across(piece, end) for path in caps for end in (path.start, path.end)]
    if not ends:
        return None
    return (max(ends) - min(ends)) * (2 if piece.cutting.on_fold else 1)


def _problem(piece: Piece, reach: float, arm: float) -> Problem:
    return found(
        CODE,
        say(
            'The sleeve "{piece}" is {reach} wide at the foot of its cap; the upper arm is {arm} and '
            "needs {needed}.",
            piece=piece.name,
            reach=cm(reach),
            arm=on_tape(arm),
            needed=on_tape(arm + ROOM),
        ),
        say(
            "Widen it by {wider} there, and make the cap lower to keep its length.",
            wider=cm(arm + ROOM - reach),
        ),
        place=on_piece(piece),
        numbers=(mm("sleeve", reach), mm("upper arm", arm), mm("needed", arm + ROOM)),
        severity=Severity.ERROR if reach < arm else Severity.WARNING,
    )
