"""Width added evenly for gathers: `gathers in skirt across waist as full by ratio 1.8`.

The outline is stretched square to its first edge until the edge is so much longer; along the first edge nothing
changes, so a fold that is named first stays straight and in its place.  An edge that runs along the first one (to
30 degrees), or is the first one itself, is stretched along it instead.

Between two points of the edge (`from P to Q`) only what lies between them is stretched; the rest keeps its shape.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_number
from littlefold.draft.constructions.on_lines import ON_LINE, off_line
from littlefold.draft.drawn import named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.outline import CORNER
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, same_place
from littlefold.draft.shapes.taken import outline_taken, point_named
from littlefold.draft.shapes.widened import Widening, without_arcs
from littlefold.geometry.equation import root_between
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.geometry import Path, Point, Vector
    from littlefold.recipe.recipe import Written

# An edge is not stretched to more than so many times its length; finer cloth is not gathered more than threefold.
MOST_RATIO = 10.0

# An edge whose direction has this cosine (of 30 degrees) with the first edge's, or more, runs along it.
RUNS_ALONG = 0.866

# The length is met to this [mm]: far less than anything that is compared.
MET = 1e-7


@dataclass(frozen=True, slots=True)
class _Stretch:
    """What is gathered: the outline, the whole edge or the part of it, and the two ends where it is a part."""

    shape: Shape
    path: Path
    ends: tuple[Point, Point] | None


@shape_act(tree.GatherIn)
def gather_in(line: Written, desk: Desk) -> None:
    """Widens an outline evenly until an edge is a ratio longer, or as long as told."""
    step: tree.GatherIn = line.statement
    stretch = _stretch_of(step, desk)
    now = stretch.path.length()
    goal, distance = _goal(step, now, desk)
    wide = _widening(stretch, goal).shape(stretch.shape)
    lay_down(step.name, wide, desk)
    words = {"outline": named(step.outline), "edge": named(step.edge), "name": named(step.name)}
    words |= {"by": word("ratio" if distance is None else "length"), "ratio": Said("number", goal / now)}
    words |= {"before": Said("length", now), "length": Said("length", goal)} | _between(step)
    tell(line, step.name, "shape.gathers", words, desk, distance)


def _between(step: tree.GatherIn) -> dict[str, Said]:
    """The points between which it is gathered, in the words of the sentence."""
    if step.start is None:
        return {"between": word("none")}
    return {"between": word("between"), "start": named(step.start), "end": named(step.end)}


def _stretch_of(step: tree.GatherIn, desk: Desk) -> _Stretch:
    shape = outline_taken(step.outline, desk)
    if step.edge.text not in shape.names:
        raise desk.missing(say("edge of {piece}", piece=str(step.outline)), step.edge, shape.names)
    path = shape.edges[shape.names.index(step.edge.text)].path
    if step.start is not None and step.end is not None:
        return _part_between(step, shape, path, (step.start, step.end), desk)
    if same_place(path.start, path.end):
        raise _no_direction(f"{step.edge} closes on itself, so it has no one direction.", step)
    return _Stretch(shape, path, None)


def _part_between(
    step: tree.GatherIn, shape: Shape, path: Path, names: tuple[tree.Name, tree.Name], desk: Desk
) -> _Stretch:
    """The part of an edge between two points on it, which go along with the outline."""
    places = [point_named(name, step.outline, desk) for name in names]
    lengths = [_along(path, place, name, step.edge) for name, place in zip(names, places, strict=True)]
    if same_place(*places):
        raise _no_direction(
            f"{names[0]} and {names[1]} lie in the same place; nothing lies between them.", step
        )
    points = {name.text.rpartition(".")[2]: place for name, place in zip(names, places, strict=True)}
    part = path.part(min(lengths), max(lengths))
    return _Stretch(replace(shape, points={**shape.points, **points}), part, (part.start, part.end))


def _along(path: Path, place: Point, name: tree.Name, edge: tree.Name) -> float:
    nearest = path.nearest(place)
    if nearest.distance > ON_LINE:
        raise off_line(name, edge, nearest.distance)
    return nearest.length


def _no_direction(words: str, step: tree.GatherIn) -> Refusal:
    return Refusal("edge-is-closed", words, step.edge.spot)


def _goal(step: tree.GatherIn, now: float, desk: Desk) -> tuple[float, Distance | None]:
    """How long the edge is to become [mm], and the distance if it was given as one."""
    distance = pencil(step.amount, desk) if step.by == "to" else None
    goal = distance.value if distance is not None else now * evaluate_number(step.amount, desk)
    if not now < goal <= now * MOST_RATIO:
        raise Refusal(
            "gathers-not-possible",
            say(
                "{edge} is {now} long and would become {goal}. To gather it, make it longer, up to "
                "{most_ratio} times.",
                edge=str(step.edge),
                now=f"{now / 10:.1f} cm",
                goal=f"{goal / 10:.1f} cm",
                most_ratio=f"{MOST_RATIO:g}",
            ),
            step.edge.spot,
            (Number("before", now), Number("after", goal), Number("at most", now * MOST_RATIO)),
        )
    return goal, distance


def _widening(stretch: _Stretch, goal: float) -> Widening:
    """The widening that makes the edge, or the part of it, as long as wanted.

    A straight edge in that direction needs just the ratio; one that is bent or slants, a little more.
    """
    first = stretch.shape.edges[0].path
    once = Widening(_direction(first, stretch.path), 1.0, first.start)
    if stretch.ends is not None:
        low, high = sorted(map(once.where, stretch.ends))
        once = replace(once, low=low, high=high)
    path = without_arcs(stretch.path)
    return once.by(_factor(path, once, goal))


def _factor(path: Path, widening: Widening, goal: float) -> float:
    """The factor by which a path becomes as long as wanted."""

    def beyond(factor: float) -> float:
        """By how much it becomes too long [mm]."""
        return widening.by(factor).path(path).length() - goal

    low, high = 1.0, goal / path.length()
    while beyond(high) < -MET:
        low, high = high, high * 2
    return root_between(beyond, low, high, MET)


def _direction(first: Path, edge: Path) -> Vector:
    """The direction of the stretch: square to the first edge, or along it where the edge itself runs that way."""
    base = first.end - first.start
    base = base.unit() if base.length > CORNER else first.start_tangent
    lean = abs((edge.end - edge.start).unit().dot(base))
    return base if lean > RUNS_ALONG else base.turned_left()
