"""Points mirrored, turned, and set off at an angle spoken from a line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_angle
from littlefold.draft.drawn import NewPoint, named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.register import construction
from littlefold.draft.sides import turn_meant
from littlefold.geometry import Affine
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.geometry import Point


@construction(tree.PointMirror, "point.mirror")
def mirror(step: tree.PointMirror, desk: Desk) -> NewPoint:
    """The mirror image of a point in a straight line."""
    line = desk.straight(step.line)
    words = {"of": named(step.of), "line": named(step.line)}
    return NewPoint(Affine.mirror(line.start, line.end - line.start).apply(desk.point(step.of)), words)


@construction(tree.PointTurn, "point.turn")
def turn(step: tree.PointTurn, desk: Desk) -> NewPoint:
    """A point turned about another."""
    of, about = desk.point(step.of), desk.point(step.about)

    def place(by: float) -> Point:
        return Affine.rotation(by, about).apply(of)

    by = turn_meant(step.clock, evaluate_angle(step.angle, desk), place, step.name.spot)
    words = {"of": named(step.of), "about": named(step.about)}
    return NewPoint(place(by), words | angle_words(by))


@construction(tree.PointAngle, "point.angle")
def at_angle(step: tree.PointAngle, desk: Desk) -> NewPoint:
    """A point at a distance from another, in the direction of a line turned by an angle."""
    base, line, distance = desk.point(step.base), desk.straight(step.line), pencil(step.distance, desk)

    def place(by: float) -> Point:
        return base + line.tangent(0).turned(by) * distance.value

    by = turn_meant(step.clock, evaluate_angle(step.angle, desk), place, step.name.spot)
    words = {"base": named(step.base), "distance": distance.said, "line": named(step.line)}
    return NewPoint(place(by), words | angle_words(by), distance)


def angle_words(by: float) -> dict[str, Said]:
    """A turn [rad], counter-clockwise positive, as a sentence speaks it: its size, and which way."""
    return {"angle": Said("angle", abs(by)), "clock": word("clockwise" if by < 0 else "anticlockwise")}
