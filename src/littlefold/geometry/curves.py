"""Curves from their ends, their directions there, and where they have to pass.

Directions are ways of travel: a curve leaves its start along `start_direction` and goes on at its end along
`end_direction`.  Their lengths do not matter.
"""

from __future__ import annotations

from math import cos, log, sin
from typing import TYPE_CHECKING

from .bezier import Cubic
from .equation import root_between, sign_changes
from .fair import bisector, turn_between
from .tolerance import SAME_POINT

if TYPE_CHECKING:
    from .point import Point, Vector

# No handle becomes shorter or longer than these parts of the chord.  Shorter: the curve leaves its end like a
# corner.  Longer: it swings out and back.
SHORTEST, LONGEST = 0.1, 2.5

# Below this (a number without unit) both directions lie along the chord, and the quotient says nothing.
FLAT = 1e-12

# The steps in which curves that pass a given point are looked for; the condition is a polynomial of degree
# four.  Fewer: two solutions very near each other are overlooked, as if the point could not be reached.
GRID = tuple(k / 32 for k in range(33))


def curve_between(start: Point, end: Point, start_direction: Vector, end_direction: Vector) -> Cubic:
    """The curve between two points with given directions and nothing else said: the default of the language.

    With a and b the angles between the chord c and the two directions, the handle at the start is

        c sin b / (3 sin((a + b) / 2) cos^2((a + b) / 4)),

    and at the end the same with sin a on top.  Where a = b this is the usual approximation of a circular
    arc (handle 4/3 r tan(angle / 4)), so a quarter circle comes out as 0.5523 r; where the tangents meet
    square it is that of a quarter ellipse, whatever the two legs.  It changes smoothly where one direction
    passes the chord.

    Raises:
        ZeroDivisionError: The ends are one point, or a direction has no length.
    """
    at_start, at_end = _handles(start, end, start_direction, end_direction)
    return Cubic(start, start + at_start, end + -at_end, end)


def curve_with_depth(
    start: Point, end: Point, start_direction: Vector, end_direction: Vector, depth: float
) -> Cubic | None:
    """The curve that passes the chord's middle at a depth, measured square to the chord.

    Both handles of `curve_between` are made longer or shorter in proportion until it does.

    Args:
        start: Where it begins.
        end: Where it ends.
        start_direction: The way it leaves the start.
        end_direction: The way it goes on at the end.
        depth: How far it lies left of start -> end at the middle of the chord [mm]; negative to the right.

    Returns:
        The curve, or None if no length of the handles reaches that depth.
    """
    square = (end - start).unit().turned_left()
    target = start.towards(end, 0.5) + square * depth
    return curve_past_point(start, end, start_direction, end_direction, target)


def curve_past_corner(  # noqa: PLR0917 - as many as the trade gives it
    start: Point,
    end: Point,
    start_direction: Vector,
    end_direction: Vector,
    corner: Point,
    distance: float,
) -> Cubic | None:
    """The curve that passes a corner at a distance, measured from it along the bisector of start-corner-end.

    Both handles of `curve_between` are made longer or shorter in proportion until it does.

    Returns:
        The curve, or None if no length of the handles does it, or the corner is one of the ends.
    """
    if min(corner.distance(start), corner.distance(end)) <= SAME_POINT:
        return None
    target = corner + bisector(start - corner, end - corner) * distance
    return curve_past_point(start, end, start_direction, end_direction, target)


def curve_past_point(
    start: Point, end: Point, start_direction: Vector, end_direction: Vector, target: Point
) -> Cubic | None:
    """The curve with given directions at its ends that goes through a point between them.

    With B(t) = A(t) + k 3 s t (s H0 + t H1), where A is the curve without handles, H0 and H1 are the
    handles of `curve_between` and k is the factor sought, the target lies on the curve where A(t) - target
    is parallel to s H0 + t H1.  That is a polynomial of degree four in t; of its solutions the one with k
    nearest to 1 is taken.

    Returns:
        The curve, or None if no positive factor leads through the point.
    """
    out, back = _handles(start, end, start_direction, end_direction)
    chord, goal = end - start, target - start
    out_goal, out_chord = out.cross(goal), out.cross(chord)
    back_goal, back_chord = -back.cross(goal), -back.cross(chord)

    def off(t: float) -> float:
        along = t * t * (3 - 2 * t)
        return (1 - t) * (out_goal - along * out_chord) + t * (back_goal - along * back_chord)

    near = 1e-14 * (out.length + back.length) * (chord.length + goal.length)
    places = (root_between(off, low, high, near) for low, high in sign_changes(off, GRID))
    factors = [_factor(out, back, goal - chord * (t * t * (3 - 2 * t)), t) for t in places if 0 < t < 1]
    factors = [k for k in factors if k > 0]
    if not factors:
        return None
    best = min(factors, key=lambda k: abs(log(k)))
    return Cubic(start, start + out * best, end + back * -best, end)


def _factor(out: Vector, back: Vector, gap: Vector, t: float) -> float:
    """By how much the handles have to grow to bridge a gap at a parameter; 0 if they cannot."""
    lean = out * (1 - t) + back * -t
    reach = 3 * t * (1 - t) * lean.dot(lean)
    factor = gap.dot(lean) / reach if reach > 0 else 0.0
    missed = gap - lean * (3 * t * (1 - t) * factor)
    return factor if missed.length <= SAME_POINT else 0.0


def _handles(
    start: Point, end: Point, start_direction: Vector, end_direction: Vector
) -> tuple[Vector, Vector]:
    """The handles of `curve_between`, both in the direction of travel."""
    chord = end - start
    a, b = abs(turn_between(chord, start_direction)), abs(turn_between(chord, end_direction))
    return (
        start_direction.unit() * _handle_length(chord.length, a, b),
        end_direction.unit() * _handle_length(chord.length, b, a),
    )


def _handle_length(chord: float, here: float, there: float) -> float:
    """The length of a handle from the chord and the angles between it and both directions."""
    quarter = cos((here + there) / 4)
    below = 3 * sin((here + there) / 2) * quarter * quarter
    if below <= FLAT:  # both directions along the chord, forwards or backwards
        return chord / 3 if here + there < 1 else chord * LONGEST
    return chord * min(LONGEST, max(SHORTEST, sin(there) / below))
