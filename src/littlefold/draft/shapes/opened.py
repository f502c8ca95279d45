"""An outline opened along a line: one part stays, the other moves away from it, edges are carried across the gap.

     a   a'           The part that holds the beginning of the first edge stays.  Round it the outline runs
.----.   .----.       from a to b, round the other part from b' to a'.  At each end the opening is a straight
|stay|   |goes|       distance (a a', b b'); the part that goes is moved so that the gap is the same from both
'----'   '----'       sides: parallel where the two are equal, else turned.
     b   b'
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING

from littlefold.draft.outline import CORNER
from littlefold.draft.shapes.cut import joined_up
from littlefold.draft.shapes.shape import Marks, Shape, ShapeEdge, moved, same_place, tidied
from littlefold.geometry import Affine, Line, Path, curve_between
from littlefold.geometry.once import once
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.shapes.cut import Crossing
    from littlefold.geometry import Point, Vector


@dataclass(frozen=True)
class Halves:
    """An outline cut in two: the edges of the part that stays (a to b), of the part that goes (b to a), the cut a to b.

    The part that goes is asked for again and again, and kept: so it has no slots.
    """

    stays: tuple[ShapeEdge, ...]
    goes: tuple[ShapeEdge, ...]
    cut: Path

    @property
    def a(self) -> Point:
        """Where the part that stays begins."""
        return self.cut.start

    @property
    def b(self) -> Point:
        """Where the part that stays ends."""
        return self.cut.end

    @property
    def away(self) -> Vector:
        """The direction from the part that stays to the part that goes, square to the cut."""
        return (self.b - self.a).unit().turned_left()

    @once
    def leaving(self) -> Shape:
        """The part that goes, before it does, with nothing drawn on it."""
        return Shape((*self.goes, ShapeEdge("", self.cut)))

    def staying(self, shape: Shape) -> Shape:
        """The part that stays, with what is drawn on it."""
        return Shape((*self.stays, ShapeEdge("", self.cut.reversed()))).holding(shape.marks)

    def going(self, shape: Shape) -> Shape:
        """The part that goes, before it does, with what is drawn on it."""
        return self.leaving.holding(shape.marks)


def halved(shape: Shape, cut: Crossing) -> Halves:
    """The two parts of an outline; the one with the beginning of the first edge stays."""
    inner, outer = shape.stretch(cut.start, cut.end), shape.stretch(cut.end, cut.start)
    if cut.start <= CORNER:
        return Halves(inner, outer, cut.path)
    return Halves(outer, inner, cut.path.reversed())


def motion(halves: Halves, at_a: float, at_b: float) -> Affine | None:
    """How the other part moves to leave an opening at each end [mm].

    The two cut edges are the legs of a trapezium, the openings its parallel sides.

    Returns:
        The motion; None if the openings differ so much that the part would turn by more than a right angle.
    """
    a, b = halves.a, halves.b
    slope = (at_b - at_a) / (2 * a.distance(b))
    if abs(slope) > sqrt(0.5):
        return None
    along = (b - a).unit()
    side = halves.away * sqrt(1 - slope * slope) + along * -slope
    return Affine.taking(a, b, a + side * at_a, b + side * at_b)


def put_together(
    shape: Shape,
    halves: Halves,
    going: Affine,
    bridge_a: tuple[ShapeEdge, ...] = (),
    bridge_b: tuple[ShapeEdge, ...] = (),
) -> Shape:
    """The new outline: the part that stays, over the gap at b, the part that went, back over the gap at a."""
    gone = tuple(edge.moved(going) for edge in halves.goes)
    around = joined_up((*halves.stays, *bridge_b, *gone, *bridge_a))
    marks = carried(halves.staying(shape).marks, moved(halves.going(shape).marks, going))
    return Shape(tidied(around, shape.edges[0].name), marks.points, marks.lines)


def carried(staying: Marks, gone: Marks) -> Marks:
    """What was drawn on both parts; a point of the cut that came apart becomes two, `P_1` (it stayed) and `P_2`."""
    points = dict(staying.points)
    for name, place in gone.points.items():
        if name not in points:
            points[name] = place
        elif not same_place(points[name], place):
            first, second = _two_names(name, {**staying.points, **gone.points})
            points[first], points[second] = points.pop(name), place
    return Marks(points, {**gone.lines, **staying.lines})


def _two_names(name: str, taken: Mapping[str, Point]) -> tuple[str, str]:
    free = (f"{name}_{number}" for number in range(1, len(taken) + 3))
    first, second, *_ = [new for new in free if new not in taken]
    return first, second


def smooth_bridge(before: ShapeEdge, after: ShapeEdge, preferred: str) -> tuple[ShapeEdge, ...]:
    """What carries an edge over the gap: a curve that leaves and arrives smoothly, straight where that is straight.

    Args:
        before: The edge that ends at the gap.
        after: The edge that begins beyond it, moved already.
        preferred: The name it gets where the two edges bear different names.
    """
    start, end = before.path.end, after.path.start
    if start.distance(end) <= SAME_POINT:
        return ()
    if before.name != after.name:
        name = preferred if preferred in {before.name, after.name} else before.name
        return (ShapeEdge(name, Path((Line(start, end),))),)
    curve = Path((curve_between(start, end, before.path.end_tangent, after.path.start_tangent),))
    straight = all(
        abs((end - start).unit().cross(way)) <= STRAIGHT
        for way in (before.path.end_tangent, after.path.start_tangent)
    )
    return (ShapeEdge(before.name, Path((Line(start, end),)) if straight else curve),)


# A bridge whose ends turn from the straight line by less than this [rad] is ruled.
STRAIGHT = 1e-6
