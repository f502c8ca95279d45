"""A trouser leg passes over the heel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.passing import too_small
from littlefold.check.register import rule
from littlefold.check.roles import Role
from littlefold.check.stretch import stretch

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "hem-passes-foot"


@rule(
    code=CODE,
    title="The leg opening passes over heel and instep",
    why="A leg that does not go over the heel must be dressed by force.",
    source="leg opening at least the foot diagonal, here 4/3 of the foot length: common practice, no source",
)
def hem_passes_foot(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Leg openings that are smaller than the way round the heel."""
    yield from too_small(CODE, pattern, Role.LEG, stretch(pattern, circumstances))
