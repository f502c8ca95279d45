r"""The grain arrow: where in a piece it lies, along the direction stated.

  .-----------.     Everything is looked at in the frame of the grain: `across` counts to its right, `along` with
 /      |      \    it.  The arrow is tried at several shares of the width and takes up the middle of the longest
.       |       .   stretch there; of those that are long enough, one clear of the outline is taken.
'-------+-------'
"""

from __future__ import annotations

from bisect import bisect_left
from itertools import pairwise
from math import hypot, sqrt
from operator import itemgetter
from typing import TYPE_CHECKING, NamedTuple

from littlefold.geometry import Point, Vector
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from littlefold.geometry import Path, Segment

# The arrow takes up this share of the room it has, about its middle.
TAKEN = 0.6

# Longer arrows would only be in the way of words [mm].
LONGEST = 240.0

# Where the arrow is tried, as shares of the piece's width from side to side.  Off the middle first: it leaves
# the larger part for words.
PLACES = (0.3, 0.7, 0.35, 0.65, 0.25, 0.75, 0.4, 0.6, 0.2, 0.8, 0.45, 0.55, 0.5)
IN_ORDER = tuple(sorted(PLACES))

# A place is good when the arrow has this share of the longest room found ...
GOOD_ENOUGH = 0.75

# ... and keeps this far from the outline on both sides [mm]: further than any bracket, allowance or word there.
CLEAR = 20.0

# How much further off it lies than this [mm] need not be known.
ENOUGH = CLEAR + 2 * SAME_POINT

# The arrow is sought among chords that lie within this of the outline [mm]: much less than its distance from it.
CHORDS = 0.1

Spot = tuple[float, float]
"""A place in the frame of the grain: across it and along it [mm]."""


class _Arrow(NamedTuple):
    """How far across it lies, and from where to where along the grain it runs [mm]."""

    across: float
    low: float
    high: float


def grain_arrow(outline: Iterable[Path], way: Vector | None) -> tuple[Point, Point]:
    """The grain arrow inside an outline.

    Args:
        outline: Its edges, head to tail.
        way: The direction of the grain, of any length; upright where none is stated.

    Returns:
        Both ends; the arrow points up, or to the right where it lies level.
    """
    along = _upward(way.unit()) if way else Vector(0, 1)
    across = along.turned_right()
    ring = [
        (x * across.x + y * across.y, x * along.x + y * along.y)
        for path in outline
        for segment in path.segments
        for x, y in _places(segment)
    ]
    best = _clearest(_long_enough(list(_arrows(ring))), ring)
    side = Point(0, 0) + across * best.across
    return side + along * best.low, side + along * best.high


def _places(segment: Segment) -> Iterator[Spot]:
    """The places of a flattened segment, as plain numbers."""
    numbers = segment.coordinates(CHORDS)
    return zip(numbers[::2], numbers[1::2], strict=True)


def _upward(way: Vector) -> Vector:
    return -way if way.y < 0 or (way.y == 0 and way.x < 0) else way


def _arrows(ring: Sequence[Spot]) -> Iterator[_Arrow]:
    """The arrow about the middle of the longest stretch at each of the places, in their order."""
    left, right = min(ring)[0], max(ring)[0]
    levels = [left + share * (right - left) for share in IN_ORDER]
    stretches = dict(zip(IN_ORDER, zip(levels, _marks(ring, levels), strict=True), strict=True))
    for share in PLACES:
        across, marks = stretches[share]
        if marks:
            inside = zip(marks[::2], marks[1::2], strict=False)
            _, low, high = max([(high - low, low, high) for low, high in inside], key=itemgetter(0))
            half = min((high - low) * TAKEN, LONGEST) / 2
            yield _Arrow(across, (low + high) / 2 - half, (low + high) / 2 + half)


def _marks(ring: Sequence[Spot], levels: Sequence[float]) -> list[list[float]]:
    """Where a ring crosses lines along the grain, so far across in rising order: for each, how far along, rising."""
    marks: list[list[float]] = [[] for _ in levels]
    passed = [bisect_left(levels, across) for across, _ in ring]
    for place, (one, other) in enumerate(pairwise(passed)):
        if one != other:
            (across, along), (next_across, next_along) = ring[place], ring[place + 1]
            for k in range(min(one, other), max(one, other)):
                share = (levels[k] - across) / (next_across - across)
                marks[k].append(along + (next_along - along) * share)
    return [sorted(found) for found in marks]


def _long_enough(arrows: list[_Arrow]) -> list[_Arrow]:
    longest = max(arrow.high - arrow.low for arrow in arrows)
    return [arrow for arrow in arrows if arrow.high - arrow.low >= GOOD_ENOUGH * longest]


def _clearest(arrows: list[_Arrow], ring: Sequence[Spot]) -> _Arrow:
    """The first arrow that keeps `CLEAR` from the outline, or the one that keeps furthest from it."""
    best, furthest = arrows[0], -1.0
    for arrow in arrows:
        clear = _corner_clearance(arrow, ring)
        if clear > furthest + SAME_POINT:  # in a strip all are alike, but for rounding
            clear = _end_clearance(arrow, ring, min(clear, ENOUGH))
        if clear > furthest + SAME_POINT:
            best, furthest = arrow, clear
        if clear >= CLEAR:
            break
    return best


def _corner_clearance(arrow: _Arrow, ring: Sequence[Spot]) -> float:
    """How near the corners of an outline come to an arrow [mm]."""
    middle, low, high = arrow.across, arrow.low, arrow.high
    aside = [(x - middle, low - y if y < low else y - high if y > high else 0.0) for x, y in ring]
    return sqrt(min([x * x + y * y for x, y in aside]))


def _end_clearance(arrow: _Arrow, ring: Sequence[Spot], nearest: float) -> float:
    """How near the chords of an outline come to the ends of an arrow, where that is nearer than its corners do [mm]."""
    foot, tip = (arrow.across, arrow.low), (arrow.across, arrow.high)
    left, right = arrow.across - nearest, arrow.across + nearest
    for start, end in pairwise(ring):
        (x, _), (next_x, _) = start, end
        if (x > left or next_x > left) and (x < right or next_x < right):
            nearest = min(nearest, _beside(foot, start, end), _beside(tip, start, end))
            left, right = arrow.across - nearest, arrow.across + nearest
    return nearest


def _beside(spot: Spot, start: Spot, end: Spot) -> float:
    """How far a place lies from a straight line between two others [mm]."""
    x, y, dx, dy = spot[0] - start[0], spot[1] - start[1], end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    along = min(1.0, max(0.0, (x * dx + y * dy) / square)) if square > 0 else 0.0
    return hypot(x - along * dx, y - along * dy)
