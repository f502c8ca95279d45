"""An outline cut in two along a style line: `split front along yoke_line into yoke nearer N and skirt`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.drawn import named
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.cut import crossing, distance_to, parts
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.taken import line_named, noting, outline_taken, point_named, short
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.shapes.shape import Shape
    from littlefold.recipe.recipe import Written


@shape_act(tree.Split)
def split(line: Written, desk: Desk) -> None:
    """Cuts an outline in two; both parts stay where they are, each on its own sheet."""
    step: tree.Split = line.statement
    shape = noting(outline_taken(step.outline, desk), (step.line,), step.outline, desk)
    path = line_named(step.line, step.outline, desk)
    cut = crossing(shape, path, (str(step.line), step.outline.text), step.line.spot)
    first, second = _in_order(step, parts(shape, cut, short(step.line)), desk)
    lay_down(step.first, first, desk)
    lay_down(step.second, second, desk)
    words = {"outline": named(step.outline), "line": named(short(step.line)), "first": named(step.first)}
    words |= {"nearer": named(step.nearer), "second": named(step.second)}
    tell(line, step.first, "shape.split", words, desk)


def _in_order(step: tree.Split, both: tuple[Shape, Shape], desk: Desk) -> tuple[Shape, Shape]:
    """The part that is meant by `nearer`, and the other.

    Raises:
        Refusal: The point lies on the cut.
    """
    place = point_named(step.nearer, step.outline, desk)
    gaps = [distance_to(part, place) for part in both]
    if abs(gaps[0] - gaps[1]) <= SAME_POINT:
        raise Refusal(
            "answers-alike",
            f"{step.nearer} lies on {step.line}, so it does not tell the two parts apart. Name a point of one of them.",
            step.nearer.spot,
        )
    return both if gaps[0] < gaps[1] else both[::-1]
