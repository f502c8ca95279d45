"""The bare packing question: shapes, the stances they may take, and a strip whose length is to be least.

Everything that cloth asks for is a window here.  A piece on the fold may only stand in one row; a nap takes
stances away; a stripe leaves every n-th row or column; a zone of the cloth is a range of rows; what cannot be
moved has one place.  x runs along the cloth from its cut edge, y across it.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from littlefold.lay.convex import Points
    from littlefold.lay.nofit import Lattice, Sign

# A place this near to the end of its window [mm] counts as inside, so that an exact fit is found.
SNUG = 1e-6


@dataclass(frozen=True, slots=True)
class Shape:
    """An outline turned by an angle, about a reference point.

    Attributes:
        parts: Convex parts of the safe outline (grown by half the gap), about the reference point.
        box: How far the true outline reaches left, down, right, up of the reference point.
        area: The area of the true outline [mm2].
        outline: The number of the outline; shapes of one outline differ by their angle only.
        degrees: The angle by which the outline is turned, counter-clockwise about its own origin.
        origin: The reference point, in the turned outline's own coordinates.
        ring: The safe outline itself, about the reference point.
    """

    parts: tuple[Points, ...]
    box: tuple[float, float, float, float]
    area: float
    outline: int
    degrees: float
    origin: tuple[float, float]
    ring: Points

    @property
    def size(self) -> float:
        """The greatest distance of a corner from the reference point [mm]."""
        return max(float(np.hypot(part[:, 0], part[:, 1]).max()) for part in self.parts)

    @property
    def extent(self) -> float:
        """The length of strip that the safe outline covers [mm]."""
        return float(np.ptp(self.ring[:, 0]))


@dataclass(frozen=True, slots=True)
class Stance:
    """One way in which a member may lie.

    The reference point may stand at heights from `low` to `high` [mm] and anywhere along the strip where the
    piece is inside; `along_phase` and `across_phase` are (first, repeat) [mm] where a stripe binds it.
    """

    shape: int
    sign: Sign
    low: float
    high: float
    along_phase: tuple[float, float] | None = None
    across_phase: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class Member:
    """A piece to be placed, with the stances that it may take.

    `fixed_at` says where it lies if it must not be moved; a `hole` is a part of the strip that cannot be used and
    does not count towards the length.
    """

    stances: tuple[Stance, ...]
    fixed_at: tuple[float, float] | None = None
    hole: bool = False


@dataclass(frozen=True, slots=True)
class Strip:
    """The whole question: `height` [mm] across the cloth; places are sought on the lattice first."""

    height: float
    shapes: tuple[Shape, ...]
    members: tuple[Member, ...]
    lattice: Lattice

    def reach(self, stance: Stance) -> tuple[float, float]:
        """How far the stance reaches to the left and to the right of its reference point [mm], both positive."""
        left, _, right, _ = self.shapes[stance.shape].box
        return (-left, right) if stance.sign.along > 0 else (right, -left)

    def area(self) -> float:
        """The area of all members [mm2]."""
        return sum(self.shapes[m.stances[0].shape].area for m in self.members if not m.hole)


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a member lies: the number of its stance, and the place of its reference point [mm]."""

    stance: int
    x: float
    y: float


Layout = tuple[Spot, ...]
"""A spot for each member of a strip, in their order."""


def length_of(strip: Strip, layout: Layout) -> float:
    """The length of strip that a layout takes [mm]."""
    ends = (
        spot.x + strip.reach(member.stances[spot.stance])[1]
        for member, spot in zip(strip.members, layout, strict=True)
        if not member.hole
    )
    return max(ends, default=0.0)


@dataclass(frozen=True, slots=True)
class Window:
    """The lattice rows and columns that a stance may take, as (first, step, count)."""

    rows: tuple[int, int, int]
    columns: tuple[int, int, int]

    @property
    def is_empty(self) -> bool:
        """Whether there is no place at all."""
        return self.rows[2] <= 0 or self.columns[2] <= 0


def window(strip: Strip, stance: Stance, length: float) -> Window:
    """The lattice places of a stance in a strip of a given length [mm]."""
    left, right = strip.reach(stance)
    rows = _steps(stance.low, stance.high, strip.lattice.across, stance.across_phase)
    columns = _steps(left, length - right, strip.lattice.along, stance.along_phase)
    return Window(rows, columns)


def _steps(low: float, high: float, step: float, phase: tuple[float, float] | None) -> tuple[int, int, int]:
    """The lattice steps from `low` to `high` that keep a phase, as (first, step, count).

    A window between two steps gets the one nearest to its middle; settling moves the member into the window.
    """
    first, last = ceil((low - SNUG) / step), floor((high + SNUG) / step)
    if phase is None:
        if first > last and low - SNUG <= high:
            return round((low + high) / 2 / step), 1, 1
        return first, 1, last - first + 1
    stride = round(phase[1] / step)
    start = first + (round(phase[0] / step) - first) % stride
    return start, stride, (last - start) // stride + 1
