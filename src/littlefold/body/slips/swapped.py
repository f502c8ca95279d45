"""Two readings stand in each other's place."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING, Final

from littlefold.body.slips.story import Story, slip

if TYPE_CHECKING:
    from collections.abc import Iterable

_EACH_PAIR: Final = 0.15  # beside 1 for a plain misreading


@slip("readings-swapped", "the two look swapped")
def swapped(names: tuple[str, ...]) -> Iterable[Story]:
    """Every pair of readings, each with the other's number."""
    return (
        Story((one, other), (other, one), (1.0, 1.0), _EACH_PAIR) for one, other in combinations(names, 2)
    )
