"""Curves by their ends, directions and depth, and through points."""

from __future__ import annotations

import itertools
from math import inf
from typing import TYPE_CHECKING

from littlefold.draft.directions import direction_at, direction_words, mirrored_way
from littlefold.draft.drawn import Distance, NewLine, named, pencil, word
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.draft.sides import pick, side_words
from littlefold.geometry import (
    Cubic,
    Path,
    Point,
    Vector,
    curve_between,
    curve_past_corner,
    curve_through,
    curve_with_depth,
)
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.model import Said
    from littlefold.problem import Saying


@construction(tree.CurveBetween, "curve.between")
def between(step: tree.CurveBetween, desk: Desk) -> NewLine:
    """A curve by its ends, its directions there, and how deep it is or how far it passes from a corner."""
    start, end = _ends(step, desk)
    bend = step.bend
    distance = pencil(_bend_length(bend), desk) if bend else None
    cubic = _cubic(step, start, end, distance, desk)
    words = {"start": named(step.start), "end": named(step.end)}
    words |= direction_words(step.starting, "starting", desk) | direction_words(step.ending, "ending", desk)
    words |= _bend_words(bend, distance)
    return NewLine(Path((cubic,)), "curve", step.start.text, step.end.text, words, distance)


def _ends(step: tree.CurveBetween, desk: Desk) -> tuple[Point, Point]:
    start, end = desk.point(step.start), desk.point(step.end)
    if start.distance(end) <= SAME_POINT:
        raise Refusal(
            "points-fall-together",
            say(
                "{start} and {end} lie in the same place; there is no curve between them. Move one of them.",
                start=str(step.start),
                end=str(step.end),
            ),
            step.start.spot,
        )
    return start, end


def _bend_length(bend: tree.Bend) -> tree.Expr:
    return bend.depth if isinstance(bend, tree.Depth) else bend.distance


def _cubic(step: tree.CurveBetween, start: Point, end: Point, distance: Distance | None, desk: Desk) -> Cubic:
    match step.bend:
        case tree.PastCorner(_, corner) if distance is not None:
            return _past_corner(step, start, end, desk.point(corner), distance, desk)
        case tree.Depth(_, side) if distance is not None:
            return _deep(step, start, end, side, distance, desk)
        case _:
            return curve_between(start, end, *_both_ways(step, start, end, desk))


def _both_ways(step: tree.CurveBetween, start: Point, end: Point, desk: Desk) -> tuple[Vector, Vector]:
    """Both directions, the one unsaid as the mirror image of the other."""
    chord = end - start
    out = direction_at(step.starting, start, chord, desk) if step.starting else None
    on = direction_at(step.ending, end, chord, desk) if step.ending else None
    if out is None and on is None:
        raise Refusal(
            "curve-not-told",
            say(
                "how the curve {name} runs is not said. Give a direction at an end, a depth, or a corner it "
                "passes.",
                name=str(step.name),
            ),
            step.name.spot,
        )
    if out is None:
        return mirrored_way(_known(on), start, end), _known(on)
    return out, on if on is not None else mirrored_way(out, start, end)


def _known(way: Vector | None) -> Vector:
    assert way is not None  # noqa: S101 - the caller has seen to it
    return way


def _past_corner(  # noqa: PLR0917
    step: tree.CurveBetween, start: Point, end: Point, corner: Point, distance: Distance, desk: Desk
) -> Cubic:
    assert isinstance(step.bend, tree.PastCorner)  # noqa: S101
    if min(corner.distance(start), corner.distance(end)) <= SAME_POINT:
        raise Refusal(
            "corner-is-an-end",
            say("{corner} is an end of the curve, not its corner.", corner=str(step.bend.corner)),
            step.bend.corner.spot,
        )
    to_corner, from_corner = corner - start, end - corner
    out = direction_at(step.starting, start, to_corner, desk) if step.starting else to_corner.unit()
    on = direction_at(step.ending, end, from_corner, desk) if step.ending else from_corner.unit()
    cubic = curve_past_corner(start, end, out, on, corner, distance.value)
    if cubic is None:
        raise _not_reached(
            step,
            say(
                "{distance} from the corner {corner}",
                distance=f"{distance.value / 10:.1f} cm",
                corner=str(step.bend.corner),
            ),
            distance,
        )
    return cubic


