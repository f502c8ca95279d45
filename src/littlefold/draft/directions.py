"""The directions in which a curve leaves its start and goes on at its end.

A direction is always the way the pencil moves.  Where a line only gives two opposite ways (square to, along,
tangent to), the one that leads from the start towards the end is meant; for a curve that passes a corner, the one
that leads towards the corner at the start and away from it at the end.  An end left unsaid follows one rule:

    passing a corner           towards the corner at the start, away from it at the end
    the other end is said      its mirror image, so that the curve is even
    neither end is said        with a depth: the even curve that rises to it; without: refused
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_angle
from littlefold.draft.drawn import named, word
from littlefold.draft.model import Said
from littlefold.draft.refusal import Refusal
from littlefold.draft.sides import turn_meant
from littlefold.geometry import Affine, Point, Vector
from littlefold.problem import Number
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk

GOING = {"up": Vector(0, 1), "down": Vector(0, -1), "left": Vector(-1, 0), "right": Vector(1, 0)}

# A way whose share towards the end is smaller than this (the sine of a third of a degree) leads neither there nor
# back, so the recipe has to say which is meant.
UNDECIDED = 0.005

# So far along two directions lie the points by which a problem shows them [mm].
SHOWN = 10.0


def direction_at(said: tree.Direction, place: Point, chord: Vector, desk: Desk) -> Vector:
    """The way of the pencil at one end of a curve.

    Args:
        said: What the recipe says.
        place: The end.
        chord: Where the curve is bound: from its start to its end, or to and from the corner it passes.
        desk: To look names up.
    """
    match said:
        case tree.Going(way):
            return GOING[way]
        case tree.HeadingTo(point):
            return _towards(place, point, desk)
        case tree.SquareTo(line):
            return _leading(desk.straight(line).tangent(0).turned_left(), chord, line)
        case tree.Along(line):
            return _leading(desk.straight(line).tangent(0), chord, line)
        case tree.TangentTo(line):
            path = desk.named_line(line).path
            return _leading(path.tangent_at_length(path.nearest(place).length), chord, line)
        case tree.Angled(angle, clock, line):
            ahead = desk.straight(line).tangent(0)
            size = evaluate_angle(angle, desk)
            return ahead.turned(
                turn_meant(clock, size, lambda by: place + ahead.turned(by) * SHOWN, line.spot)
            )


def _towards(place: Point, point: tree.Name, desk: Desk) -> Vector:
    way = desk.point(point) - place
    if way.length == 0:
        raise Refusal(
            "points-fall-together",
            f"{point} lies at the end of the curve; it gives no direction.",
            point.spot,
        )
    return way.unit()


def _leading(way: Vector, chord: Vector, line: tree.LineRef) -> Vector:
    """Of a way and its opposite, the one that leads towards the end of the curve."""
    share = way.dot(chord.unit())
    if abs(share) < UNDECIDED:
        raise Refusal(
            "which-of-two-directions",
            f"from {line} the curve could leave either way: ({way.x:.2f} across, {way.y:.2f} up) or ({-way.x:.2f} across, "
            f"{-way.y:.2f} up). Say going up, down, left or right, or towards a point.",
            line.spot,
            (Number("across", way.x, "ratio"), Number("up", way.y, "ratio")),
        )
    return way if share > 0 else -way


def mirrored_way(way: Vector, start: Point, end: Point) -> Vector:
    """The direction at the other end of a curve that is even: mirrored in the middle of the chord, and reversed."""
    across = (end - start).turned_left()
    return -Affine.mirror(start.towards(end, 0.5), across).apply_vector(way)


def direction_words(said: tree.Direction | None, front: str, desk: Desk) -> dict[str, Said]:
    """What a sentence says of a direction, under names that begin with `front`."""
    match said:
        case None:
            return {front: word("unsaid")}
        case tree.Going(way):
            return {front: word(f"going {way}")}
        case tree.HeadingTo(point):
            return {front: word("heading"), f"{front}_name": named(point)}
        case tree.SquareTo(line):
            return {front: word("square"), f"{front}_name": named(line)}
        case tree.Along(line):
            return {front: word("along"), f"{front}_name": named(line)}
        case tree.TangentTo(line):
            return {front: word("tangent"), f"{front}_name": named(line)}
        case tree.Angled(angle, clock, line):
            size = Said("angle", evaluate_angle(angle, desk))
            return {front: word(f"angled {clock}"), f"{front}_name": named(line), f"{front}_angle": size}
