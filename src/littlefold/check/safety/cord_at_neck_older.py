"""At the neck of an older child a cord has no free ends, and its loop is small."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import BOY_STATURE, EN_CORDS, GIRL_STATURE, NECK_LOOP, YOUNG_STATURE
from littlefold.check.safety_weight import en_severity
from littlefold.check.wearer import OUTSIDE_CORD_RULES, is_up_to
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.cords import Cord
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-at-neck-older"


@rule(
    code=CODE,
    title="Over 134 cm, a cord at neck or hood has no free ends and a loop of at most 15 cm",
    why="A free end or a standing loop catches in the door of a bus when the child jumps off.",
    source="EN 14682: older children, girls to 176 and boys to 182 cm; loop when drawn to fit 150 mm "
    "(baijiantest, 2007 edition)",
    safety=True,
)
def cord_at_neck_older(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Neck and hood cords with free ends, or with too large a loop, on children of 134 to 176 or 182 cm."""
    highest = GIRL_STATURE if pattern.draft.measurements.sex == "girl" else BOY_STATURE
    outside = pattern.draft.garment in OUTSIDE_CORD_RULES or is_up_to(pattern, YOUNG_STATURE)
    if outside or not is_up_to(pattern, highest):
        return
    for cord in cords(pattern):
        if cord.place in {"neck", "hood"} and not (cord.is_loop and cord.length <= NECK_LOOP):
            yield _problem(cord, circumstances)


def _problem(cord: Cord, circumstances: Circumstances) -> Problem:
    value = cord.length if cord.is_loop else cord.free_end
    what = "a loop" if cord.is_loop else "free ends"
    allowed = NECK_LOOP if cord.is_loop else 0.0
    return found(
        CODE,
        say(
            "The {cord} at the {at} has {what} of {value}; for an older child {rule} allows {allowed}.",
            cord=say(cord.name),
            at=say(cord.place),
            what=say(what),
            value=cm(value),
            rule=EN_CORDS,
            allowed=cm(allowed),
        ),
        say(
            "Close it with elastic or buttons, or make it a loop of at most {neck_loop}. {law}",
            neck_loop=cm(NECK_LOOP),
            law=NOT_LEGAL_ADVICE,
        ),
        place=cord.at,
        numbers=(mm(what, value), mm("allowed", allowed)),
        rule=EN_CORDS,
        severity=en_severity(circumstances),
    )
