"""Two outlines put together at an edge that both have: `join front and back at shoulder as joined`.

The second is moved so that its edge lies on the first one's, the two outlines on opposite sides of it.  The edges
beside it tell which ends belong together: where both have a `neckline` beside the shoulder, neckline goes to
neckline, and the second is turned over if it must be.  Where names do not tell, it is turned, not turned over.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.draft.drawn import named, word
from littlefold.draft.model import Said
from littlefold.draft.refusal import Refusal
from littlefold.draft.sewing import SEAM_TOLERANCE
from littlefold.draft.shapes.cut import joined_up
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, ShapeEdge, numbered, same_place
from littlefold.draft.shapes.taken import outline_taken
from littlefold.geometry import Affine, Path, angle_between
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

# Edges that bend less than this where they meet [rad, 2 degrees] carry on smoothly.
SMOOTH = 0.035

# So many places along the edge are compared.
LOOKED_AT = 17


@shape_act(tree.Join)
def join(line: Written, desk: Desk) -> None:
    """Puts two outlines together; the first stays where it is."""
    step: tree.Join = line.statement
    first, second = outline_taken(step.first, desk), outline_taken(step.second, desk)
    one, other = _edge(step, step.first, first, desk), _edge(step, step.second, second, desk)
    _alike(step, first.edges[one].length, second.edges[other].length)
    over = _is_over(first, one, second, other)
    second, other = _laid(first.edges[one].path, second, other, over=over)
    _on_each_other(step, first.edges[one].path, second.edges[other].path)
    shape = _joined(first, one, _renamed(step, first, second), other)
    lay_down(step.name, shape, desk)
    words = {"first": named(step.first), "second": named(step.second), "edge": named(step.edge)}
    words |= {"name": named(step.name), "over": word("over" if over else "none")}
    words |= {"length": Said("length", first.edges[one].length)}
    tell(line, step.name, "shape.join", words, desk)


def _edge(step: tree.Join, outline: tree.Name, shape: Shape, desk: Desk) -> int:
    if step.edge.text not in shape.names:
        raise desk.missing(say("edge of {piece}", piece=str(outline)), step.edge, shape.names)
    return shape.names.index(step.edge.text)


def _alike(step: tree.Join, one: float, other: float) -> None:
    if abs(one - other) > SEAM_TOLERANCE:
        raise Refusal(
            "joined-edges-differ",
            say(
                "{edge} is {one} long on {first} and {other} on {second}. Only edges of one length (within "
                "{seam_tolerance}) are joined; draw one of them anew.",
                edge=str(step.edge),
                one=f"{one / 10:.2f} cm",
                first=str(step.first),
                other=f"{other / 10:.2f} cm",
                second=str(step.second),
                seam_tolerance=f"{SEAM_TOLERANCE:g} mm",
            ),
            step.edge.spot,
            (Number("first", one), Number("second", other), Number("allowed", SEAM_TOLERANCE)),
        )


def _is_over(first: Shape, one: int, second: Shape, other: int) -> bool:
    """Whether the second has to be turned over for like-named edges to meet."""
    before, after = _beside(first, one)
    mate_before, mate_after = _beside(second, other)
    turned = (before == mate_after) + (after == mate_before)
    over = (before == mate_before) + (after == mate_after)
    return over > turned


def _beside(shape: Shape, index: int) -> tuple[str, str]:
    return shape.names[index - 1], shape.names[(index + 1) % len(shape.names)]


def _laid(onto: Path, second: Shape, other: int, *, over: bool) -> tuple[Shape, int]:
    """The second outline with its edge on the first one's, middle on middle, and the index of that edge."""
    if over:
        edge = second.edges[other].path
        second = second.turned_over(Affine.mirror(edge.start, edge.end - edge.start))
        other = len(second.edges) - 1 - other
    edge = second.edges[other].path
    middle, towards = onto.start.towards(onto.end, 0.5), onto.start
    own = edge.start.towards(edge.end, 0.5)
    return second.moved(Affine.taking(own, edge.end, middle, towards)), other


def _on_each_other(step: tree.Join, one: Path, other: Path) -> None:
    """Refuses edges of one length that are bent differently."""
    whole = other.length()
    places = (other.at_length(whole * k / (LOOKED_AT - 1)) for k in range(LOOKED_AT))
    gap = max(one.distance(place) for place in places)
    if gap > SEAM_TOLERANCE:
        raise Refusal(
            "joined-edges-bend-apart",
            say(
                "{edge} of {first} and of {second} are bent differently; laid on each other they lie up to "
                "{gap} apart (allowed {seam_tolerance}). Straighten them, or sew them instead.",
                edge=str(step.edge),
                first=str(step.first),
                second=str(step.second),
                gap=f"{gap:.1f} mm",
                seam_tolerance=f"{SEAM_TOLERANCE:g} mm",
            ),
            step.edge.spot,
            (Number("apart", gap), Number("allowed", SEAM_TOLERANCE)),
        )


def _joined(first: Shape, one: int, second: Shape, other: int) -> Shape:
    """The outline round both, and what is drawn in both."""
    around = [*_after(first, one), *_after(second, other)]
    merged = _carried_on(joined_up(around))
    start = next((k for k, edge in enumerate(merged) if edge.name == first.names[0]), 0)
    merged = merged[start:] + merged[:start]
    names = numbered([edge.name for edge in merged])
    edges = tuple(replace(edge, name=name) for name, edge in zip(names, merged, strict=True))
    points = {**second.points, **first.points}
    return Shape(edges, points, {**second.lines, **first.lines})


def _renamed(step: tree.Join, first: Shape, second: Shape) -> Shape:
    """The second with its points and lines under its own name (`back.N`) where the first has others so named."""
    front = step.second.text
    points = {
        name
        if name not in first.points or same_place(first.points[name], place)
        else f"{front}.{name}": place
        for name, place in second.points.items()
    }
    taken = {*first.lines, *first.names, *second.names}
    lines = {f"{front}.{name}" if name in taken else name: path for name, path in second.lines.items()}
    return Shape(second.edges, points, lines)


def _after(shape: Shape, index: int) -> list[ShapeEdge]:
    return [*shape.edges[index + 1 :], *shape.edges[:index]]


def _carried_on(edges: Sequence[ShapeEdge]) -> list[ShapeEdge]:
    """Neighbours of one name made one edge where they carry on smoothly."""
    merged: list[ShapeEdge] = []
    for edge in edges:
        if merged and _smooth(merged[-1], edge):
            merged[-1] = merged[-1].then(edge)
        else:
            merged.append(edge)
    if len(merged) > 1 and _smooth(merged[-1], merged[0]):
        merged[0] = merged.pop().then(merged[0])
    return merged


def _smooth(edge: ShapeEdge, following: ShapeEdge) -> bool:
    turn = angle_between(edge.path.end_tangent, following.path.start_tangent)
    return edge.name == following.name and turn <= SMOOTH
