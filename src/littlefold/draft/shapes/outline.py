"""A closed outline from lines in order: `outline front edges A-B, hemline, side, armhole, neckline`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.desk import Laid
from littlefold.draft.drawn import named
from littlefold.draft.pieces import place_key
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.laid_down import allow_act, lay_down, put_line, tell
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, ShapeEdge
from littlefold.draft.shapes.taken import marks_of, ringed, short
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written


@shape_act(tree.Outline)
def outline(line: Written, desk: Desk) -> None:
    """Closes lines of the sheet in hand to an outline; on a sheet of its own unless it bears this sheet's name."""
    step: tree.Outline = line.statement
    if not desk.sheet:
        raise Refusal(
            "no-sheet-yet", f"{step.name} has no lines yet. Begin with a line: drawing NAME.", step.name.spot
        )
    shape = _closed(step, desk)
    if step.name.text == desk.sheet:
        _register(step, shape, desk)
    else:
        lay_down(step.name, shape, desk)
    words = {"name": named(step.name), "edges": named(", ".join(shape.names))}
    tell(line, step.name, "shape.outline", words, desk)


def _closed(step: tree.Outline, desk: Desk) -> Shape:
    names = tuple(edge.name.text if edge.name else short(edge.line) for edge in step.edges)
    for name, edge in zip(names, step.edges, strict=True):
        if names.count(name) > 1:
            raise Refusal(
                "name-taken",
                f'{step.name} has two edges "{name}". Name one of them: as NAME.',
                edge.line.spot,
            )
    paths = [desk.line(edge.line) for edge in step.edges]
    ring = ringed(paths, names, [edge.line.spot for edge in step.edges])
    edges = (ShapeEdge(name, path, _folds(step.edges[names.index(name)], path, desk)) for name, path in ring)
    return Shape(tuple(edges)).holding(marks_of(desk.sheet, desk))


def _folds(edge: tree.LineNamed, path: object, desk: Desk) -> tuple[tuple[float, float], ...]:
    """Where the drawn line is folded away, if it is taken whole and in its own direction."""
    drawn = desk.lines.get(desk.qualified(str(edge.line)))
    return drawn.folds if drawn is not None and drawn.path == path else ()


def _register(step: tree.Outline, shape: Shape, desk: Desk) -> None:
    """Makes the sheet in hand an outline: its lines stay, those that have no line of their own name get one."""
    sheet = step.name.text
    allow_act(step.name, desk)
    if sheet in desk.outlines:
        raise Refusal("name-taken", f'there is an outline "{sheet}" already.', step.name.spot)
    at = {place_key(place): name for name, place in shape.points.items()}
    for edge, stated in zip(shape.edges, _in_order(step, shape), strict=True):
        full = f"{sheet}.{edge.name}"
        if stated.name is not None and (full in desk.lines or full in desk.points):
            raise Refusal(
                "name-taken", f'"{edge.name}" has a meaning already. Choose another name.', stated.name.spot
            )
        if full not in desk.lines:
            put_line(full, edge.path, at, desk, edge.folds)
    desk.outlines[sheet] = Laid(shape, len(desk.steps) + 1)


def _in_order(step: tree.Outline, shape: Shape) -> list[tree.LineNamed]:
    """The edges as stated, in the order in which they go round."""
    by_name = {edge.name.text if edge.name else short(edge.line): edge for edge in step.edges}
    return [by_name[name] for name in shape.names]
