"""Where two segments meet, as pairs of parameters.

Lines and circles have closed forms.  Everything else is halved until the pieces are nearly straight; pairs
whose boxes lie apart are dropped, and the rest are refined by Newton's method: crossings as A(t) = B(u),
touches as the place where both run parallel with the shortest way between them square to both.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from .arc import Arc
from .bezier import Cubic
from .circles import circle_meets_circle
from .line import Line
from .on_line import parameter_on_arc, parameters_on_line
from .tolerance import SAME_POINT, SOLVED, TOUCH

if TYPE_CHECKING:
    from .point import Point, Vector
    from .segment import Segment

# A piece is nearly straight when it leaves its chord by no more than this [mm].  Larger: Newton's method
# starts too far off to find each of several crossings.  Smaller: more halving, nothing gained.
STRAIGHT = 0.05

# Crossings under a smaller angle [rad] are looked at again as touches.  Larger: slow.  Smaller: a touch is
# reported at a place that is off by the square root of the rounding.
SLANT = 1e-3

# Newton's method stops where the parameters move by less than this, or after so many steps (a touch that is
# approached as a crossing halves its error each time, so thirty steps bring it to the rounding).
STILL, STEPS = 1e-14, 30

Pair = tuple[float, float]


def contacts(first: Segment, second: Segment) -> tuple[Pair, ...]:
    """The pairs of parameters at which two segments meet: cross, touch, or share an end.

    Where the two run in one another, only the ends of the shared part are given.
    """
    if isinstance(first, Line):
        return _with_line(first, second)
    if isinstance(second, Line):
        return tuple((t, u) for u, t in _with_line(second, first))
    if isinstance(first, Arc) and isinstance(second, Arc):
        return _of_arcs(first, second)
    return _of_curves(first, second)


def _with_line(line: Line, other: Segment) -> tuple[Pair, ...]:
    """The contacts of a straight segment with any other."""
    length = line.length()
    if length <= SOLVED:
        t = other.nearest(line.start)
        return ((0.0, t),) if other.at(t).distance(line.start) <= SAME_POINT else ()
    along = (line.end - line.start) / length
    places = parameters_on_line(other, line.start, along)
    if isinstance(other, Line) and len(places) > 1:
        return _ends_on(line, other)
    found = []
    for u in places:
        way = (other.at(u) - line.start).dot(along)
        if -SAME_POINT <= way <= length + SAME_POINT:
            found.append((min(1.0, max(0.0, way / length)), u))
    return tuple(found) + _ends(line, other)


def _of_arcs(first: Arc, second: Arc) -> tuple[Pair, ...]:
    """The contacts of two arcs."""
    if first.centre.distance(second.centre) <= SOLVED and abs(first.radius - second.radius) <= SAME_POINT:
        return _ends_on(first, second)
    found = []
    for place in circle_meets_circle(first.centre, first.radius, second.centre, second.radius):
        t, u = parameter_on_arc(first, place), parameter_on_arc(second, place)
        if t is not None and u is not None:
            found.append((t, u))
    return tuple(found) + _ends(first, second)


def _ends(first: Segment, second: Segment) -> tuple[Pair, ...]:
    """The ends that both have in common."""
    return tuple(
        (t, u)
        for t, p in ((0.0, first.start), (1.0, first.end))
        for u, q in ((0.0, second.start), (1.0, second.end))
        if p.distance(q) <= SAME_POINT
    )


def _ends_on(first: Segment, second: Segment) -> tuple[Pair, ...]:
    """The ends of each that lie on the other, at its ends or between them."""
    shared = _ends(first, second)
    mine = [(t, first.at(t)) for t in (0.0, 1.0) if all(t != pair[0] for pair in shared)]
    theirs = [(u, second.at(u)) for u in (0.0, 1.0) if all(u != pair[1] for pair in shared)]
    return (
        *shared,
        *((t, u) for t, u in _places_on(mine, second)),
        *((t, u) for u, t in _places_on(theirs, first)),
    )


def _places_on(ends: list[tuple[float, Point]], other: Segment) -> list[Pair]:
    """Those of some ends that lie on a segment, with the parameter there."""
    box = other.bounds().grown(SAME_POINT)
    near = [(t, place, other.nearest(place)) for t, place in ends if box.contains(place)]
    return [(t, u) for t, place, u in near if other.at(u).distance(place) <= SAME_POINT]


def _of_curves(first: Segment, second: Segment) -> tuple[Pair, ...]:
    """The contacts of two curves of which one at least is a cubic."""
    found: list[Pair] = list(_ends_on(first, second))
    stack = [(_Piece.whole(first), _Piece.whole(second))]
    while stack:
        a, b = stack.pop()
        if not a.may_meet(b):
            continue
        if a.slack <= STRAIGHT and b.slack <= STRAIGHT:
            pair = _refined(first, second, a.middle, b.middle)
            if pair is not None and not _known(pair, found, first, second):
                found.append(pair)
        elif a.slack >= b.slack:
            stack.extend((half, b) for half in a.halves())
        else:
            stack.extend((a, half) for half in b.halves())
    return _ends_on(first, second) if _run_together(found, first, second) else tuple(found)


def _run_together(found: list[Pair], first: Segment, second: Segment) -> bool:
    """Whether two segments run in one another: between two contacts without an angle lies a third."""
    flat = sorted(pair[0] for pair in found if _slant(first, second, pair) <= SLANT)
    between = (first.at((t + u) / 2) for t, u in pairwise(flat))
    return any(second.at(second.nearest(place)).distance(place) <= TOUCH for place in between)


def _known(pair: Pair, found: list[Pair], first: Segment, second: Segment) -> bool:
    """Whether a contact has been found already, from a neighbouring piece."""
    p, q = first.at(pair[0]), second.at(pair[1])
    return any(
        p.distance(first.at(t)) <= 10 * SAME_POINT and q.distance(second.at(u)) <= 10 * SAME_POINT
        for t, u in found
    )


@dataclass(frozen=True, slots=True)
class _Piece:
    """A part of a segment with its chord, and how far it may leave the chord at most [mm]."""

    segment: Segment
    low: float
    high: float
    start: Point
    end: Point
    slack: float

    @classmethod
    def whole(cls, segment: Segment) -> _Piece:
        """The whole segment."""
        return cls(segment, 0.0, 1.0, segment.start, segment.end, _bend(segment))

    @property
    def middle(self) -> float:
        """The parameter in the middle."""
        return (self.low + self.high) / 2

    def halves(self) -> tuple[_Piece, _Piece]:
        """The piece cut in its middle; each half leaves its chord by a quarter at most."""
        middle = self.middle
        place = self.segment.at(middle)
        return (
            _Piece(self.segment, self.low, middle, self.start, place, self.slack / 4),
            _Piece(self.segment, middle, self.high, place, self.end, self.slack / 4),
        )

    def may_meet(self, other: _Piece) -> bool:
        """Whether the boxes round both, grown by what they may leave their chords, overlap."""
        slack = self.slack + other.slack + TOUCH
        a, b, c, d = self.start, self.end, other.start, other.end
        return (
            (min(b.x, a.x)) - slack <= (max(d.x, c.x))
            and (min(d.x, c.x)) - slack <= (max(b.x, a.x))
            and (min(b.y, a.y)) - slack <= (max(d.y, c.y))
            and (min(d.y, c.y)) - slack <= (max(b.y, a.y))
        )


def _bend(segment: Segment) -> float:
    """How far a segment leaves its chord at most [mm]; a part of it, that times the square of its share."""
    if isinstance(segment, Arc):
        return segment.radius * segment.sweep * segment.sweep / 8
    assert isinstance(segment, Cubic), "a line is never halved"  # noqa: S101 - our own mistake
    p, q, r, e = segment.start, segment.control1, segment.control2, segment.end
    return 0.75 * max((p - q - (q - r)).length, (q - r - (r - e)).length)


def _refined(first: Segment, second: Segment, t: float, u: float) -> Pair | None:
    """The contact near a pair of parameters, if there is one."""
    crossing = _crossing(first, second, t, u)
    if crossing is not None and _slant(first, second, crossing) > SLANT:
        return crossing
    return _touch(first, second, *(crossing or (t, u))) or crossing


def _slant(first: Segment, second: Segment, pair: Pair) -> float:
    """The sine of the angle between two segments at a contact."""
    return abs(first.tangent(pair[0]).cross(second.tangent(pair[1])))


def _crossing(first: Segment, second: Segment, t: float, u: float) -> Pair | None:
    """Newton's method for A(t) = B(u), let a little beyond the ends."""
    for _ in range(STEPS):
        gap = second.at(u) - first.at(t)
        one, other = first.derivative(t), second.derivative(u)
        turn = one.cross(other)
        if turn == 0:
            return None
        dt, du = gap.cross(other) / turn, gap.cross(one) / turn
        t, u = _kept(t + dt), _kept(u + du)
        if abs(dt) + abs(du) <= STILL:
            break
    return _accepted(first, second, t, u)


