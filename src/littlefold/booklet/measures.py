"""What a step measures, drawn: its dimension, the arcs of the compass, the guide points of a curve."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from types import MappingProxyType
from typing import TYPE_CHECKING

from littlefold.drawing import Dot, Label, Mark, Meaning, Stroke, dimension
from littlefold.geometry import Arc, Path, Point

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.booklet.scene import Scene
    from littlefold.draft.model import DraftLine, Step
    from littlefold.draft.sentence import Speech

MEASURED_FROM: Mapping[str, str] = MappingProxyType(
    {
        "point.offset": "base",
        "point.towards": "base",
        "point.beyond": "past",
        "point.square": "at",
        "point.bisector": "corner",
        "point.angle": "base",
    }
)
"""Steps that measure along a straight way, and the word that names its beginning."""

STRIPS = frozenset({"piece.rectangle", "piece.bias", "piece.band"})
"""Steps that draw a strip in one go; its width and height are measured."""

AWAY = 4.4
"""How far a dimension stands off what it measures [mm]."""
SHORTEST = 1.5
"""A way shorter than this on the picture has no room for arrows [mm]."""
SWING = pi / 14
"""How far the compass is drawn to either side of the point it finds [rad]."""
ROOM_FOR_DEPTHS = 40.0
"""On a curve shorter than this on the picture the depths stand in the sentence only [mm]."""
DEPTH_WORDS = 1.8
"""Height of the capital in the depths of a curve [mm]."""


@dataclass(frozen=True, slots=True)
class Measure:
    """A length on a picture, from `start` to `end`; `side` is 1 where its dimension stands on the left of the way."""

    start: Point
    end: Point
    length: float
    side: int
    name: str

    def marks(self, speech: Speech, lane: int = 1) -> tuple[Mark, ...]:
        """The dimension line, `lane` places away from what it measures."""
        said = speech.length(abs(self.length))
        return dimension(self.start, self.end, said, self._away(lane), self.name)

    def line(self, lane: int) -> tuple[Point, Point]:
        """Where the dimension line runs."""
        off = (self.end - self.start).unit().turned_left() * self._away(lane)
        return self.start + off, self.end + off

    def _away(self, lane: int) -> float:
        return AWAY * lane * self.side


def measures(where: Scene, step: Step) -> Iterator[Measure]:
    """What a step measures along a straight way; two lengths where it goes round a corner."""
    if step.kind in STRIPS:
        yield from _sides(where, step)
        return
    if step.value is None:
        return
    for (start, end), length in zip(_ways(where, step), (step.value, *_second(step)), strict=False):
        if start.distance(end) > SHORTEST:
            side = 1 if _outside(where, start, end) else -1
            yield Measure(start, end, length, side, step.name)


def _sides(where: Scene, step: Step) -> Iterator[Measure]:
    """The width and the height of a strip, below it and on its left."""
    box = where.bounds
    corner = Point(box.left, box.bottom)
    across, up = Point(box.right, box.bottom), Point(box.left, box.top)
    yield Measure(corner, across, box.width * where.divisor, -1, step.name)
    yield Measure(corner, up, box.height * where.divisor, 1, step.name)


def _second(step: Step) -> tuple[float, ...]:
    leg = step.words.get("leg_distance")
    return (float(leg.value),) if leg else ()


def _ways(where: Scene, step: Step) -> Iterator[tuple[Point, Point]]:
    made = where.draft.points.get(step.name)
    if made is None:
        return
    end = where.at(made.at)
    if step.kind == "point.inward":
        fold = where.at(Point(0.0, made.at.y))
        yield fold, end
    elif step.kind in MEASURED_FROM:
        base = where.point(str(step.words[MEASURED_FROM[step.kind]].value))
        if base is not None:
            yield from _legs(step, base, end)


def _legs(step: Step, base: Point, end: Point) -> Iterator[tuple[Point, Point]]:
    if "leg_distance" not in step.words:
        yield base, end
        return
    upright = step.words["way"].value in {"above", "below"}
    corner = Point(base.x, end.y) if upright else Point(end.x, base.y)
    yield base, corner
    yield corner, end


def _outside(where: Scene, start: Point, end: Point) -> bool:
    """Whether the left of the way looks away from the middle of the sheet."""
    return (end - start).cross(where.bounds.centre - start) <= 0


def reach_marks(where: Scene, step: Step) -> Iterator[Mark]:
    """The two strokes of the compass that find a point at given distances from two others."""
    made = where.draft.points.get(step.name)
    if step.kind != "point.reach" or made is None:
        return
    end = where.at(made.at)
    for word in ("first", "second"):
        centre = where.point(str(step.words[word].value))
        if centre is not None and centre.distance(end) > SHORTEST:
            way = end - centre
            arc = Arc(centre, way.length, way.angle - SWING, 2 * SWING)
            yield Stroke(Path((arc,)), Meaning.GUIDE, step.name)


def guide_marks(where: Scene, line: DraftLine, speech: Speech) -> Iterator[Mark]:
    """The straight line from end to end of a curve, and how far the curve lies from it at its guide points."""
    start, end = line.path.start, line.path.end
    yield Stroke(Path.line_through(where.at(start), where.at(end)), Meaning.GUIDE, line.name)
    across = (end - start).unit().turned_left()
    for guide in line.guides:
        foot = start.towards(end, guide.at)
        tip = where.at(foot + across * guide.depth)
        if where.at(foot).distance(tip) > 0:
            yield Stroke(Path.line_through(where.at(foot), tip), Meaning.GUIDE, line.name)
        yield Dot(tip, Meaning.GUIDE, line.name)
        if start.distance(end) / where.divisor >= ROOM_FOR_DEPTHS:
            yield Label(speech.depth(guide.depth), tip, Meaning.GUIDE, DEPTH_WORDS)
