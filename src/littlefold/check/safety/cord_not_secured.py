"""A cord at the waist is sewn down at the middle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import EN_CORDS, FREE_END
from littlefold.check.safety_weight import en_severity
from littlefold.check.wearer import OUTSIDE_CORD_RULES

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
                f"The {cord.name} at the {cord.place} is not sewn down at the middle: pulled to one side "
                f"it hangs out {cm(pulled)}; {EN_CORDS} allows {cm(FREE_END)} and asks for a bar-tack.",
                f"Sew it down at the middle of the casing and say so in its remark. {NOT_LEGAL_ADVICE}",
                place=cord.at,
                numbers=(mm("pulled to one side", pulled), mm("allowed", FREE_END)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