def _touch(first: Segment, second: Segment, t: float, u: float) -> Pair | None:
    """Newton's method for: both run parallel, and the way between them is square to the first."""
    for _ in range(STEPS):
        gap = first.at(t) - second.at(u)
        one, other = first.derivative(t), second.derivative(u)
        one_more, other_more = _second_derivative(first, t), _second_derivative(second, u)
        square, turn = gap.dot(one), one.cross(other)
        a, b = one.dot(one) + gap.dot(one_more), -other.dot(one)
        c, d = one_more.cross(other), one.cross(other_more)
        below = a * d - b * c
        if below == 0:
            return None
        dt, du = (b * turn - d * square) / below, (c * square - a * turn) / below
        t, u = _kept(t + dt), _kept(u + du)
        if abs(dt) + abs(du) <= STILL:
            break
    return _accepted(first, second, t, u)


def _second_derivative(segment: Segment, t: float) -> Vector:
    """How the derivative changes [mm]."""
    if isinstance(segment, Cubic):
        return segment.second_derivative(t)
    assert isinstance(segment, Arc), "a line is met in closed form"  # noqa: S101 - our own mistake
    return (segment.centre - segment.at(t)) * (segment.sweep * segment.sweep)


def _kept(t: float) -> float:
    """A parameter kept near the segment, so that Newton's method cannot run away."""
    return min(1.25, max(-0.25, t))


def _accepted(first: Segment, second: Segment, t: float, u: float) -> Pair | None:
    """The pair, brought back to the segments, if both are at one point there."""
    t, u = min(1.0, max(0.0, t)), min(1.0, max(0.0, u))
    return (t, u) if first.at(t).distance(second.at(u)) <= TOUCH else None
