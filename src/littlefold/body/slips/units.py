"""The number is right and the unit is not, of one reading, of two, or of the whole card."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.body.slips.story import Story, one_two_or_all, slip

if TYPE_CHECKING:
    from collections.abc import Iterable

_CM_PER_INCH: Final = 2.54
_USUAL, _RARE = 0.3, 0.1  # beside 1 for a plain misreading


@slip("inches-written-as-cm", "{cm} looks like inches: {cm} in are {truth}")
def inches_as_centimetres(names: tuple[str, ...]) -> Iterable[Story]:
    """The tape's inch side was read, and cm written."""
    return one_two_or_all(names, _CM_PER_INCH, _USUAL)


@slip("cm-written-as-inches", "{inches} looks like centimetres: {inches} cm, not inches")
def centimetres_as_inches(names: tuple[str, ...]) -> Iterable[Story]:
    """The tape's cm side was read, and inches written."""
    return one_two_or_all(names, 1 / _CM_PER_INCH, _RARE)


@slip("cm-written-as-mm", "it looks like centimetres written as millimetres: {truth}")
def centimetres_as_millimetres(names: tuple[str, ...]) -> Iterable[Story]:
    """Ten times too little."""
    return one_two_or_all(names, 10.0, _RARE)


@slip("mm-written-as-cm", "it looks like millimetres written as centimetres: {truth}")
def millimetres_as_centimetres(names: tuple[str, ...]) -> Iterable[Story]:
    """Ten times too much."""
    return one_two_or_all(names, 0.1, _RARE)
