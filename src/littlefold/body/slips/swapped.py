"""Two readings stand in each other's place."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING, Final

from littlefold.body.slips.story import Story, slip

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_EACH_PAIR: Final = 0.15  # beside 1 for a plain misreading


@slip("readings-swapped", "the two look swapped")
def swapped(readings: Mapping[str, float]) -> Iterable[Story]:
    """Every pair of readings, each with the other's number."""
    pairs = combinations(readings.items(), 2)
    return (Story(((one, second), (other, first)), _EACH_PAIR) for (one, first), (other, second) in pairs)
