"""Half was written for the whole, or the whole for one side."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.body.register import REGISTER
from littlefold.body.slips.story import Story, multiplied, slip

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_USUAL, _RARE = 0.5, 0.1  # beside 1 for a plain misreading
_SIDES: Final = 2.0


@slip("half-girth", "it looks like half of it: the whole would be {truth}")
def half_girth(readings: Mapping[str, float]) -> Iterable[Story]:
    """Half a girth, or half the back, as the books that work with halves have it."""
    wholes = {name: mm for name, mm in readings.items() if REGISTER[name].is_girth or name == "across_back"}
    return multiplied(wholes, _SIDES, _USUAL)


@slip("double-girth", "it looks like twice as much as it should be: {truth}")
def double_girth(readings: Mapping[str, float]) -> Iterable[Story]:
    """A girth that was doubled although it was whole, or both shoulders from tip to tip."""
    sides = {name: mm for name, mm in readings.items() if REGISTER[name].is_girth or name == "shoulder"}
    return multiplied(sides, 1 / _SIDES, _RARE)
