"""A picture of one step: what was drawn before recedes, what the step adds stands out."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.booklet.measures import MEASURED_FROM, STRIPS, guide_marks, measures, reach_marks
from littlefold.booklet.scene import Scene, scene, stage
from littlefold.draft.sentence import Speech
from littlefold.drawing import Dot, Drawing, Label, Mark, Meaning, Stroke
from littlefold.geometry import Path, Point, Vector
from littlefold.sheet.grid import sample
from littlefold.sheet.words_apart import words_apart

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import Draft, DraftLine, DraftPoint, Step

ROOM = (62.0, 53.0)
"""Width and height of a step picture on the instruction sheet [mm]."""
LETTER = 2.3
"""Height of the capital that names a point [mm]."""
BESIDE = Vector(1.3, 1.1)
"""From a point to its letter, where nothing is in the way [mm]."""
PAST = 4.0
"""How far the fold of the paper is drawn beyond the draft [mm]."""
SAME = 1e-6
"""Places nearer than this on the picture are the same [mm]."""
FINE = 1.0
"""Letters keep off points that lie this far apart along the lines [mm]."""


def step_picture(
    draft: Draft,
    number: int,
    speech: Speech = Speech(),  # noqa: B008 - frozen
    room: tuple[float, float] = ROOM,
    size: float = 1.0,
) -> Drawing:
    """The sheet as it stands after a step, at the size of a room (width, height [mm]).

    Args:
        draft: The draft.
        number: The number of the step, from 1.
        speech: How dimensions are said.
        room: The size of the picture; the drawing and its letters keep within it.
        size: How much larger than usual the words are set.
    """
    step = draft.steps[number - 1]
    where = stage_scene(draft, number, room, size)
    marks = (*fold_marks(where), *_lines(where, step), *_helping(where, step), *_points(where, step))
    lengths = (mark for measured in measures(where, step) for mark in measured.marks(speech))
    added = (*lengths, *reach_marks(where, step), *_guides(where, step, speech))
    return settled((*marks, *added), step.name, size)


def stage_scene(draft: Draft, number: int, room: tuple[float, float] = ROOM, size: float = 1.0) -> Scene:
    """The scene of the picture of a step; its window is what the picture shows."""
    return scene(draft, draft.steps[number - 1].sheet, room, until=stage(draft, number), size=size)


def settled(marks: tuple[Mark, ...], title: str, size: float = 1.0) -> Drawing:
    """The marks with their words set larger by `size`, and moved off the lines and off each other."""
    words = [replace(mark, height=mark.height * size) for mark in marks if isinstance(mark, Label)]
    lines = tuple(mark for mark in marks if not isinstance(mark, Label))
    return Drawing((*lines, *words_apart(words, sample(Drawing(lines), FINE))), title)


def fold_marks(where: Scene) -> Iterator[Mark]:
    """The fold of the paper, on sheets that begin with a point on the fold."""
    first = next(where.steps(), None)
    place = first.words.get("place") if first else None
    if place is None or place.value != "fold":
        return
    x, box = where.at(Point(0.0, 0.0)).x, where.bounds
    yield Stroke(Path.line_through(Point(x, box.bottom - PAST), Point(x, box.top + PAST)), Meaning.FOLD)


def _lines(where: Scene, step: Step) -> Iterator[Mark]:
    for line in where.lines(step.number):
        yield Stroke(line.path.transformed(where.affine), _age(line, step), line.name)


def _points(where: Scene, step: Step) -> Iterator[Mark]:
    for point in where.points(step.number):
        at = where.at(point.at)
        if _is_lettered(where.short(point.name), step):
            yield Dot(at, _age(point, step), point.name)
            yield letter(at, where.short(point.name), point.name, is_new=point.step == step.number)


def _age(made: DraftPoint | DraftLine, step: Step) -> Meaning:
    return Meaning.NEW if made.step == step.number else Meaning.OLD


def _is_lettered(short: str, step: Step) -> bool:
    """Corners of a strip have no letters; points of a part that was laid down only where the sentence names them."""
    if step.kind in STRIPS:
        return False
    return "." not in short or any(said.value == short for said in step.words.values())


def letter(at: Point, short: str, name: str, *, is_new: bool) -> Label:
    """The letter of a point, beside it."""
    return Label(short, at + BESIDE, Meaning.NEW if is_new else Meaning.LETTER, LETTER, name=name)


def _helping(where: Scene, step: Step) -> Iterator[Mark]:
    """The helping lines along which points were measured, up to this step."""
    for earlier in where.steps():
        if earlier.number <= step.number and earlier.kind in MEASURED_FROM:
            yield from _way(where, earlier)


def _way(where: Scene, step: Step) -> Iterator[Mark]:
    base, made = where.point(str(_base(step))), where.draft.points.get(step.name)
    if base is not None and made is not None and not _on_fold(where, base, where.at(made.at)):
        yield Stroke(Path.line_through(base, where.at(made.at)), Meaning.CONSTRUCTION, step.name)


def _on_fold(where: Scene, start: Point, end: Point) -> bool:
    """Whether a way runs along the fold, which is drawn already."""
    x = where.at(Point(0.0, 0.0)).x
    return any(fold_marks(where)) and max(abs(start.x - x), abs(end.x - x)) < SAME


def _base(step: Step) -> float | str:
    return step.words[MEASURED_FROM[step.kind]].value


def _guides(where: Scene, step: Step, speech: Speech) -> Iterator[Mark]:
    line = where.draft.lines.get(step.name)
    if line is not None and line.guides:
        yield from guide_marks(where, line, speech)
