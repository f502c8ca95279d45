"""A whole drawing of a draft, reduced: points lettered, dimensions shown, for teaching."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.booklet.measures import Measure, measures
from littlefold.booklet.scene import scene
from littlefold.booklet.step_picture import fold_marks, letter, settled
from littlefold.booklet.wording import wording
from littlefold.draft.sentence import Speech
from littlefold.drawing import Dot, Drawing, Mark, Meaning, Stroke
from littlefold.sheet.reduced import DIVISORS, scale_bar

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.booklet.scene import Scene
    from littlefold.draft.model import Draft
    from littlefold.geometry import Point

NEAR = 2.5
"""Dimension lines nearer to each other than this would run together [mm]."""
ROOM = (150.0, 150.0)
"""Width and height of the picture on the instruction sheet [mm]."""


def draft_picture(
    draft: Draft,
    sheet: str,
    speech: Speech = Speech(),  # noqa: B008 - frozen
    room: tuple[float, float] = ROOM,
    *,
    until: int | None = None,
    least: float = 1.0,
) -> Drawing:
    """A sheet of a draft with all that was drawn on it, at the largest scale a pupil can multiply by that fits.

    Args:
        draft: The draft.
        sheet: The name of the drawing.
        speech: How dimensions are said.
        room: Width and height that the drawing should keep within [mm].
        until: The last step that is shown; all are if it is None.
        least: No larger scale than 1 : least is taken.
    """
    last = len(draft.steps) if until is None else until
    fitted = scene(draft, sheet, room, until=last)
    divisor = next((known for known in DIVISORS if known >= max(fitted.divisor - 1e-9, least)), DIVISORS[-1])
    where = scene(draft, sheet, room, until=last, divisor=divisor)
    marks = (*fold_marks(where), *_lines(where, last), *_points(where, last))
    drawing = settled((*marks, *_dimensions(where, last, speech)), sheet)
    return drawing.with_marks(
        scale_bar(drawing, divisor, speech.units, wording(speech.language)["said"]["scale"])
    )


def _lines(where: Scene, last: int) -> Iterator[Mark]:
    for line in where.lines(last):
        is_laid = "." in where.short(line.name)
        meaning = Meaning.OLD if is_laid else Meaning.DRAFT
        yield Stroke(line.path.transformed(where.affine), meaning, line.name)


def _points(where: Scene, last: int) -> Iterator[Mark]:
    for point in where.points(last):
        at, short = where.at(point.at), where.short(point.name)
        if "." not in short:
            yield Dot(at, Meaning.LETTER, point.name)
            yield letter(at, short, point.name, is_new=False)


def _dimensions(where: Scene, last: int, speech: Speech) -> Iterator[Mark]:
    """All dimensions, the short ones nearest to what they measure, none on top of another."""
    drawn: list[tuple[Point, Point]] = []
    for measured in sorted(_measures(where, last), key=lambda one: one.start.distance(one.end)):
        lane = next(lane for lane in range(1, len(drawn) + 2) if _is_free(measured.line(lane), drawn))
        drawn.append(measured.line(lane))
        yield from measured.marks(speech, lane)


def _measures(where: Scene, last: int) -> Iterator[Measure]:
    return (measured for step in where.steps() if step.number <= last for measured in measures(where, step))


def _is_free(line: tuple[Point, Point], drawn: list[tuple[Point, Point]]) -> bool:
    """Whether a dimension line runs along none that is drawn."""
    return not any(_runs_along(line, other) for other in drawn)


def _runs_along(line: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    start, way = line[0], line[1] - line[0]
    along, length = way.unit(), way.length
    places = [(end - start).dot(along) for end in other]
    beside = [abs((end - start).cross(along)) for end in other]
    return max(beside) < NEAR and max(places) > 0 and min(places) < length
