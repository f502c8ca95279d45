"""Free ends of cords at waist and lower edge."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import BOY_STATURE, EN_CORDS, FREE_END, GIRL_STATURE, SASH_END
from littlefold.check.safety_weight import en_severity
from littlefold.check.wearer import OUTSIDE_CORD_RULES, is_up_to
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "cord-ends-too-long"


@rule(
    code=CODE,
    title="Free ends at waist and lower edge are at most 14 cm, those of a tied belt 36 cm",
    why="A long end catches in a bicycle, a lift or a vehicle door.",
    source="EN 14682: free ends 140 mm with the garment at its largest (baijiantest, prinfab); tied "
    "belts 360 mm (Chinese infants list; in EN 14682 from memory)",
    safety=True,
)
def cord_ends_too_long(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Waist, hem, wrist and leg cords with ends over 140 mm, sashes over 360 mm, up to 14 years."""
    highest = GIRL_STATURE if pattern.draft.measurements.sex == "girl" else BOY_STATURE
    if pattern.draft.garment in OUTSIDE_CORD_RULES or not is_up_to(pattern, highest):
        return
    for cord in cords(pattern):
        allowed = SASH_END if cord.is_sash else FREE_END
        if cord.place not in {"neck", "hood", "back"} and cord.free_end > allowed:
            yield found(
                CODE,
                say(
                    "The {cord} at the {at} has free ends of {end} with the garment at its largest; {rule} "
                    "allows {allowed}.",
                    cord=say(cord.name),
                    at=say(cord.place),
                    end=cm(cord.free_end),
                    rule=EN_CORDS,
                    allowed=cm(allowed),
                ),
                say(
                    "Shorten each end by {shorter}. {law}",
                    shorter=cm(cord.free_end - allowed),
                    law=NOT_LEGAL_ADVICE,
                ),
                place=cord.at,
                numbers=(mm("free end", cord.free_end), mm("allowed", allowed)),
                rule=EN_CORDS,
                severity=en_severity(circumstances),
            )
