"""Waist and bottom drawstrings in US sizes 2T to 16."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import US_2T, US_16, US_CORDS, US_FREE_END
from littlefold.check.wearer import UPPER_OUTERWEAR, is_us_size
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.cords import Cord
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-at-waist-us"


@rule(
    code=CODE,
    title="In the United States, waist and bottom drawstrings of upper outerwear hang out at most 3 in",
    why="A long string at the lower edge catches in the door or wheel of a vehicle.",
    source="16 CFR 1120.3(b) and ASTM F1816-97: sizes 2T to 16, 3 in at full width, no toggle or knot, "
    "one-piece strings bar-tacked (CPSC; Federal Register)",
    safety=True,
)
def cord_at_waist_us(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Waist and hem cords over 3 in, knobbed or not secured, on US tops, dresses and coats."""
    outside = circumstances.region != "us" or pattern.draft.garment not in UPPER_OUTERWEAR
    if outside or not is_us_size(pattern, circumstances, US_2T, US_16):
        return
    for cord in cords(pattern):
        if cord.place in {"waist", "hem"} and not cord.is_sash:
            yield from _judged(cord)


def _judged(cord: Cord) -> Iterator[Problem]:
    faults = [
        ("hangs out at each end, by ends", cord.free_end > US_FREE_END, "Shorten it to 3 in at full width."),
        ("has a knot or toggle on ends", cord.is_knobbed, "Leave the ends plain."),
        ("is not sewn down at the middle and has ends", not cord.is_secured, "Bar-tack it at the middle."),
    ]
    for what, is_fault, cure in faults:
        if is_fault:
            yield found(
                CODE,
                say(
                    "The {cord} at the {at} {what} of {end}; {rule} allows plain ends of {us_free_end} on a "
                    "string secured at the middle, in sizes 2T to 16.",
                    cord=say(cord.name),
                    at=say(cord.place),
                    what=say(what),
                    end=cm(cord.free_end),
                    rule=US_CORDS,
                    us_free_end=cm(US_FREE_END),
                ),
                say("{cure} {law}", cure=say(cure), law=NOT_LEGAL_ADVICE),
                place=cord.at,
                numbers=(mm("free end", cord.free_end), mm("allowed", US_FREE_END)),
                rule=US_CORDS,
            )
