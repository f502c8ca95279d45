"""The marker: the lay at full size, laid on the cloth and cut through; words to be read standing, lines to be marked.

The name of a piece and how it is cut stand as large as the piece has room for, level or upright, clear of its outline,
arrow and lines.
"""

from __future__ import annotations

from itertools import product
from math import cos, pi, sin
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.drawing import Dot, Drawing, Fill, Label, Meaning, Stroke, label_bounds, text_width
from littlefold.drawing.arrow import label_along
from littlefold.drawing.words import LEADING, text_block
from littlefold.geometry import Affine, Path, Point, Vector
from littlefold.lay.chalk import words_for
from littlefold.lay.draw import OUTSIDE, beside, cloth_marks, in_place, lines_of, overall, title

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.drawing import Mark
    from littlefold.lay.lay import Lay, Placement
    from littlefold.lay.piece import InsideLine, LayPiece
    from littlefold.lay.spoken import Units

HEIGHT = 10.0
"""Capitals of this height [mm] are read standing at a table; common practice, no source."""

# Heights that are tried for the words of a piece [mm]: the tall ones with all words first, then with the name alone.
TALL = (HEIGHT, 8.0, 6.5, 5.0)
LOW = (4.0, 3.2, 2.5)

# How far words keep from every line [mm].
CLEAR = 2.0

# The corners of the words are tried on a lattice of so many steps either way.
STEPS = 40

# The height of the words along a line inside [mm], as on the pattern.
ALONG = 2.2

LEGEND = "Short broken lines and dots inside: mark them on the cloth, do not cut them."


def marker_drawing(lay: Lay, units: Units = "cm") -> Drawing:
    """The lay at full size: all that the drawing to follow has, large words, and every line that is marked on the cloth."""
    marks = [*cloth_marks(lay, 1.0, HEIGHT), *overall(lay, units, HEIGHT)]
    for placement in lay.placements:
        lines = (*lines_of(lay, placement, 1.0, units), *inside_lines(lay.piece(placement.piece), placement))
        marks += (*lines, *_name(lay, placement, lines))
    if any(piece.insides for piece in lay.pieces):
        at = Point(0.0, lay.spread.height + OUTSIDE / 3 + HEIGHT * LEADING)
        marks.append(Label(LEGEND, at, Meaning.TEXT, HEIGHT))
    return Drawing(tuple(marks), title(lay, units))


def inside_lines(piece: LayPiece, placement: Placement) -> Iterator[Mark]:
    """The lines and points inside a piece, where they come on the cloth."""
    for inside in piece.insides:
        for points in in_place(inside.points, piece, placement):
            yield from _marked(inside, points, piece.name)


def _marked(inside: InsideLine, points: tuple[Point, ...], name: str) -> Iterator[Mark]:
    start, end = points[0], points[-1]
    if len(points) == 1:
        yield Dot(start, Meaning.INSIDE, name)
        yield Label(inside.words, start + Vector(ALONG, -ALONG / 2), Meaning.INSIDE, ALONG, name=name)
        return
    yield Stroke(Path.line_through(*points), Meaning.INSIDE, name)
    if inside.words and text_width(inside.words, ALONG) < start.distance(end):
        yield label_along(inside.words, start, end, Meaning.INSIDE, height=ALONG, name=name)


def _name(lay: Lay, placement: Placement, lines: tuple[Mark, ...]) -> tuple[Label, ...]:
    """The words of a piece, as tall as they find room; at the least its number."""
    piece, shape = lay.piece(placement.piece), lay.shape(placement)
    start, end = (placement.affine.apply(point) for point in piece.arrow)
    free = shapely.difference(shapely.buffer(shape, -CLEAR), shapely.union_all(list(_taken(lines))))
    named = f"{piece.number} {piece.title or piece.name}"
    in_all = f", {piece.copies} in all" if piece.copies > 1 else ""
    both = (named, f"{words_for(lay, placement)}{in_all}")
    for (words, height), turn in product(_tries(both), (0.0, pi / 2)):
        back = Affine.rotation(turn)
        spot = _spot(_turned(free, -turn), words, height, back.inverse().apply(start.towards(end, 0.5)))
        if spot is not None:
            at = back.apply(spot)
            return text_block(words, at, height=height, angle=turn, meaning=Meaning.TITLE, name=piece.name)
    at = beside(shape, start, end, LOW[-1])
    return (Label(str(piece.number), at, Meaning.TITLE, LOW[-1], anchor="middle", name=piece.name),)


def _tries(both: tuple[str, str]) -> Iterator[tuple[tuple[str, ...], float]]:
    """What is tried in turn: all words or the name alone, tall; then the same low; then the number alone."""
    for heights in (TALL, LOW):
        yield from product((both, both[:1]), heights)
    yield from product(((both[0].split(" ")[0],),), (*TALL, *LOW))


def _taken(lines: Iterable[Mark]) -> Iterator[shapely.Geometry]:
    """What words keep clear of: lines with a margin round them, and other words."""
    for mark in lines:
        if isinstance(mark, Label):
            box = label_bounds(mark)
            yield shapely.box(box.left, box.bottom, box.right, box.top)
        elif isinstance(mark, Dot):
            yield shapely.buffer(shapely.Point(mark.at.x, mark.at.y), CLEAR)
        elif isinstance(mark, Fill) or mark.meaning is not Meaning.CUT:
            points = [(point.x, point.y) for point in mark.path.flatten(1.0)]
            yield shapely.buffer(shapely.LineString(points), CLEAR)


def _turned(shape: shapely.Geometry, turn: float) -> shapely.Geometry:
    """A shape turned about the origin by an angle [rad]."""
    c, s = cos(turn), sin(turn)
    return shapely.transform(shape, lambda xy: xy @ np.array(((c, s), (-s, c)))) if turn else shape


def _spot(free: shapely.Geometry, words: tuple[str, ...], height: float, near: Point) -> Point | None:
    """Where the first of some lines of words begins, as near as may be to a point; None where they have no room."""
    boxes = [
        label_bounds(mark) for mark in text_block(words, Point(0, 0), height=height, meaning=Meaning.TITLE)
    ]
    low, high, width = boxes[-1].bottom, boxes[0].top, max(box.right for box in boxes)
    left, bottom, right, top = free.bounds
    if not (right - left >= width and top - bottom >= high - low):
        return None
    xs, ys = np.meshgrid(
        np.linspace(left, right - width, STEPS), np.linspace(bottom - low, top - high, STEPS)
    )
    shapely.prepare(free)
    fits = shapely.covers(free, shapely.box(xs, ys + low, xs + width, ys + high))
    if not fits.any():
        return None
    far = np.hypot(xs + width / 2 - near.x, ys + (low + high) / 2 - near.y)
    best = np.unravel_index(np.argmin(np.where(fits, far, np.inf)), far.shape)
    return Point(float(xs[best]), float(ys[best]))
