"""The offsets of neighbouring segments made one chain."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from .arc import Arc
from .arcs import arc_about
from .beside import Leg
from .fair import turn_between
from .line import Line
from .lines import line_meets_line
from .tolerance import SAME_POINT

if TYPE_CHECKING:
    from .point import Point
    from .segment import Segment

Corner = Literal["mitre", "round"]

# Gaps up to this [mm] are rounding of directions at smooth joints and are closed by moving an end.  Larger:
# the offset strays from its distance.  Smaller: slivers at joints that are smooth for all that matters.
CLOSABLE = 1e-3

# A mitre reaches no further from its corner than so many distances (the default limit of SVG strokes, SVG 1.1
# section 11.4).  Larger: spikes at sharp corners.
MITRE = 4.0


def bridged(
    segments: tuple[Segment, ...], legs: list[list[Leg]], distances: list[float], corner: Corner
) -> list[Leg]:
    """All legs in order, with what fills the gaps between them.

    Args:
        segments: The segments of the path that is followed.
        legs: The legs beside each of them.
        distances: The distances at the joints, ends included [mm].
        corner: How an outer corner is filled.
    """
    chain = list(legs[0])
    for k in range(1, len(segments)):
        joined = _joined(chain[-1:], legs[k][:1], segments[k - 1], segments[k], distances[k], corner)
        chain[-1:] = joined
        chain.extend(legs[k][1:])
    return chain


def closed_up(chain: list[Leg], segments: tuple[Segment, ...], distance: float, corner: Corner) -> list[Leg]:
    """The chain of a closed path with its last leg joined to its first."""
    if len(chain) <= 1:
        return chain
    joined = _joined(chain[-1:], chain[:1], segments[-1], segments[0], distance, corner)
    return [joined[-1], *chain[1:-1], *joined[:-1]]


def _joined(  # noqa: PLR0917 - both neighbours, beside and followed
    before: list[Leg], after: list[Leg], incoming: Segment, outgoing: Segment, distance: float, corner: Corner
) -> list[Leg]:
    """Two neighbouring legs, if both are there, and what goes between them."""
    if not before or not after:
        return before + after
    one, other = before[0], after[0]
    gap = one.segment.end.distance(other.segment.start)
    if gap <= SAME_POINT:
        return [one, other]
    if gap <= CLOSABLE:
        return _closed(one, other)
    turn = turn_between(incoming.tangent(1.0), outgoing.tangent(0.0))
    if turn * distance > 0:
        return _inner(one, other)
    if corner == "round":
        return [one, Leg(arc_about(incoming.end, one.segment.end, turn)), other]
    return _mitred(one, other, incoming.end, abs(distance))


def _closed(one: Leg, other: Leg) -> list[Leg]:
    """Two legs with a tiny gap, closed by moving the end of one that is no arc."""
    first, second = one.segment, other.segment
    if not isinstance(first, Arc):
        return [Leg(first.ending(first.start, second.start), one.backward), other]
    if not isinstance(second, Arc):
        return [one, Leg(second.ending(first.end, second.end), other.backward)]
    return [one, Leg(Line(first.end, second.start)), other]


def _inner(one: Leg, other: Leg) -> list[Leg]:
    """Two legs that overlap at an inner corner.

    Lines are trimmed; others get a way back between them, in a loop that is cut off later.
    """
    first, second = one.segment, other.segment
    if isinstance(first, Line) and isinstance(second, Line):
        place = line_meets_line(first.start, first.end, second.start, second.end)
        if place is not None and _is_inside(first, place) and _is_inside(second, place):
            return [Leg(Line(first.start, place)), Leg(Line(place, second.end))]
    return [one, Leg(Line(first.end, second.start), backward=True), other]


def _is_inside(line: Line, place: Point) -> bool:
    """Whether a point of a line lies between its ends and not at one of them."""
    way = line.end - line.start
    along = (place - line.start).dot(way)
    slack = SAME_POINT * way.length
    return slack < along < way.dot(way) - slack


def _mitred(one: Leg, other: Leg, corner: Point, distance: float) -> list[Leg]:
    """Two legs carried on straight until they meet, or joined straight across where that is too far away."""
    first, second = one.segment, other.segment
    place = line_meets_line(
        first.end, first.end + first.tangent(1.0), second.start, second.start + second.tangent(0.0)
    )
    if place is None or place.distance(corner) > MITRE * distance:
        return [one, Leg(Line(first.end, second.start)), other]
    head = [Leg(Line(first.start, place))] if isinstance(first, Line) else [one, Leg(Line(first.end, place))]
    tail = (
        [Leg(Line(place, second.end))]
        if isinstance(second, Line)
        else [Leg(Line(place, second.start)), other]
    )
    return [*head, *tail]
