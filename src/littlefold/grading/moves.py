"""How far each point of the draft moves from one size to the next.

Every sheet of a draft has a first point, from which the others are measured; it stands still.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from littlefold.geometry import Vector

if TYPE_CHECKING:
    from littlefold.grading.grade import SizeRun


@dataclass(frozen=True, slots=True)
class Move:
    """The way of one point, `front.S`, from each size to the next one [mm]: x to the right, y up."""

    point: str
    steps: tuple[Vector, ...]

    @property
    def whole(self) -> Vector:
        """From the smallest size to the largest."""
        return sum(self.steps, Vector(0.0, 0.0))


SAME = 0.1
"""Steps that differ by less are the same step [mm]: no pencil draws finer."""


def moves(run: SizeRun) -> tuple[Move, ...]:
    """One for each point that every size has, in the order of the draft."""
    drafts = [size.pattern.draft for size in run.sizes]
    if not drafts:
        return ()
    shared = [name for name in drafts[0].points if all(name in draft.points for draft in drafts)]
    places = {name: [draft.points[name].at for draft in drafts] for name in shared}
    return tuple(
        Move(name, tuple(after - before for before, after in pairwise(places[name]))) for name in shared
    )
