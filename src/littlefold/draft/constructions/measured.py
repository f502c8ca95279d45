"""Points at measured distances from other points.

A           start, or on the fold
|           below, above, left of, right of; perhaps with a second leg
B----C      from one point towards another; in from the fold; at distances from two points
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_number
from littlefold.draft.drawn import NewPoint, named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.draft.sides import pick, side_words
from littlefold.geometry import ORIGIN, Point, Vector, circle_meets_circle
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance

WAYS = {
    "below": Vector(0, -1),
    "above": Vector(0, 1),
    "left of": Vector(-1, 0),
    "right of": Vector(1, 0),
    "left": Vector(-1, 0),
    "right": Vector(1, 0),
}

_OPPOSITE = {"below": "above", "left of": "right of", "left": "right"}
_OPPOSITE |= {opposite: way for way, opposite in _OPPOSITE.items()}


def way_word(way: str, distance: Distance) -> Said:
    """The way in which a distance is measured: the opposite of what is written, where it is less than nothing."""
    return word(_OPPOSITE[way] if distance.value < 0 else way)


@construction(tree.PointStart, "point.start")
def start(step: tree.PointStart, desk: Desk) -> NewPoint:  # noqa: ARG001 - as all constructions
    """The first point of a sheet; all others are placed from it."""
    return NewPoint(ORIGIN, {"place": word(step.place)})


@construction(tree.PointPlaced, "point.placed")
def placed(step: tree.PointPlaced, desk: Desk) -> NewPoint:
    """A point at distances across and up from the start of the sheet."""
    across, up = pencil(step.across, desk), pencil(step.up, desk)
    words = {"across": across.said, "up": up.said}
    return NewPoint(Point(across.value, up.value), words, across)


@construction(tree.PointOffset, "point.offset")
def offset(step: tree.PointOffset, desk: Desk) -> NewPoint:
    """A point straight below, above, left or right of another; a second leg turns a corner."""
    distance = pencil(step.distance, desk)
    words = {"way": way_word(step.way, distance), "base": named(step.base), "distance": distance.size}
    place = desk.point(step.base) + WAYS[step.way] * distance.value
    if step.leg is None:
        return NewPoint(place, words | {"leg": word("none")}, distance)
    second = pencil(step.leg.distance, desk)
    words |= {"leg": word("leg"), "leg_way": way_word(step.leg.way, second), "leg_distance": second.size}
    return NewPoint(place + WAYS[step.leg.way] * second.value, words, distance)


@construction(tree.PointLevel, "point.level")
def level(step: tree.PointLevel, desk: Desk) -> NewPoint:
    """The point level with one point and plumb with (straight above or below) another."""
    words = {"level": named(step.level), "plumb": named(step.plumb)}
    return NewPoint(Point(desk.point(step.plumb).x, desk.point(step.level).y), words)


@construction(tree.PointInward, "point.inward")
def inward(step: tree.PointInward, desk: Desk) -> NewPoint:
    """A point in from the fold, which is the line straight up and down through the sheet's start."""
    distance = pencil(step.distance, desk)
    words = {"distance": distance.said, "level": named(step.level)}
    return NewPoint(Point(distance.value, desk.point(step.level).y), words, distance)


@construction(tree.PointTowards, "point.towards")
def towards(step: tree.PointTowards, desk: Desk) -> NewPoint:
    """A point at a distance from one point, in the direction of another."""
    distance = pencil(step.distance, desk)
    line = desk.straight(tree.Span(step.base, step.towards))
    words = {"base": named(step.base), "towards": named(step.towards), "distance": distance.size}
    words["sense"] = word("away" if distance.value < 0 else "towards")
    return NewPoint(line.start + line.tangent(0) * distance.value, words, distance)


@construction(tree.PointShare, "point.share")
def share(step: tree.PointShare, desk: Desk) -> NewPoint:
    """A point at a share of the way from one point to another."""
    part = evaluate_number(step.share, desk)
    words = {"base": named(step.base), "towards": named(step.towards), "share": Said("number", part)}
    return NewPoint(desk.point(step.base).towards(desk.point(step.towards), part), words)


@construction(tree.PointMidway, "point.midway")
def midway(step: tree.PointMidway, desk: Desk) -> NewPoint:
    """The point midway between two others."""
    words = {"first": named(step.first), "second": named(step.second)}
    return NewPoint(desk.point(step.first).towards(desk.point(step.second), 0.5), words)


@construction(tree.PointReach, "point.reach")
def reach(step: tree.PointReach, desk: Desk) -> NewPoint:
    """The point at given distances from two others: two strokes of the compass."""
    first, second = pencil(step.first_distance, desk), pencil(step.second_distance, desk)
    one, other = desk.point(step.first), desk.point(step.second)
    answers = circle_meets_circle(one, first.value, other, second.value)
    if not answers:
        gap = one.distance(other)
        raise Refusal(
            "compass-does-not-meet",
            say(
                "no point lies {first} from {first_2} and {second} from {second_2}: they lie {gap} apart. "
                "Change a distance.",
                first=f"{first.value / 10:.1f} cm",
                first_2=str(step.first),
                second=f"{second.value / 10:.1f} cm",
                second_2=str(step.second),
                gap=f"{gap / 10:.1f} cm",
            ),
            step.first.spot,
            (Number("first", first.value), Number("second", second.value), Number("apart", gap)),
        )
    place = pick(answers, lambda point: point, step.side, desk, step.name.spot)
    words = {"first": named(step.first), "first_distance": first.said, "second": named(step.second)}
    return NewPoint(place, words | {"second_distance": second.said} | side_words(step.side), first)
