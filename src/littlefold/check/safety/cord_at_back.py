"""No cord at the back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import EN_CORDS
from littlefold.check.safety_weight import en_severity
from littlefold.check.wearer import OUTSIDE_CORD_RULES
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-at-back"


@rule(
    code=CODE,
    title="No cord comes out at the back of a garment",
    why="A child cannot see or free what has caught behind it.",
    source="EN 14682: no cord at the back; a sash of a young child may tie there, not below the hem "
    "(prinfab, baijiantest)",
    safety=True,
)
def cord_at_back(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Cords at the back that are not a sash."""
    if pattern.draft.garment in OUTSIDE_CORD_RULES:
        return
    for cord in cords(pattern):
        if cord.place == "back" and not cord.is_sash:
            yield found(
                CODE,
                say(
                    "The {cord} of {length} is at the back; {rule} allows {nothing} there.",
                    cord=say(cord.name),
                    length=cm(cord.length),
                    rule=EN_CORDS,
                    nothing=cm(0),
                ),
                say("Close it with buttons or press studs. {law}", law=NOT_LEGAL_ADVICE),
                place=cord.at,
                numbers=(mm("cord", cord.length), mm("allowed", 0.0)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
