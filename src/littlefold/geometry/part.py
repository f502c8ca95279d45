"""Parts of a curve, each in the hull of its control points, and what two hulls tell about the parts in them.

A part of a cubic lies in the hull of its four control points, and its directions lie between those of the three legs
of the polygon; a part of an arc, a quarter turn at most, lies in the triangle of its ends and the crossing of its end
tangents.  (Sederberg and Meyers, Loop detection in surface patch intersections, 1988, use the same cones; from memory.)
"""

from __future__ import annotations

from math import ceil, cos, hypot, pi
from typing import TYPE_CHECKING, NamedTuple

from .arc import Arc
from .bezier import Cubic
from .tolerance import TOUCH

if TYPE_CHECKING:
    from .segment import Segment

Place = tuple[float, float]


class Part(NamedTuple):
    """A part of a curve between two parameters: its control points, the box round them, and how thick it is [mm].

    The thickness is the furthest that a control point lies from the chord; plain numbers, since a search makes many.
    """

    low: float
    high: float
    hull: tuple[Place, ...]
    box: tuple[float, float, float, float]
    thick: float

    @classmethod
    def of(cls, low: float, high: float, hull: tuple[Place, ...]) -> Part:
        """The part with these control points."""
        xs, ys = [x for x, _ in hull], [y for _, y in hull]
        (x0, y0), (dx, dy) = hull[0], _chord(hull)
        chord = hypot(dx, dy)
        inside = hull[1:-1]
        thick = (
            max(abs(dx * (y - y0) - dy * (x - x0)) for x, y in inside) / chord
            if chord > 0
            else max(hypot(x - x0, y - y0) for x, y in inside)
        )
        return cls(low, high, hull, (min(xs), min(ys), max(xs), max(ys)), thick)

    def halves(self, segment: Segment) -> tuple[Part, Part]:
        """The two halves of the part, by parameter."""
        middle = (self.low + self.high) / 2
        if isinstance(segment, Arc):
            return _of_arc(segment, self.low, middle), _of_arc(segment, middle, self.high)
        left, right = _halved(self.hull)
        return Part.of(self.low, middle, left), Part.of(middle, self.high, right)


def parts(segment: Segment) -> list[Part]:
    """A curve as parts to begin with: a cubic whole, an arc in quarters."""
    if isinstance(segment, Arc):
        count = max(1, ceil(abs(segment.sweep) / (pi / 2)))
        return [_of_arc(segment, k / count, (k + 1) / count) for k in range(count)]
    assert isinstance(segment, Cubic), "a line is met in closed form"  # noqa: S101 - our own mistake
    corners = (segment.start, segment.control1, segment.control2, segment.end)
    return [Part.of(0.0, 1.0, tuple((p.x, p.y) for p in corners))]


def _of_arc(arc: Arc, low: float, high: float) -> Part:
    start, end, middle = arc.at(low), arc.at(high), arc.angle((low + high) / 2)
    corner = arc.centre + (arc.at((low + high) / 2) - arc.centre) / cos(arc.angle(high) - middle)
    return Part.of(low, high, ((start.x, start.y), (corner.x, corner.y), (end.x, end.y)))


def _halved(hull: tuple[Place, ...]) -> tuple[tuple[Place, ...], tuple[Place, ...]]:
    """The control points of both halves (de Casteljau)."""
    (px, py), (qx, qy), (rx, ry), (ex, ey) = hull
    ax, ay, mx, my, cx, cy = (
        (px + qx) / 2,
        (py + qy) / 2,
        (qx + rx) / 2,
        (qy + ry) / 2,
        (rx + ex) / 2,
        (ry + ey) / 2,
    )
    bx, by, dx, dy = (ax + mx) / 2, (ay + my) / 2, (mx + cx) / 2, (my + cy) / 2
    middle = ((bx + dx) / 2, (by + dy) / 2)
    return (hull[0], (ax, ay), (bx, by), middle), (middle, (dx, dy), (cx, cy), hull[3])


def _chord(hull: tuple[Place, ...]) -> Place:
    return hull[-1][0] - hull[0][0], hull[-1][1] - hull[0][1]


