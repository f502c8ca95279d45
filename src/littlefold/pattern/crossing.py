"""Where two lines that set out from one corner cross, carried on if need be."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from littlefold.geometry import meet
from littlefold.geometry.tolerance import ANGLE

if TYPE_CHECKING:
    from littlefold.geometry import Point
    from littlefold.pattern.carried import Carried


class Crossing(NamedTuple):
    """The places at which two lines cross [mm from their starts], and the point."""

    first: float
    second: float
    point: Point


def crossing(first: Carried, second: Carried, corner: Point, reach: float) -> Crossing | None:
    """The crossing of two lines that both start near a corner; of several, the one nearest to the corner.

    Args:
        first: Carried on backwards beyond its start.
        second: Likewise.
        corner: Where the crossing is expected.
        reach: How far the lines are carried on [mm].

    Returns:
        None where they do not cross, or lie on each other.
    """
    return _of_straight_starts(first, second, reach) or _of_curves(first, second, corner, reach)


def _of_straight_starts(first: Carried, second: Carried, reach: float) -> Crossing | None:
    """The crossing of the straight beginnings, as most corners have; exact."""
    start, other = first.path.start, second.path.start
    way, across = first.path.start_tangent, second.path.start_tangent
    turn = way.cross(across)
    if abs(turn) <= ANGLE:
        return None
    a = (other - start).cross(across) / turn
    b = (other - start).cross(way) / turn
    if not (-reach <= a <= first.straight_start() and -reach <= b <= second.straight_start()):
        return None
    return Crossing(a, b, start + way * a)


def _of_curves(first: Carried, second: Carried, corner: Point, reach: float) -> Crossing | None:
    meetings = meet(first.path.extended_start(reach), second.path.extended_start(reach))
    if not meetings:
        return None
    best = min(meetings, key=lambda meeting: meeting.point.distance(corner))
    return Crossing(best.first_length - reach, best.second_length - reach, best.point)
