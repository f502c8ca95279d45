"""A button stand: `button stand on centre of back by 2 cm as wide_back`.

The outline grows beyond a straight edge.  The edges beside it are carried on as scissors cut them through the
paper folded back along the edge: each is its own mirror image in it, so that the stand turned back lies on the
piece.  The new edge keeps the name; the line it grew from, on which the sides close, is kept as `centre_line`.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.draft.drawn import named, pencil
from littlefold.draft.outline import CORNER
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.cut import joined_up
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, ShapeEdge, tidied
from littlefold.draft.shapes.taken import outline_taken
from littlefold.geometry import Affine, Path
from littlefold.geometry.intersection import meet_line
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written


@shape_act(tree.ButtonStand)
def button_stand(line: Written, desk: Desk) -> None:
    """Adds width beyond an edge for buttons to stand on."""
    step: tree.ButtonStand = line.statement
    shape = outline_taken(step.outline, desk)
    if step.edge.text not in shape.names:
        raise desk.missing(say("edge of {piece}", piece=str(step.outline)), step.edge, shape.names)
    width = pencil(step.width, desk)
    index = shape.names.index(step.edge.text)
    _possible(step, shape.edges[index], width.value)
    wide = _grown(step, shape, index, width.value)
    lay_down(step.name, wide, desk)
    words = {"edge": named(step.edge), "outline": named(step.outline), "width": width.said}
    words |= {"name": named(step.name), "line": named(f"{step.edge}_line")}
    words |= {
        "before": named(shape.names[index - 1]),
        "after": named(shape.names[(index + 1) % len(shape.edges)]),
    }
    tell(line, step.name, "shape.button_stand", words, desk, width)


def _possible(step: tree.ButtonStand, edge: ShapeEdge, width: float) -> None:
    if not edge.path.is_straight:
        raise Refusal(
            "line-not-straight",
            say(
                "{edge} is not straight; a button stand is folded back along a straight edge.",
                edge=str(step.edge),
            ),
            step.edge.spot,
        )
    if width <= 0:
        raise Refusal(
            "stand-without-width",
            say("a button stand {width} wide is none. Give more than 0 cm.", width=f"{width / 10:.1f} cm"),
            step.edge.spot,
            (Number("width", width),),
        )


def _grown(step: tree.ButtonStand, shape: Shape, index: int, width: float) -> Shape:
    edge = shape.edges[index].path
    count = len(shape.edges)
    before, after = shape.edges[index - 1], shape.edges[(index + 1) % count]
    start = _turned_back(step, edge, before.name, before.path.reversed(), width)
    end = _turned_back(step, edge, after.name, after.path, width)
    grown = ShapeEdge(step.edge.text, Path.line_through(start.end, end.end))
    others = [shape.edges[(index + k) % count] for k in range(1, count)]
    around = (*others, ShapeEdge(before.name, start), grown, ShapeEdge(after.name, end.reversed()))
    edges = tidied(joined_up(around), shape.edges[0].name)
    lines = {**shape.lines, f"{step.edge}_line": edge}
    return replace(shape, edges=edges, lines=lines)


def _turned_back(step: tree.ButtonStand, edge: Path, name: str, beside: Path, width: float) -> Path:
    """The edge beside, from the corner onward to the width, mirrored in the edge.

    Raises:
        Refusal: It is too short for the width.
    """
    inward = (edge.end - edge.start).unit().turned_left()
    found = [m.first_length for m in meet_line(beside, edge.start + inward * width, edge.end - edge.start)]
    if not found or min(found) <= CORNER:
        reach = max((place - edge.start).dot(inward) for place in beside.flatten())
        raise Refusal(
            "stand-too-wide",
            say(
                "{name} reaches {reach} from {edge}, so it cannot be followed on a stand {width} wide. Make "
                "the stand narrower.",
                name=str(name),
                reach=f"{reach / 10:.1f} cm",
                edge=str(step.edge),
                width=f"{width / 10:.1f} cm",
            ),
            step.edge.spot,
            (Number("width", width), Number("reach", reach)),
        )
    return beside.part(0.0, min(found)).transformed(Affine.mirror(edge.start, edge.end - edge.start))