def _deep(  # noqa: PLR0917
    step: tree.CurveBetween, start: Point, end: Point, side: tree.Side | None, distance: Distance, desk: Desk
) -> Cubic:
    if step.starting is None and step.ending is None:
        return _even(step, start, end, side, distance, desk)
    out, on = _both_ways(step, start, end, desk)
    depths = (distance.value, -distance.value) if distance.value else (0.0,)
    found = [cubic for depth in depths if (cubic := curve_with_depth(start, end, out, on, depth)) is not None]
    if not found:
        raise _not_reached(step, say("{distance} deep", distance=f"{distance.value / 10:.1f} cm"), distance)
    return pick(found, lambda cubic: cubic.at(0.5), side, desk, step.name.spot)


def _even(  # noqa: PLR0917
    step: tree.CurveBetween, start: Point, end: Point, side: tree.Side | None, distance: Distance, desk: Desk
) -> Cubic:
    """The even curve over a chord: its handles stand over the thirds, so that its middle lies at the depth."""
    across = (end - start).unit().turned_left() * (distance.value * 4 / 3)
    one, two = start.towards(end, 1 / 3), start.towards(end, 2 / 3)
    answers = (Cubic(start, one + across, two + across, end), Cubic(start, one + -across, two + -across, end))
    if distance.value == 0:
        return answers[0]
    return pick(answers, lambda cubic: cubic.at(0.5), side, desk, step.name.spot)


def _not_reached(step: tree.CurveBetween, what: Saying, distance: Distance) -> Refusal:
    return Refusal(
        "curve-does-not-reach",
        say(
            "no curve from {start} to {end} with these directions passes {what}. Change the depth or a "
            "direction.",
            start=str(step.start),
            end=str(step.end),
            what=what,
        ),
        step.name.spot,
        (Number("depth", distance.value),),
    )


def _bend_words(bend: tree.Bend | None, distance: Distance | None) -> dict[str, Said]:
    match bend:
        case tree.Depth(_, side) if distance is not None:
            return {"bend": word("depth"), "depth": distance.said} | side_words(side)
        case tree.PastCorner(_, corner) if distance is not None:
            return {"bend": word("corner"), "depth": distance.said, "corner": named(corner)}
        case _:
            return {"bend": word("none")}


MOST_POINTS = 50
"""No hand draws one curve through more."""


@construction(tree.CurveThrough, "curve.through")
def through(step: tree.CurveThrough, desk: Desk) -> NewLine:
    """A smooth curve through points; an end with no direction runs out straight."""
    if len(step.points) > MOST_POINTS:
        raise Refusal(
            "too-many-points",
            say(
                "the curve {name} goes through {points} points; at most {most_points} are drawn.",
                name=str(step.name),
                points=str(len(step.points)),
                most_points=str(MOST_POINTS),
            ),
            step.name.spot,
            (Number("points", len(step.points), "count"), Number("at most", MOST_POINTS, "count")),
        )
    places = tuple(desk.point(name) for name in step.points)
    gap = min((one.distance(other) for one, other in itertools.pairwise(places)), default=inf)
    if len(places) < 2 or gap <= SAME_POINT:  # noqa: PLR2004
        raise Refusal(
            "points-fall-together",
            say(
                "the curve {name} needs two points or more, and no two neighbours in the same place.",
                name=str(step.name),
            ),
            step.name.spot,
        )
    out = direction_at(step.starting, places[0], places[1] - places[0], desk) if step.starting else None
    on = direction_at(step.ending, places[-1], places[-1] - places[-2], desk) if step.ending else None
    words = {"points": named(", ".join(map(str, step.points)))}
    words |= direction_words(step.starting, "leaving", desk) | direction_words(step.ending, "ending", desk)
    path = curve_through(places, out, on)
    return NewLine(path, "curve", step.points[0].text, step.points[-1].text, words)
