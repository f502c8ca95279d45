"""What lies on or in a closed path, asked of many points and lines.

     .-------.          A ray goes from the point to the right.  A segment that lies clear of the point, all of it
p----|-------|--->      to the right, is passed as often as its ends tell; only a segment whose box holds the
     '-------'          point is looked at closely.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot
from typing import TYPE_CHECKING

from littlefold.draft.outline import CORNER
from littlefold.geometry import Arc, Bounds, Cubic, Line
from littlefold.geometry.hull import box_round
from littlefold.geometry.winding import winding_number

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.geometry import Path, Point, Segment

# A line lies in a region if so many of its points do, both ends among them.
LOOKED_AT = 9

# A part of a curve is taken for its chord when it leaves it by no more than this [mm]: much less than a corner.
STRAIGHT = CORNER / 20

Controls = tuple[float, float, float, float]
"""The four control points of a cubic, in one coordinate [mm]."""


@dataclass(frozen=True, slots=True)
class _Part:
    """A segment of the path, both its ends as its neighbours have them, and the box round it grown by a corner."""

    segment: Segment
    start: Point
    end: Point
    left: float
    bottom: float
    right: float
    top: float


@dataclass(frozen=True, slots=True)
class Region:
    """All that lies on or in a closed path, and the box round it grown by a corner."""

    parts: tuple[_Part, ...]
    box: Bounds

    @classmethod
    def within(cls, path: Path) -> Region:
        """The region that a closed path goes round."""
        ends = [*(segment.start for segment in path.segments[1:]), path.start]
        parts = tuple(map(_part, path.segments, (path.start, *ends), ends))
        left, bottom = min(part.left for part in parts), min(part.bottom for part in parts)
        right, top = max(part.right for part in parts), max(part.top for part in parts)
        return cls(parts, Bounds(left, bottom, right, top))

    def holds(self, place: Point) -> bool:
        """Whether a point lies on or in it."""
        return self._turns(place) != 0

    def holds_inside(self, place: Point) -> bool:
        """Whether a point lies in it and not on the path."""
        return bool(self._turns(place))

    def holds_line(self, line: Path) -> bool:
        """Whether a line lies in it, and not along the path itself."""
        turns = []
        for place in _along(line):
            turns.append(self._turns(place))
            if turns[-1] == 0:
                return False
        return any(turns[2:])  # the ends, which are asked first, may lie on the path

    def _turns(self, place: Point) -> int | None:
        """How often the path goes round a point, counter-clockwise positive; None where the point lies on it."""
        if not self.box.contains(place):
            return 0
        x, y = place.x, place.y
        turns = 0
        for part in self.parts:
            if y < part.bottom or y > part.top or x > part.right:
                continue
            passed = _rise(part.start.y, part.end.y, y) if x < part.left else _passed(part, place)
            if passed is None:
                return None
            turns += passed
        return turns


def _part(segment: Segment, start: Point, end: Point) -> _Part:
    box = box_round(segment)
    left, bottom, right, top = box.left - CORNER, box.bottom - CORNER, box.right + CORNER, box.top + CORNER
    return _Part(segment, start, end, left, bottom, right, top)


def _along(line: Path) -> Iterator[Point]:
    """Places along a line, spread over its segments: both ends first, then those between."""
    yield line.start
    yield line.end
    count = len(line.segments)
    for k in range(1, LOOKED_AT - 1):
        index, rest = divmod(k * count, LOOKED_AT - 1)
        yield line.segments[index].at(rest / (LOOKED_AT - 1))


def _rise(start: float, end: float, height: float) -> int:
    """What a way adds that passes to the right of a point: 1 if it goes up over its height, -1 if down, else nothing."""
    return (start <= height) - (end <= height)


def _passed(part: _Part, place: Point) -> int | None:
    """What a segment adds in whose box the point lies; None where the point lies on it."""
    segment, start, end = part.segment, part.start, part.end
    if min(place.distance(start), place.distance(end)) <= CORNER:
        return None
    if isinstance(segment, Line):
        return _by_chord((start.x, end.x), (start.y, end.y), place)
    if isinstance(segment, Arc):
        return _by_arc(segment, part, place)
    assert isinstance(segment, Cubic), "there are three kinds of segment"  # noqa: S101 - our own mistake
    one, other = segment.control1, segment.control2
    xs, ys = (start.x, one.x, other.x, end.x), (start.y, one.y, other.y, end.y)
    return _by_curve(xs, ys, _bend(*xs) + _bend(*ys), place)


def _by_chord(xs: tuple[float, ...], ys: tuple[float, ...], place: Point) -> int | None:
    """What a straight way adds; None where the point lies on it."""
    x, y, dx, dy = place.x - xs[0], place.y - ys[0], xs[-1] - xs[0], ys[-1] - ys[0]
    square = dx * dx + dy * dy
    along = min(1.0, max(0.0, (x * dx + y * dy) / square)) if square > 0 else 0.0
    if hypot(x - along * dx, y - along * dy) <= CORNER:
        return None
    rise = _rise(ys[0], ys[-1], place.y)
    return rise if rise * (dx * y - dy * x) > 0 else 0


def _by_arc(arc: Arc, part: _Part, place: Point) -> int | None:
    if arc.at(arc.nearest(place)).distance(place) <= CORNER:
        return None
    return winding_number((part.start, *arc.flatten()[1:-1], part.end), place)


def _by_curve(xs: Controls, ys: Controls, bend: float, place: Point) -> int | None:
    """What a cubic adds: it is halved until its halves lie clear of the point or are straight."""
    x, y = place.x, place.y
    if y < min(ys) - CORNER or y > max(ys) + CORNER or x > max(xs) + CORNER:
        return 0
    if x < min(xs) - CORNER:
        return _rise(ys[0], ys[3], y)
    if bend <= STRAIGHT:
        return _by_chord(xs, ys, place)
    (xs, more_xs), (ys, more_ys) = _halves(*xs), _halves(*ys)
    first, second = _by_curve(xs, ys, bend / 4, place), _by_curve(more_xs, more_ys, bend / 4, place)
    return None if first is None or second is None else first + second


def _bend(p: float, q: float, r: float, e: float) -> float:
    """How far a cubic leaves its chord at most in one coordinate [mm]; each of its halves, a quarter of that."""
    return 0.75 * max(abs(p - 2 * q + r), abs(q - 2 * r + e))


def _halves(p: float, q: float, r: float, e: float) -> tuple[Controls, Controls]:
    """Both halves of a cubic in one coordinate (de Casteljau)."""
    a, m, c = (p + q) / 2, (q + r) / 2, (r + e) / 2
    b, d = (a + m) / 2, (m + c) / 2
    middle = (b + d) / 2
    return (p, a, b, middle), (middle, d, c, e)
