"""What an operation puts on the desk: a new sheet with an outline, its edges as lines, its points."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.desk import Laid
from littlefold.draft.model import DraftLine, DraftPoint, DraftSheet
from littlefold.draft.pieces import place_key
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.taken import on_sheet
from littlefold.draft.steps import write_step
from littlefold.geometry import Arc

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.draft.model import LineKind, Said
    from littlefold.draft.pieces import PlaceKey
    from littlefold.draft.shapes.shape import Fold, Shape
    from littlefold.geometry import Path
    from littlefold.recipe import tree
    from littlefold.recipe.recipe import Written

# What an operation on an outline takes from the budget of constructions: it takes about as long as so many.
COST = 50


def lay_down(name: tree.Name, shape: Shape, desk: Desk) -> None:
    """Puts a shape on a new sheet; the sheet in hand stays in hand.

    Raises:
        Refusal: The name is taken, or has a dot.
    """
    allow_act(name, desk)
    desk.allow_step(name, shape.size)
    _allow(name, desk)
    sheet = name.text
    desk.sheets[sheet] = DraftSheet(sheet, "")
    desk.history[sheet] = []
    number = len(desk.steps) + 1
    desk.outlines[sheet] = Laid(shape, number)
    for short, place in shape.points.items():
        full = f"{sheet}.{short}"
        desk.points[full] = DraftPoint(full, place, number)
    at = {place_key(place): short for short, place in shape.points.items()}
    for edge in shape.edges:
        put_line(f"{sheet}.{edge.name}", edge.path, at, desk, edge.folds)
    for short, path in shape.lines.items():
        put_line(f"{sheet}.{short}", path, at, desk)


def tell(  # noqa: PLR0917 - what was done, and what is said of it
    line: Written,
    made: tree.Name,
    kind: str,
    words: Mapping[str, Said],
    desk: Desk,
    distance: Distance | None = None,
) -> None:
    """Writes down what was done, on the sheet of what it made."""
    with on_sheet(made.text, desk):
        write_step(line, made.text, kind, words, desk, distance)


def allow_act(name: tree.Name, desk: Desk) -> None:
    """Takes one operation from the budget.

    Raises:
        Exhausted: The recipe asks for too many.
    """
    desk.allow_step(name, COST)


def _allow(name: tree.Name, desk: Desk) -> None:
    if name.text in desk.sheets:
        raise Refusal("name-taken", f'there is a drawing "{name}" already. Choose another name.', name.spot)
    if "." in name.text:
        raise Refusal("name-with-dot", f'"{name}": an outline or strip is named without a dot.', name.spot)


def put_line(
    full: str, path: Path, ends: dict[PlaceKey, str], desk: Desk, folds: tuple[Fold, ...] = ()
) -> None:
    """Puts a line on the desk; `ends` are the names of points by their places."""
    start, end = (ends.get(place_key(place), "") for place in (path.start, path.end))
    number = len(desk.steps) + 1
    desk.lines[full] = DraftLine(full, path, kind_of(path), start, end, number, folds=folds)


def kind_of(path: Path) -> LineKind:
    """What a path is to the pencil: ruled, drawn with compasses, or a curve."""
    if path.is_straight:
        return "line"
    return "arc" if len(path.segments) == 1 and isinstance(path.segments[0], Arc) else "curve"
