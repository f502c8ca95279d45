"""Whether the cloth in hand is enough, and what to say when it is not."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.lay.spoken import tape, units_of
from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from littlefold.lay.lay import Lay


def enough(lay: Lay) -> tuple[Problem, ...]:
    """A problem where a lay is longer than the cloth in hand; nothing where it fits or cloth is still to be bought."""
    in_hand = lay.cloth.length_to_lay()
    if in_hand is None or lay.cloth_length <= in_hand:
        return ()
    units = units_of(lay.cloth)
    numbers = (Number("needed", lay.cloth_length), Number("in hand", in_hand))
    return (
        Problem(
            "cloth-too-short",
            f"The lay takes {tape(lay.cloth_length, units)}; {tape(in_hand, units)} can be laid of the cloth in hand. Let the "
            "search go on, fold the cloth another way, or cut small pieces from another cloth.",
            numbers=numbers,
        ),
    )
