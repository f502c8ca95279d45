"""The backward parts of an offset cut off with the loops in which they lie."""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING

from .intersection import self_crossings
from .path import Path
from .segment import is_within
from .tolerance import SAME_POINT, SOLVED

if TYPE_CHECKING:
    from .beside import Leg

Part = tuple[float, float]

# Loops longer than their backward part by up to so many distances are its own: the two ends of the loop run
# beside the bend that it comes from.  Larger: a narrow strip may lose its end.  Smaller: slivers stay
# beside sharp bends.
NEAR = 8.0

# The ends of a loop may fall short of the backward part in it by this [mm], the error of crossings beside
# cusps.  Larger: a loop that holds only some of the part is taken for it.
SHORT = 1e-4


def without_loops(legs: list[Leg], distance: float, *, closed: bool) -> Path | None:
    """The chain without the loops that hold its backward legs; None where a backward leg lies in no loop."""
    legs = [
        leg for leg in legs if not is_within(leg.segment, SOLVED)
    ]  # what is a mere point has no direction
    if all(leg.backward for leg in legs):
        return None
    path = Path.chained(leg.segment for leg in legs)
    parts = _backward_parts(legs) if any(leg.backward for leg in legs) else []
    if parts and closed:
        path, parts = _begun_between(path, parts)
    while parts:
        loop = _loop_around(path, parts[0], NEAR * abs(distance))
        if loop is None:
            return None
        path, parts = _cut(path, loop), _rest(parts, loop)
    return path


def _backward_parts(legs: list[Leg]) -> list[Part]:
    """The arc lengths between which the chain runs backwards [mm]; neighbours are one part."""
    marks = list(accumulate((leg.segment.length() for leg in legs), initial=0.0))
    parts: list[Part] = []
    for leg, low, high in zip(legs, marks, marks[1:], strict=False):
        if leg.backward and parts and parts[-1][1] == low:
            parts[-1] = (parts[-1][0], high)
        elif leg.backward:
            parts.append((low, high))
    return parts


def _begun_between(path: Path, parts: list[Part]) -> tuple[Path, list[Part]]:
    """A closed path begun in the middle of its longest forward part, away from the loops."""
    whole = path.length()
    follow = [*parts[1:], (parts[0][0] + whole, 0.0)]
    gaps = [(after[0] - before[1], before[1]) for before, after in zip(parts, follow, strict=True)]
    longest, low = max(gaps)
    start = (low + longest / 2) % whole
    moved = Path.joined(path.part(start, whole), path.part(0.0, start))
    return moved, sorted(((a - start) % whole, (a - start) % whole + b - a) for a, b in parts)


def _loop_around(path: Path, part: Part, reach: float) -> Part | None:
    """The loop that holds a part, as the arc lengths of its two passings [mm].

    Several crossings may lie round one part.  Of those near it the outermost counts, for all that it cuts
    off is too near to the path that is followed; of crossings far from it, where other parts of the path
    come near, the nearest.
    """
    low, high = part[0] + SHORT, part[1] - SHORT
    loops = [
        (crossing.second_length - crossing.first_length, crossing.first_length, crossing.second_length)
        for crossing in self_crossings(path)
        if crossing.first_length <= low and crossing.second_length >= high
    ]
    near = [loop for loop in loops if loop[0] <= part[1] - part[0] + reach]
    if near:
        return max(near)[1:]
    return min(loops)[1:] if loops else None


def _cut(path: Path, loop: Part) -> Path:
    """The path without a loop."""
    whole = path.length()
    parts = [path.part(a, b) for a, b in ((0.0, loop[0]), (loop[1], whole)) if b - a > SAME_POINT]
    return Path.joined(*parts)


def _rest(parts: list[Part], loop: Part) -> list[Part]:
    """The backward parts that are left when a loop has been cut off."""
    low, high = loop
    before = [(a, min(b, low)) for a, b in parts if a < low - SHORT]
    after = [(max(a, high) - high + low, b - high + low) for a, b in parts if b > high + SHORT]
    return before + after
