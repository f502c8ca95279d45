"""A closed cuff passes over the fist, or it opens."""

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

CODE = "cuff-passes-fist"


@rule(
    code=CODE,
    title="The sleeve end, with its slits and buttons undone, passes over the fist",
    why="A cuff that stops at the fist is torn on the first morning.",
    source="closed cuff at least the fist, median 17.3 cm at stature 104 against a wrist of 11.6 (Snyder "
    "et al. 1977)",
)
def cuff_passes_fist(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Sleeve ends that are smaller than the fist even when stretched and undone."""
    yield from too_small(CODE, pattern, Role.WRIST, stretch(pattern, circumstances))
