"""A cord at the waist is sewn down at the middle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import EN_CORDS, FREE_END
from littlefold.check.safety_weight import en_severity
from littlefold.check.wearer import OUTSIDE_CORD_RULES
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-not-secured"


@rule(
    code=CODE,
    title="A drawstring at waist or hem is sewn down at the middle",
    why="A string that can be pulled to one side becomes one end of twice the length.",
    source="EN 14682: secured by a bar-tack at the middle between the exits (baijiantest, Singapore CPSO "
    "page)",
    safety=True,
)
def cord_not_secured(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Waist and hem drawstrings with free ends that nothing holds at the middle."""
    if pattern.draft.garment in OUTSIDE_CORD_RULES:
        return
    for cord in cords(pattern):
        runs = cord.place in {"waist", "hem"} and not (cord.is_sash or cord.is_loop)
        if runs and not cord.is_secured:
            pulled = 2 * cord.free_end
            yield found(
                CODE,
                say(
                    "The {cord} at the {at} is not sewn down at the middle: pulled to one side it hangs out "
                    "{pulled}; {rule} allows {free_end} and asks for a bar-tack.",
                    cord=say(cord.name),
                    at=say(cord.place),
                    pulled=cm(pulled),
                    rule=EN_CORDS,
                    free_end=cm(FREE_END),
                ),
                say(
                    "Sew it down at the middle of the casing and say so in its remark. {law}",
                    law=NOT_LEGAL_ADVICE,
                ),
                place=cord.at,
                numbers=(mm("pulled to one side", pulled), mm("allowed", FREE_END)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
