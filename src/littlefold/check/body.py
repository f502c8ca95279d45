"""The body that a garment must pass over or go round: which girth belongs to which opening."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from .roles import Role

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.pattern.model import Pattern

# The way round heel and instep, over the foot length: a third longer.  Common practice, no source.
ROUND_HEEL: Final = 4 / 3

PASSED_OVER: Final[Mapping[Role, tuple[str, str]]] = {
    Role.NECK: ("head", "the head"),
    Role.WAIST: ("hip", "the hip"),
    Role.WRIST: ("fist", "the fist"),
    Role.LEG: ("foot", "the way round the heel"),
}


def girth(pattern: Pattern, name: str) -> float | None:
    """A measurement of the child [mm], or None where it is not known."""
    reading = pattern.draft.measurements.get(name)
    return None if reading is None else reading.mm


def passed_over(pattern: Pattern, role: Role) -> float | None:
    """The girth that an opening must pass over [mm]: head, hip, fist, or the way round the heel."""
    if role not in PASSED_OVER:
        return None
    measured = girth(pattern, PASSED_OVER[role][0])
    return measured * ROUND_HEEL if measured is not None and role is Role.LEG else measured


def stature(pattern: Pattern) -> float | None:
    """The child's stature [mm], where known."""
    return girth(pattern, "stature")
