"""The child is of a stature that the recipe suits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.body import stature
from littlefold.check.register import rule
from littlefold.check.report import found, mm, on_tape
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "body-outside-suits"


@rule(
    code=CODE,
    title="The child's stature lies in the range that the recipe suits",
    why="The proportions of a baby and of a schoolchild differ: formulas hold only for the ages they "
    "were made for.",
    source="the recipe's own line; one child needs other sizes for each measure (Beangirl Design 2010/04)",
)
def body_outside_suits(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Children smaller or taller than the recipe says."""
    tall = stature(pattern)
    lowest, highest = pattern.draft.stature_range
    if tall is not None and not lowest <= tall <= highest:
        yield found(
            CODE,
            say(
                'The recipe "{recipe}" suits statures of {lowest} to {highest}; this child is {tall}.',
                recipe=pattern.draft.recipe,
                lowest=on_tape(lowest),
                highest=on_tape(highest),
                tall=on_tape(tall),
            ),
            say("Look hard at every number, or take another recipe."),
            numbers=(mm("stature", tall), mm("lowest", lowest), mm("highest", highest)),
            severity=Severity.WARNING,
        )
