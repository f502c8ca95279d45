"""A waist that is pulled on passes over the hip."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.passing import too_small
from littlefold.check.register import rule
from littlefold.check.roles import Role
from littlefold.check.stretch import stretch
from littlefold.check.worn import opening

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "waist-passes-hip"


@rule(
    code=CODE,
    title="A waist that is pulled on from below passes over the hip",
    why="Trousers and skirts are pulled up over the hip; a waist that fits the waist alone stops there.",
    source="waist seam opening at least the hip: common practice, no source; in some children the waist "
    "is larger than the hip (Snyder et al. 1977)",
)
def waist_passes_hip(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Waists of garments without a neck that are smaller than the hip even when stretched and undone."""
    if opening(pattern, Role.NECK) is None:
        yield from too_small(CODE, pattern, Role.WAIST, stretch(pattern, circumstances))
