"""The path at a distance beside a path.

Lines and arcs stay exact; cubics are followed by cubics to `tolerance.OFFSET`.  Where the path turns
towards the side of the offset more tightly than the distance, the offset runs backwards for a while; such
backward parts lie in loops, and the loops are cut off where they cross themselves.
"""

from __future__ import annotations

from itertools import pairwise

from .beside import beside
from .bridge import Corner, bridged, closed_up
from .line import Line
from .loops import without_loops
from .path import Path
from .segment import is_within
from .tolerance import SAME_POINT


def offset(path: Path, distance: float, corner: Corner = "mitre") -> Path | None:
    """The path at a distance beside another, with the same direction of travel.

    Args:
        path: The path to follow; open, or closed, and then the offset is closed too.
        distance: How far to the left of travel [mm]; to the right if negative.
        corner: How the gap at an outer corner is filled: both sides carried on straight until they meet
            (where the corner is so sharp that they meet further off than four distances, it is cut straight
            across), or an arc about the corner.  At an inner corner both sides end where they cross.

    Returns:
        The offset, or None if the path turns so tightly that nothing is left which runs forwards.
    """
    return offset_tapered(path, distance, distance, corner)


def offset_tapered(path: Path, at_start: float, at_end: float, corner: Corner = "mitre") -> Path | None:
    """The path whose distance from another changes evenly with the arc length along it.

    Args:
        path: The path to follow.  If it is closed and the two distances differ, the offset is open.
        at_start: How far to the left of travel at the start [mm]; to the right if negative.
        at_end: The same at the end.
        corner: As for `offset`.

    Returns:
        The offset, or None as for `offset`; a path that is a mere point has none either.
    """
    if at_start == 0 == at_end:
        return path
    kept = tuple(segment for segment in path.segments if not is_within(segment, SAME_POINT))
    if not kept:
        return None  # a point has no side
    if len(kept) < len(path.segments):
        path = Path.chained(kept)  # what is too short has no sure direction
    if len(kept) == 1 and isinstance(kept[0], Line):
        return Path((beside(kept[0], at_start, at_end)[0].segment,))  # nothing to join
    distances = _distances(path, at_start, at_end)
    legs = [
        beside(segment, here, there)
        for segment, (here, there) in zip(path.segments, pairwise(distances), strict=True)
    ]
    closed = path.is_closed and at_start == at_end
    chain = bridged(path.segments, legs, distances, corner)
    if closed:
        chain = closed_up(chain, path.segments, at_start, corner)
    return without_loops(chain, max(abs(at_start), abs(at_end)), closed=closed)


def _distances(path: Path, at_start: float, at_end: float) -> list[float]:
    """The distances at the joints of the path, ends included [mm]."""
    if at_start == at_end:
        return [at_start] * (len(path.segments) + 1)
    return [at_start + (at_end - at_start) * mark / path.length() for mark in path.marks]
