"""What hands reckon before there is a lay: a rule of thumb for cloth."""

from __future__ import annotations

from math import ceil

from littlefold.lay.cloth import YARD

HALF_YARD = YARD / 2

# A length this much over a step [mm] still counts as that step.
ROUNDING = 1e-6


def rough_length(body_lengths: tuple[float, ...], sleeve: float, step: float = HALF_YARD) -> float:
    """Cloth for a dress when the width takes each length twice over [mm]: twice the lengths, and the sleeve.

    Rounded up to the step.  A dressmaker's blog reckons 32 + 20 in, twice, + 12 = 116 in = 3.22 yd, and buys 3 1/2.
    """
    needed = 2 * sum(body_lengths) + sleeve
    return ceil((needed - ROUNDING) / step) * step
