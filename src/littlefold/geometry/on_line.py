"""Where a segment meets a straight line that goes on without end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .arc import Arc
from .bezier import Cubic
from .circles import line_meets_circle
from .equation import root_between
from .line import Line
from .tolerance import ANGLE, SAME_POINT, SOLVED, TOUCH

if TYPE_CHECKING:
    from .point import Point, Vector
    from .segment import Segment


def parameters_on_line(segment: Segment, through: Point, along: Vector) -> tuple[float, ...]:
    """The parameters at which a segment crosses or touches a line, rising.

    A segment that ends on the line meets it there.  A straight segment that lies in the line meets it at
    both ends.

    Args:
        segment: A line, an arc or a cubic.
        through: A point of the line.
        along: Its direction, of length 1.
    """
    if isinstance(segment, Line):
        return _line(segment, through, along)
    if isinstance(segment, Arc):
        return _arc(segment, through, along)
    assert isinstance(segment, Cubic), "there are three kinds of segment"  # noqa: S101 - our own mistake
    return _cubic(segment, through, along)


def _line(line: Line, through: Point, along: Vector) -> tuple[float, ...]:
    """Those of a straight segment."""
    at_start, at_end = along.cross(line.start - through), along.cross(line.end - through)
    if abs(at_start) <= SOLVED and abs(at_end) <= SOLVED:
        return (0.0, 1.0)
    if abs(at_start - at_end) <= ANGLE * line.length():
        return ()
    t = at_start / (at_start - at_end)
    slack = SAME_POINT / line.length()
    return (min(1.0, max(0.0, t)),) if -slack <= t <= 1 + slack else ()


def _arc(arc: Arc, through: Point, along: Vector) -> tuple[float, ...]:
    """Those of an arc."""
    places = line_meets_circle(through, through + along, arc.centre, arc.radius)
    found = (parameter_on_arc(arc, place) for place in places)
    return tuple(sorted(t for t in found if t is not None))


def parameter_on_arc(arc: Arc, place: Point) -> float | None:
    """The parameter of a point of the circle, or None if the arc does not come there (to `SAME_POINT`)."""
    t = arc.parameter_of_angle((place - arc.centre).angle)
    if t is not None:
        return t
    if place.distance(arc.start) <= SAME_POINT:
        return 0.0
    return 1.0 if place.distance(arc.end) <= SAME_POINT else None


def _cubic(cubic: Cubic, through: Point, along: Vector) -> tuple[float, ...]:
    """Those of a cubic: between two extremes its distance from the line has one sign change at most."""
    corners = (cubic.start, cubic.control1, cubic.control2, cubic.end)
    first, second, third, last = (along.cross(corner - through) for corner in corners)

    def off(t: float) -> float:
        s = 1 - t
        return s * s * (s * first + 3 * t * second) + t * t * (3 * s * third + t * last)

    stops = (0.0, *cubic.extremes(along.turned_left()), 1.0)
    offs = [off(t) for t in stops]
    found = [t for t, value in zip(stops, offs, strict=True) if abs(value) <= TOUCH]
    found.extend(
        root_between(off, stops[k], stops[k + 1], SOLVED)
        for k in range(len(stops) - 1)
        if offs[k] * offs[k + 1] < 0 and min(abs(offs[k]), abs(offs[k + 1])) > TOUCH
    )
    return tuple(sorted(found))
