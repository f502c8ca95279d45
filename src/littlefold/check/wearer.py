"""Who wears a garment, as far as the safety rules ask; what is not known is taken with care."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from .body import stature

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.pattern.model import Pattern

    from .circumstances import Circumstances

# EN 14682 leaves these out, as it does shoes, gloves, scarves and bags (scope page of the standard, iteh);
# a collar or a block is no garment yet.
OUTSIDE_CORD_RULES: Final = frozenset({"bib", "nappy", "nappy_cover", "hat", "apron", "block"})

# 16 CFR 1120.3(b) is about upper outerwear.  What a top is worn over cannot be seen on paper, so it is
# counted.
UPPER_OUTERWEAR: Final = frozenset({"top", "coat", "jacket", "dress"})

_US_STATURES: Final[Mapping[str, float]] = {
    "2t": 800.0, "3t": 900.0, "4t": 980.0, "2": 830.0, "3": 900.0, "4": 980.0, "5": 1050.0, "6": 1130.0,
    "6x": 1190.0, "7": 1250.0, "8": 1320.0, "10": 1420.0, "12": 1486.0, "14": 1549.0,
    "16": 1600.0, "18": 1700.0,
}  # fmt: skip
US_SIZES: Final = tuple(_US_STATURES)
"""The US sizes that are known, in lower case."""


def is_up_to(pattern: Pattern, limit: float) -> bool:
    """Whether the child is not taller than a stature [mm]; yes where the stature is not known."""
    tall = stature(pattern)
    return tall is None or tall <= limit


def is_younger(pattern: Pattern, months: float, limit: float) -> bool:
    """Whether the child is younger than an age [months]; by a stature [mm] where the age is not known."""
    age = pattern.draft.measurements.age_months
    return age < months if age is not None else is_up_to(pattern, limit)


def us_stature(pattern: Pattern, circumstances: Circumstances) -> float | None:
    """The stature [mm] that stands for the US size on the label, or the child's own."""
    size = circumstances.us_size.lower().replace(" ", "")
    return _US_STATURES.get(size, stature(pattern)) if size else stature(pattern)


def is_us_size(pattern: Pattern, circumstances: Circumstances, lowest: float, highest: float) -> bool:
    """Whether the US size, or else the stature, lies in a range of sizes given by statures [mm]."""
    tall = us_stature(pattern, circumstances)
    return tall is None or lowest <= tall <= highest
