"""A whole drawing of a draft, reduced: points lettered, dimensions shown, for teaching."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.booklet.measures import measure_marks
from littlefold.booklet.scene import scene
from littlefold.booklet.step_picture import fold_marks, letter, settled
from littlefold.draft.sentence import Speech
from littlefold.drawing import Dot, Drawing, Mark, Meaning, Stroke
from littlefold.sheet.reduced import DIVISORS, scale_bar

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.booklet.scene import Scene
    from littlefold.draft.model import Draft

ROOM = (150.0, 150.0)
"""Width and height of the picture on the instruction sheet [mm]."""


def draft_picture(
    draft: Draft,
    sheet: str,
    speech: Speech = Speech(),  # noqa: B008 - frozen
    room: tuple[float, float] = ROOM,
) -> Drawing:
    """A sheet of a draft with all that was drawn on it, at the largest scale a pupil can multiply by that fits.

    Args:
        draft: The draft.
        sheet: The name of the drawing.
        speech: How dimensions are said.
        room: Width and height that the drawing should keep within [mm].
    """
    fitted = scene(draft, sheet, room)
    divisor = next((known for known in DIVISORS if known >= fitted.divisor - 1e-9), DIVISORS[-1])
    where = scene(draft, sheet, room, divisor)
    drawing = settled((*fold_marks(where), *_lines(where), *_points(where), *_dimensions(where, speech)), sheet)
    return drawing.with_marks(scale_bar(drawing, divisor))


def _lines(where: Scene) -> Iterator[Mark]:
    for line in where.lines(_last(where)):
        yield Stroke(line.path.transformed(where.affine), Meaning.DRAFT, line.name)


def _points(where: Scene) -> Iterator[Mark]:
    for point in where.points(_last(where)):
        at, short = where.at(point.at), where.short(point.name)
        yield Dot(at, Meaning.LETTER, point.name)
        if "." not in short:
            yield letter(at, short, point.name, is_new=False)


def _dimensions(where: Scene, speech: Speech) -> Iterator[Mark]:
    for step in where.steps():
        yield from measure_marks(where, step, speech)


def _last(where: Scene) -> int:
    return len(where.draft.steps)
