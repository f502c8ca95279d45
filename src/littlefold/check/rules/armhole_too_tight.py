"""The armhole goes round the upper arm with room to move."""

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

CODE = "armhole-too-tight"
ROOM = 40.0  # mm more than the upper arm, so that the arm can be lifted


@rule(
    code=CODE,
    title="The armhole is at least 4 cm larger than the upper arm",
    why="A tight armhole cuts into the armpit and the child holds its arms away from its body.",
    source=COMMON_PRACTICE,
)
def armhole_too_tight(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Armholes smaller than the upper arm (error), or with less than 4 cm of room (warning)."""
    hole, arm = opening(pattern, Role.ARMHOLE), girth(pattern, "upper_arm")
    if hole is None or arm is None:
        return
    reach = hole.opened * (1 + stretch(pattern, circumstances))
    if reach < arm + ROOM:
        piece, edge = hole.parts[0]
        yield found(
            CODE,
            say(
                'The armhole is {reach} round (edge "{edge}" of the piece "{piece}" and its partner); the '
                "upper arm is {arm} and needs {needed}.",
                reach=cm(reach),
                edge=edge.name,
                piece=piece.name,
                arm=on_tape(arm),
                needed=on_tape(arm + ROOM),
            ),
            say("Lower the underarm by about {lower}.", lower=cm((arm + ROOM - reach) / 2)),
            place=on_piece(piece, edge.name),
            numbers=(mm("armhole", reach), mm("upper arm", arm), mm("needed", arm + ROOM)),
            severity=Severity.ERROR if reach < arm else Severity.WARNING,
        )