def may_meet(one: Part, other: Part) -> bool:
    """Whether two parts may come within `TOUCH`: no box, and no strip along a chord, keeps them apart."""
    left, bottom, right, top = one.box
    other_left, other_bottom, other_right, other_top = other.box
    return (
        left <= other_right + TOUCH
        and other_left <= right + TOUCH
        and bottom <= other_top + TOUCH
        and other_bottom <= top + TOUCH
        and not _is_aside(one, other)
        and not _is_aside(other, one)
    )


def _is_aside(strip: Part, other: Part) -> bool:
    """Whether a part lies beside the strip that holds another, along its chord."""
    (x0, y0), (dx, dy) = strip.hull[0], _chord(strip.hull)
    own = [dx * (y - y0) - dy * (x - x0) for x, y in strip.hull[1:-1]]
    theirs = [dx * (y - y0) - dy * (x - x0) for x, y in other.hull]
    apart = TOUCH * hypot(dx, dy)
    return min(theirs) > max(0.0, *own) + apart or max(theirs) < min(0.0, *own) - apart


def only_share_an_end(one: Part, other: Part) -> bool:
    """Whether two parts have an end in common and lie on both sides of a line through it, so that they share no more."""
    for here, there in ((0, 0), (0, -1), (-1, 0), (-1, -1)):
        joint = one.hull[here]
        if joint == other.hull[there]:
            (x, y), (fx, fy) = joint, one.hull[-1 - here]
            u, v = x - fx, y - fy
            behind = [u * (p - x) + v * (q - y) for p, q in one.hull if (p, q) != joint]
            ahead = [u * (p - x) + v * (q - y) for p, q in other.hull if (p, q) != joint]
            if max(behind, default=0.0) < 0 < min(ahead, default=0.0):
                return True
    return False


def are_never_parallel(one: Part, other: Part) -> bool:
    """Whether no direction of the one is a direction of the other, there or back; then they meet once at most.

    (If they met twice, each would somewhere have the direction from the one meeting to the other.)
    """
    turns = [a * d - b * c for a, b in _legs(one.hull) for c, d in _legs(other.hull)]
    return bool(turns) and (min(turns) > 0 or max(turns) < 0)


def _legs(hull: tuple[Place, ...]) -> list[Place]:
    """The legs of a control polygon that have a direction."""
    legs = [(hull[k + 1][0] - hull[k][0], hull[k + 1][1] - hull[k][1]) for k in range(len(hull) - 1)]
    return [leg for leg in legs if leg != (0.0, 0.0)]


def chords_cross(one: Part, other: Part) -> tuple[float, float] | None:
    """The parameters at which the chords of two parts cross, or None where the parts cannot.

    A crossing of the parts lies no further from that of their chords than both are thick, over the sine of the angle.
    """
    (x, y), (dx, dy), (u, v), (du, dv) = one.hull[0], _chord(one.hull), other.hull[0], _chord(other.hull)
    turn, long, wide = dx * dv - dy * du, hypot(dx, dy), hypot(du, dv)
    if turn == 0:
        return (one.low + one.high) / 2, (other.low + other.high) / 2
    here = ((u - x) * dv - (v - y) * du) / turn
    there = ((u - x) * dy - (v - y) * dx) / turn
    reach = (one.thick + other.thick + TOUCH) * long * wide / abs(turn)
    if not (_reaches(one.hull, here, reach / long) and _reaches(other.hull, there, reach / wide)):
        return None
    here, there = min(1.0, max(0.0, here)), min(1.0, max(0.0, there))
    return one.low + (one.high - one.low) * here, other.low + (other.high - other.low) * there


def _reaches(hull: tuple[Place, ...], share: float, slack: float) -> bool:
    """Whether a hull comes to a share of its chord, with some slack."""
    (x, y), (dx, dy) = hull[0], _chord(hull)
    square = dx * dx + dy * dy
    along = [(dx * (p - x) + dy * (q - y)) / square for p, q in hull]
    return min(along) - slack <= share <= max(along) + slack
