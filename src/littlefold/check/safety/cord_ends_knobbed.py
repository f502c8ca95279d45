"""No knots, toggles or beads on free ends."""

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

CODE = "cord-ends-knobbed"


@rule(
    code=CODE,
    title="Free ends carry no knots, toggles, beads or pompons",
    why="A knob wedges in a gap through which a plain end slips.",
    source="EN 14682: toggles only where there is no free end; no knots or three-dimensional ends "
    "(prinfab, baijiantest)",
    safety=True,
)
def cord_ends_knobbed(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Cords whose free ends carry something."""
    if pattern.draft.garment in OUTSIDE_CORD_RULES:
        return
    for cord in cords(pattern):
        if cord.is_knobbed:
            yield found(
                CODE,
                say(
                    "The {cord} at the {at} carries a knot, toggle or bead on free ends of {end}; {rule} allows "
                    "them only on a cord with {nothing} of free end.",
                    cord=say(cord.name),
                    at=say(cord.place),
                    end=cm(cord.free_end),
                    rule=EN_CORDS,
                    nothing=cm(0),
                ),
                say("Leave the ends plain. {law}", law=NOT_LEGAL_ADVICE),
                place=cord.at,
                numbers=(mm("free end", cord.free_end), mm("allowed", 0.0)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
