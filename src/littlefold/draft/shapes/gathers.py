"""Width added evenly for gathers: `gathers in skirt across waist as full by ratio 1.8`.

The outline is stretched square to its first edge until the edge is so much longer; along the first edge nothing
changes, so a fold that is named first stays straight and in its place.  An edge that runs along the first one (to
30 degrees), or is the first one itself, is stretched along it instead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_number
from littlefold.draft.drawn import named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.outline import CORNER
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.cut import joined_up
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, ShapeEdge, same_place
from littlefold.draft.shapes.taken import outline_taken
from littlefold.geometry import Affine, Arc, Path, Point, Vector, curve_between
from littlefold.problem import Number
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.geometry import Segment
    from littlefold.recipe.recipe import Written

# An edge is not stretched to more than so many times its length; finer cloth is not gathered more than threefold.
MOST_RATIO = 10.0

# An edge whose direction has this cosine (of 30 degrees) with the first edge's, or more, runs along it.
RUNS_ALONG = 0.866

# The length is met to this [mm], the stretch found by halving so often.
MET = 1e-4
HALVINGS = 60

# Arcs are stretched in parts no longer than this [rad]: cubics follow them to 1e-6 of the radius.
ARC_PART = 0.4


@shape_act(tree.GatherIn)
def gather_in(line: Written, desk: Desk) -> None:
    """Widens an outline evenly until an edge is a ratio longer, or as long as told."""
    step: tree.GatherIn = line.statement
    shape = outline_taken(step.outline, desk)
    if step.edge.text not in shape.names:
        raise desk.missing(f"edge of {step.outline}", step.edge, shape.names)
    edge = shape.edges[shape.names.index(step.edge.text)]
    if same_place(edge.path.start, edge.path.end):
        raise Refusal(
            "edge-is-closed", f"{step.edge} closes on itself, so it has no one direction.", step.edge.spot
        )
    goal, distance = _goal(step, edge.length, desk)
    wide = _stretched(shape, _stretch_to(shape, edge, goal))
    lay_down(step.name, wide, desk)
    words = {"outline": named(step.outline), "edge": named(step.edge), "name": named(step.name)}
    words |= {
        "by": word("ratio" if distance is None else "length"),
        "ratio": Said("number", goal / edge.length),
    }
    words |= {"before": Said("length", edge.length), "length": Said("length", goal)}
    tell(line, step.name, "shape.gathers", wide, words, desk, distance)


def _goal(step: tree.GatherIn, now: float, desk: Desk) -> tuple[float, Distance | None]:
    """How long the edge is to become [mm], and the distance if it was given as one."""
    distance = pencil(step.amount, desk) if step.by == "to" else None
    goal = distance.value if distance is not None else now * evaluate_number(step.amount, desk)
    if not now < goal <= now * MOST_RATIO:
        raise Refusal(
            "gathers-not-possible",
            f"{step.edge} is {now / 10:.1f} cm long and would become {goal / 10:.1f} cm. To gather it, make it longer, "
            f"up to {MOST_RATIO:g} times.",
            step.edge.spot,
            (Number("before", now), Number("after", goal), Number("at most", now * MOST_RATIO)),
        )
    return goal, distance


def _stretch_to(shape: Shape, edge: ShapeEdge, goal: float) -> Affine:
    """The stretch that makes the edge as long as wanted.

    A straight edge in that direction needs just the ratio; one that is bent or slants, a little more.
    """
    along = _direction(shape.edges[0].path, edge.path)
    fixed = shape.edges[0].path.start
    path = without_arcs(edge.path)
    low, high = 1.0, goal / edge.length
    while path.transformed(stretch(high, along, fixed)).length() < goal - MET:
        low, high = high, high * 2
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        longer = path.transformed(stretch(middle, along, fixed)).length() >= goal
        low, high = (low, middle) if longer else (middle, high)
    return stretch(high, along, fixed)


def _direction(first: Path, edge: Path) -> Vector:
    """The direction of the stretch: square to the first edge, or along it where the edge itself runs that way."""
    base = first.end - first.start
    base = base.unit() if base.length > CORNER else first.start_tangent
    lean = abs((edge.end - edge.start).unit().dot(base))
    return base if lean > RUNS_ALONG else base.turned_left()


def stretch(factor: float, along: Vector, fixed: Point) -> Affine:
    """The map that stretches along a direction; what lies square to it through the fixed point stays."""
    u, more = along.unit(), factor - 1
    a, b, d = 1 + more * u.x * u.x, more * u.x * u.y, 1 + more * u.y * u.y
    return Affine(a, b, b, d, fixed.x - a * fixed.x - b * fixed.y, fixed.y - b * fixed.x - d * fixed.y)


def _stretched(shape: Shape, affine: Affine) -> Shape:
    edges = joined_up([_edge_stretched(edge, affine) for edge in shape.edges])
    points = {name: affine.apply(place) for name, place in shape.points.items()}
    lines = {name: without_arcs(path).transformed(affine) for name, path in shape.lines.items()}
    return Shape(edges, points, lines)


def _edge_stretched(edge: ShapeEdge, affine: Affine) -> ShapeEdge:
    """An edge stretched; its folds begin and end at the places to which theirs went."""
    path = without_arcs(edge.path).transformed(affine)
    folds = tuple(
        (
            path.nearest(affine.apply(edge.path.at_length(a))).length,
            path.nearest(affine.apply(edge.path.at_length(b))).length,
        )
        for a, b in edge.folds
    )
    return ShapeEdge(edge.name, path, folds)


def without_arcs(path: Path) -> Path:
    """The path with cubics instead of arcs, which a stretch would make ellipses of."""
    return Path.joined(*(Path(_cubics(segment)) for segment in path.segments))


def _cubics(segment: Segment) -> tuple[Segment, ...]:
    if not isinstance(segment, Arc):
        return (segment,)
    count = int(abs(segment.sweep) / ARC_PART) + 1
    arcs = [segment.part(k / count, (k + 1) / count) for k in range(count)]
    return tuple(curve_between(arc.start, arc.end, arc.tangent(0.0), arc.tangent(1.0)) for arc in arcs)
