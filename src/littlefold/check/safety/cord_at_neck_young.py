"""No cord at the neck or hood of a young child."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.body import stature
from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm, on_tape
from littlefold.check.safety.limits import EN_CORDS, YOUNG_STATURE
from littlefold.check.wearer import OUTSIDE_CORD_RULES, is_up_to
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-at-neck-young"


@rule(
    code=CODE,
    title="No cord or drawstring at the neck or hood of a child up to 134 cm",
    why="Cords at the neck have caught in slides, doors and cots and strangled children.",
    source="EN 14682: young children, up to a stature of 134 cm (tukes.fi; Singapore CPSO page)",
    safety=True,
)
def cord_at_neck_young(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Cords at neck or hood of garments for children up to 134 cm, whatever the region."""
    if pattern.draft.garment in OUTSIDE_CORD_RULES or not is_up_to(pattern, YOUNG_STATURE):
        return
    for cord in cords(pattern):
        if cord.place in {"neck", "hood"}:
            tall = stature(pattern) or 0.0
            yield found(
                CODE,
                say(
                    "The {cord} of {length} is at the {at} of a child of {tall}: {rule} allows no cord there up "
                    "to {young_stature}, of any length.",
                    cord=say(cord.name),
                    length=cm(cord.length),
                    at=say(cord.place),
                    tall=on_tape(tall),
                    rule=EN_CORDS,
                    young_stature=cm(YOUNG_STATURE),
                ),
                say("Close it with elastic, press studs or buttons. {law}", law=NOT_LEGAL_ADVICE),
                place=cord.at,
                numbers=(mm("cord", cord.length), mm("stature", tall), mm("young up to", YOUNG_STATURE)),
                rule=EN_CORDS,
            )
