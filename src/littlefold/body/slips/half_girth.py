"""Half was written for the whole, or the whole for one side."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.body.register import REGISTER
from littlefold.body.slips.story import Story, one_two_or_all, slip

if TYPE_CHECKING:
    from collections.abc import Iterable

_USUAL, _RARE = 0.5, 0.1  # beside 1 for a plain misreading
_SIDES: Final = 2.0


@slip("half-girth", "it looks like half of it: the whole would be {truth}")
def half_girth(names: tuple[str, ...]) -> Iterable[Story]:
    """Half a girth, or half the back, as the books that work with halves have it."""
    return one_two_or_all(_girths(names, "across_back"), _SIDES, _USUAL)


@slip("double-girth", "it looks like twice as much as it should be: {truth}")
def double_girth(names: tuple[str, ...]) -> Iterable[Story]:
    """A girth that was doubled although it was whole, or both shoulders from tip to tip."""
    return one_two_or_all(_girths(names, "shoulder"), 1 / _SIDES, _RARE)


def _girths(names: tuple[str, ...], also: str) -> tuple[str, ...]:
    return tuple(name for name in names if REGISTER[name].is_girth or name == also)
