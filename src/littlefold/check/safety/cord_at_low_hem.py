"""Nothing hangs below a low hem."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import EN_CORDS
from littlefold.check.safety_weight import en_severity

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
                f"The {cord.name} of {cm(cord.length)} at the {cord.place} can hang out "
                f"{cm(cord.free_end)} below the hem; {EN_CORDS} allows {cm(0)} below the crotch.",
                "Use elastic, or a cord without ends that runs wholly inside, and say so. "
                f"{NOT_LEGAL_ADVICE}",
                place=cord.at,
                numbers=(mm("free end", cord.free_end), mm("allowed", 0.0)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
