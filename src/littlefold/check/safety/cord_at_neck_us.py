"""No drawstring at the neck or hood in US sizes 2T to 12."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import US_2T, US_12, US_CORDS
from littlefold.check.wearer import UPPER_OUTERWEAR, is_us_size
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-at-neck-us"


@rule(
    code=CODE,
    title="In the United States, no drawstring at neck or hood of upper outerwear in sizes 2T to 12",
    why="Hood and neck strings have caught on slides and bus doors and killed children.",
    source="16 CFR 1120.3(b), final rule of 19 July 2011, and ASTM F1816-97 (CPSC questions and answers; "
    "Federal Register)",
    safety=True,
)
def cord_at_neck_us(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Cords at neck or hood of tops, dresses and coats in sizes 2T to 12, in the United States."""
    outside = circumstances.region != "us" or pattern.draft.garment not in UPPER_OUTERWEAR
    if outside or not is_us_size(pattern, circumstances, US_2T, US_12):
        return
    for cord in cords(pattern):
        if cord.place in {"neck", "hood"}:
            yield found(
                CODE,
                say(
                    "The {cord} of {length} is at the {at}: {rule} allows {nothing} of drawstring there in sizes "
                    "2T to 12.",
                    cord=say(cord.name),
                    length=cm(cord.length),
                    at=say(cord.place),
                    rule=US_CORDS,
                    nothing=cm(0),
                ),
                say("Close it with elastic, press studs or buttons. {law}", law=NOT_LEGAL_ADVICE),
                place=cord.at,
                numbers=(mm("cord", cord.length), mm("allowed", 0.0)),
                rule=US_CORDS,
            )
