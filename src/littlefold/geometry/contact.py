"""Where two segments meet, as pairs of parameters.

Lines and circles have closed forms.  Everything else is halved.  Two parts whose hulls lie apart are dropped; two that
are nowhere parallel meet once at most, and Newton's method finds it as A(t) = B(u); so no crossing is lost, however
many there are and however near the curves run to each other.  What is left in the end are thin parts that lie on each
other: there the curves touch, at the place where both are parallel with the shortest way between them square to both.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from .arc import Arc
from .bezier import Cubic
from .circles import circle_meets_circle
from .line import Line
from .on_line import parameter_on_arc, parameters_on_line
from .part import Part, are_never_parallel, chords_cross, may_meet, only_share_an_end, parts
from .tolerance import SAME_POINT, SOLVED, TOUCH

if TYPE_CHECKING:
    from .point import Point, Vector
    from .segment import Segment

# Parts are halved until they are no thicker than this [mm]; two that still lie on each other then, and are parallel
# somewhere, touch.  Larger: two crossings under a small angle are taken for a touch.  Smaller: touches cost more.
THIN = 1e-7

# A stretch of touching parts up to so long [mm] is one touch.  Larger: touches near each other become one.  Smaller:
# the one touch of very flat curves is found at the ends of its stretch.
LONG = 1.0

# Neighbouring parts share an end to this, in parameters.
ROUNDING = 1e-9

# Where two curves are compared between two shared ends: uneven, so that no symmetry can deceive.
BETWEEN = (0.07, 0.23, 0.41, 0.58, 0.77, 0.94)

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
    if _run_together(found, first, second):
        return tuple(found)
    crossings, close = _searched(first, second)
    for pair in (
        *crossings,
        *(pair for stretch in _stretches(close) for pair in _of_stretch(stretch, first, second)),
    ):
        if not _known(pair, found, first, second):
            found.append(pair)
    return tuple(found)


def _searched(first: Segment, second: Segment) -> tuple[list[Pair], list[tuple[Part, Part]]]:
    """The crossings of two curves, and the pairs of thin parts that lie on each other without an angle to part them."""
    crossings: list[Pair] = []
    close: list[tuple[Part, Part]] = []
    stack = [(a, b) for a in parts(first) for b in parts(second)]
    while stack:
        a, b = stack.pop()
        if not may_meet(a, b) or only_share_an_end(a, b):
            continue
        is_one = are_never_parallel(a, b)
        start = chords_cross(a, b) if is_one else None
        pair = _crossing(first, second, *start) if start is not None else None
        if pair is not None and _is_in(pair, a, b):
            crossings.append(pair)
        elif max(a.thick, b.thick) > THIN:
            if not is_one or start is not None:
                stack.extend(_halved(a, b, first, second))
        elif not is_one:
            close.append((a, b))
    return crossings, close


def _is_in(pair: Pair, a: Part, b: Part) -> bool:
    """Whether a contact lies in both parts, but for rounding."""
    return (
        a.low - ROUNDING <= pair[0] <= a.high + ROUNDING and b.low - ROUNDING <= pair[1] <= b.high + ROUNDING
    )


def _halved(a: Part, b: Part, first: Segment, second: Segment) -> list[tuple[Part, Part]]:
    """The pairs that come of halving the thicker of two parts."""
    if a.thick >= b.thick:
        return [(half, b) for half in a.halves(first)]
    return [(a, half) for half in b.halves(second)]


def _stretches(close: list[tuple[Part, Part]]) -> list[list[tuple[Part, Part]]]:
    """Pairs of parts that follow each other along both curves, taken together."""
    stretches: list[list[tuple[Part, Part]]] = []
    for a, b in sorted(close, key=lambda pair: pair[0].low):
        for stretch in stretches:
            before, beside = stretch[-1]
            if (
                a.low <= before.high + ROUNDING
                and b.low <= beside.high + ROUNDING
                and beside.low <= b.high + ROUNDING
            ):
                stretch.append((a, b))
                break
        else:
            stretches.append([(a, b)])
    return stretches


def _of_stretch(stretch: list[tuple[Part, Part]], first: Segment, second: Segment) -> list[Pair]:
    """The touch in a short stretch; of a long one, in which the two run beside each other, its ends."""
    (head, _), (tail, _) = stretch[0], stretch[-1]
    is_long = first.at(head.low).distance(first.at(tail.high)) > LONG
    tried = [stretch[0], stretch[-1]] if is_long else [stretch[len(stretch) // 2], stretch[0], stretch[-1]]
    pairs = (_refined(first, second, (a.low + a.high) / 2, (b.low + b.high) / 2) for a, b in tried)
    return [pair for pair in pairs if pair is not None]


def _run_together(ends: list[Pair], first: Segment, second: Segment) -> bool:
    """Whether two segments run in one another between two shared ends without an angle.

    Two cubics that are not parts of one meet in nine places at most (Bezout), and each of the two ends counts twice:
    so six places between them that lie on both settle it.
    """
    flat = sorted(pair[0] for pair in ends if _slant(first, second, pair) <= SLANT)
    return any(
        all(_is_on(second, first.at(t + (u - t) * share)) for share in BETWEEN)
        for t, u in pairwise(flat)
        if u > t
    )


def _is_on(segment: Segment, place: Point) -> bool:
    return segment.at(segment.nearest(place)).distance(place) <= TOUCH


def _known(pair: Pair, found: list[Pair], first: Segment, second: Segment) -> bool:
    """Whether a contact has been found already, from a neighbouring part."""
    p, q = first.at(pair[0]), second.at(pair[1])
    return any(
        p.distance(first.at(t)) <= 10 * SAME_POINT and q.distance(second.at(u)) <= 10 * SAME_POINT
        for t, u in found
    )


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
