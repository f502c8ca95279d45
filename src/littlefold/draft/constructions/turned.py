"""Points mirrored, turned, and set off at an angle spoken from a line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.drawn import NewPoint, angle, named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.register import construction
from littlefold.geometry import Affine
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk


@construction(tree.PointMirror, "point.mirror")
def mirror(step: tree.PointMirror, desk: Desk) -> NewPoint:
    """The mirror image of a point in a straight line."""
    line = desk.straight(step.line)
    words = {"of": named(step.of), "line": named(step.line)}
    return NewPoint(Affine.mirror(line.start, line.end - line.start).apply(desk.point(step.of)), words)


@construction(tree.PointTurn, "point.turn")
def turn(step: tree.PointTurn, desk: Desk) -> NewPoint:
    """A point turned about another."""
    by = angle(step.angle, step.clock, desk)
    place = Affine.rotation(by, desk.point(step.about)).apply(desk.point(step.of))
    words = {"of": named(step.of), "about": named(step.about)}
    return NewPoint(place, words | angle_words(by, step.clock))


@construction(tree.PointAngle, "point.angle")
def at_angle(step: tree.PointAngle, desk: Desk) -> NewPoint:
    """A point at a distance from another, in the direction of a line turned by an angle."""
    by, line = angle(step.angle, step.clock, desk), desk.straight(step.line)
    distance = pencil(step.distance, desk)
    place = desk.point(step.base) + line.tangent(0).turned(by) * distance.value
    words = {"base": named(step.base), "distance": distance.said, "line": named(step.line)}
    return NewPoint(place, words | angle_words(by, step.clock), distance)


def angle_words(by: float, clock: str) -> dict[str, Said]:
    """An angle as a sentence speaks it: its size [rad], and which way."""
    return {"angle": Said("angle", abs(by)), "clock": word(clock)}
