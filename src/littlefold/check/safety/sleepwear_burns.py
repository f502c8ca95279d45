"""Sleepwear and fire."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.across import height
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.roles import is_sewn_on
from littlefold.check.safety.limits import INFANT_AGE, INFANT_ONE_PIECE, INFANT_STATURE, INFANT_TWO_PIECE
from littlefold.check.wearer import is_younger
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "sleepwear-burns"
RULE: Final = "16 CFR 1615 and 1616"


@rule(
    code=CODE,
    title="Sleepwear comes with a caution about fire, and is tight or of tested cloth",
    why="Loose cotton nightwear burns in seconds at a heater or a candle.",
    source="16 CFR 1615 (sizes 0 to 6X) and 1616 (7 to 14); infant garments up to 9 months, one piece up "
    "to 64.8 cm or each of two up to 40 cm, are outside (eCFR); the table of tight-fitting sizes was not "
    "read; UK Nightwear (Safety) Regulations 1985 and EN 14878 by title only",
    safety=True,
)
def sleepwear_burns(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """A warning on sleepwear, or a note where it is an infant garment outside the rule."""
    if pattern.draft.garment != "sleepwear":
        return
    length = max((height(p) for p in pattern.pieces if not is_sewn_on(pattern, p)), default=0.0)
    young = is_younger(pattern, INFANT_AGE, INFANT_STATURE)
    exempt = young and is_infant_length(length, is_one_piece=is_one_piece(pattern))
    yield found(
        CODE,
        say(
            "This is sleepwear, {length} long. Infant garments up to 9 months, in one piece up to "
            "{infant_one_piece} or in two of up to {infant_two_piece} each, are exempt from {rule}; this "
            "one is {exempt}.",
            length=cm(length),
            infant_one_piece=cm(INFANT_ONE_PIECE),
            infant_two_piece=cm(INFANT_TWO_PIECE),
            rule=RULE,
            exempt=say("exempt" if exempt else "not"),
        ),
        say(
            "Make it snug, keep it from fire, and take cloth that has been tested where you sell it. {law}",
            law=NOT_LEGAL_ADVICE,
        ),
        numbers=(mm("length", length), mm("one piece", INFANT_ONE_PIECE), mm("two pieces", INFANT_TWO_PIECE)),
        rule=RULE,
        severity=Severity.NOTE if exempt else Severity.WARNING,
    )


def is_infant_length(length: float, *, is_one_piece: bool) -> bool:
    """Whether a garment of a length [mm] is short enough for the infant exemption."""
    return length <= (INFANT_ONE_PIECE if is_one_piece else INFANT_TWO_PIECE)


def is_one_piece(pattern: Pattern) -> bool:
    """Whether the garment is worn alone; it says `two_piece` among its choices where it is not."""
    return str(pattern.draft.choices.get("sleepwear", "one_piece")) != "two_piece"
