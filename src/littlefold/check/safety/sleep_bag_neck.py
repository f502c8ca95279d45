"""The neck of a sleep bag."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm, on_piece
from littlefold.check.roles import Role
from littlefold.check.safety.limits import BAG_AGE, BAG_NECK_OLDER, BAG_NECK_YOUNG, BAG_STATURE
from littlefold.check.wearer import is_younger
from littlefold.check.worn import opening
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "sleep-bag-neck"
RULE: Final = "BS 8510"


@rule(
    code=CODE,
    title="The closed neck of a sleep bag is 28 to 32 cm before 6 months, 35.5 to 39.5 cm from then on",
    why="Through a wide neck the baby slips into the bag and cannot breathe; a narrow one presses on the "
    "throat.",
    source="BS 8510 (gap-analysis page); EN 16781 gives the neck by stature in a table that was not "
    "read; for a child of at least 4 kg",
    safety=True,
)
def sleep_bag_neck(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Sleep bags whose neck, closed, is outside the limits of the age."""
    neck = opening(pattern, Role.NECK) if pattern.draft.garment == "sleep_bag" else None
    if neck is None:
        return
    young = is_younger(pattern, BAG_AGE, BAG_STATURE)
    least, most = BAG_NECK_YOUNG if young else BAG_NECK_OLDER
    if not least <= neck.closed <= most:
        piece, edge = neck.parts[0]
        yield found(
            CODE,
            say(
                "The neck of the sleep bag is {neck} when closed; {rule} asks for {least} to {most} {when} 6 "
                "months.",
                neck=cm(neck.closed),
                rule=RULE,
                least=cm(least),
                most=cm(most),
                when=say("before" if young else "from"),
            ),
            say("Change the neck, and let it open wide enough for the head. {law}", law=NOT_LEGAL_ADVICE),
            place=on_piece(piece, edge.name),
            numbers=(mm("neck", neck.closed), mm("least", least), mm("most", most)),
            rule=RULE,
        )
