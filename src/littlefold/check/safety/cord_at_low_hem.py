"""Nothing hangs below a low hem."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import EN_CORDS
from littlefold.check.safety_weight import en_severity
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-at-low-hem"
_LOW: Final = frozenset(
    {"dress", "skirt", "coat", "trousers", "sleepwear", "sleep_bag", "bloomers", "drawers"}
)


@rule(
    code=CODE,
    title="At a hem below the crotch no cord hangs out; at the ankle it is wholly inside",
    why="A cord at the ankle catches in a bicycle chain or under the other foot.",
    source="EN 14682: nothing hangs below a hem that ends below the crotch; at ankle length cords are "
    "wholly inside (baijiantest, prinfab)",
    safety=True,
)
def cord_at_low_hem(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Cords at the hem or leg of long garments that are not said to run inside, or that have free ends."""
    if pattern.draft.garment not in _LOW:
        return
    for cord in cords(pattern):
        if cord.place in {"hem", "leg"} and not (cord.is_inside and cord.free_end <= 0):
            yield found(
                CODE,
                say(
                    "The {cord} of {length} at the {at} can hang out {end} below the hem; {rule} allows "
                    "{nothing} below the crotch.",
                    cord=say(cord.name),
                    length=cm(cord.length),
                    at=say(cord.place),
                    end=cm(cord.free_end),
                    rule=EN_CORDS,
                    nothing=cm(0),
                ),
                say(
                    "Use elastic, or a cord without ends that runs wholly inside, and say so. {law}",
                    law=NOT_LEGAL_ADVICE,
                ),
                place=cord.at,
                numbers=(mm("free end", cord.free_end), mm("allowed", 0.0)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
