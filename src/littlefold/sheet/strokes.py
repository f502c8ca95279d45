"""A path as the commands that writers know: to, line, curve, close."""

from __future__ import annotations

from math import ceil, pi, tan
from typing import TYPE_CHECKING

from littlefold.geometry import Arc, Cubic, Vector

if TYPE_CHECKING:
    from littlefold.geometry import Path, Point, Segment

# An arc is written as cubics of at most this turn [rad].  A cubic over an angle is off by about
# 2.7e-4 * (angle / 90 degrees)^6 of the radius: 4e-7 here, a thousandth of a millimetre at a radius of 2.7 m.
WIDEST = pi / 6


def arc_as_cubics(arc: Arc) -> tuple[Cubic, ...]:
    """Cubics that follow an arc to a millionth of its radius."""
    count = max(1, ceil(abs(arc.sweep) / WIDEST - 1e-9))
    return tuple(_one(arc.part(k / count, (k + 1) / count)) for k in range(count))


def _one(arc: Arc) -> Cubic:
    reach = 4 / 3 * tan(arc.sweep / 4) * arc.radius
    leaving = Vector.polar(arc.start_angle + pi / 2, reach)
    coming = Vector.polar(arc.start_angle + arc.sweep + pi / 2, reach)
    return Cubic(arc.start, arc.start + leaving, arc.end + -coming, arc.end)


Command = tuple[tuple[float, float], ...]
"""Where a line goes (one point) or a curve goes (two handles and the end)."""


def commands(path: Path, home: Point) -> tuple[Command, ...]:
    """The start of a path, then a line or curve for each segment [mm], right of and below `home`."""
    first: Command = (_below(path.start, home),)
    return (first, *(command for segment in path.segments for command in _commands(segment, home)))


def _commands(segment: Segment, home: Point) -> tuple[Command, ...]:
    if isinstance(segment, Arc):
        return tuple(_curve(cubic, home) for cubic in arc_as_cubics(segment))
    if isinstance(segment, Cubic):
        return (_curve(segment, home),)
    return ((_below(segment.end, home),),)


def _curve(cubic: Cubic, home: Point) -> Command:
    return (_below(cubic.control1, home), _below(cubic.control2, home), _below(cubic.end, home))


# Coordinates are written in steps of a ten-thousandth of a millimetre.  Coarser: joined lengths drift
# towards the promised 0.01 mm.  Finer: longer files, and PDF readers keep single precision anyway.
PLACES = 4


def _below(point: Point, home: Point) -> tuple[float, float]:
    return round(point.x - home.x, PLACES), round(home.y - point.y, PLACES)
