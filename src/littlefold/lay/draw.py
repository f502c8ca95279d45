"""The lay drawing to follow with the scissors; `full_size` makes the marker of the same parts.

x runs along the cloth from the cut end, the lower edge is the fold where there is one.  The drawing is made at full
size; whoever puts it on a page makes it smaller, and the words keep their height.  Told how much smaller, it leaves
out words for which a piece will have no room: the number always stays, beside the arrow if the piece is too narrow for both.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import shapely

from littlefold.drawing import Dot, Drawing, Label, Mark, Meaning, Stroke, label_bounds
from littlefold.drawing.arrow import arrow_head, label_along
from littlefold.geometry import Path, Point
from littlefold.lay.chalk import lower_edge
from littlefold.lay.convex import ring_of
from littlefold.lay.piece import ON_FOLD
from littlefold.lay.spoken import spot, tape
from littlefold.lay.ways import Way

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.lay.lay import Lay, Placement
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.spoken import Units

SMALL = 2.0
"""The height of the figures of a dimension on the final paper [mm]."""

# The head of a grain arrow [mm at full size], and at least that much of the page.
HEAD = 16.0
HEAD_ON_PAPER = 2.5

# Words of this height stand on the page [mm]: about what `sheet.reduced` makes of them.
ON_PAPER = 2.0

# How far outside the cloth its dimensions stand [mm at full size].
OUTSIDE = 35.0

# The corners of a spot that is told by its place and its two sides.
BOX = 4


def lay_drawing(lay: Lay, divisor: float = 1.0, units: Units = "cm") -> Drawing:
    """The cloth with its folds, every cut with number, title, arrow, notches and the places of the arrow's ends.

    Args:
        lay: The lay.
        divisor: It will be shown at 1 : divisor; what has no room then is left to the chalk table.
        units: What the cutter's tape shows.
    """
    marks = [*cloth_marks(lay, divisor), *overall(lay, units)]
    for placement in lay.placements:
        marks += _cut(lay, placement, divisor, units)
    return Drawing(tuple(marks), title(lay, units))


def title(lay: Lay, units: Units) -> str:
    """The name of the drawing: which cloth, how it lies, how long it is."""
    return f"{lay.cloth.name}: {lay.spread.way}, {tape(lay.cloth_length, units)}"


def cloth_end(lay: Lay) -> float:
    """Where the cloth that is bought or in hand ends on the spread, or the lay if it is longer [mm]."""
    here = lay.cloth.length_to_lay() or lay.to_buy - lay.cloth.end_loss
    return max(here / lay.spread.sheets, lay.length)


def cloth_marks(lay: Lay, divisor: float, height: float = SMALL) -> Iterator[Mark]:
    """The edges and folds of the cloth, its layers in words of a height on the page [mm], what cannot be used of it."""
    right, top = lay.length, lay.spread.height
    edges = {
        (Point(0, 0), Point(right, 0)): Meaning.FOLD if lay.spread.fold_low else Meaning.CLOTH,
        (Point(0, top), Point(right, top)): Meaning.FOLD if lay.spread.fold_high else Meaning.CLOTH,
        (Point(0, 0), Point(0, top)): Meaning.FOLD if _folded_across(lay) else Meaning.CLOTH,
        (Point(right, 0), Point(right, top)): Meaning.CLOTH,
    }
    for ends, meaning in edges.items():
        yield Stroke(Path.line_through(*ends), meaning)
    for zone in lay.spread.zones[1:]:
        yield Stroke(
            Path.line_through(Point(0, zone.low), Point(right, zone.low)), Meaning.CLOTH, "layers change"
        )
    for zone in lay.spread.zones:
        words = "1 layer" if zone.layers == 1 else f"{zone.layers} layers"
        beside = cloth_end(lay) + max(OUTSIDE / 4, SMALL * divisor)
        yield Label(words, Point(beside, (zone.low + zone.high) / 2), Meaning.GUIDE, height)
    for hole in lay.holes:
        yield from _unusable(hole, is_crossed=lay.spread.way is not Way.SCRAPS)


def _unusable(hole: shapely.Polygon, *, is_crossed: bool) -> Iterator[Mark]:
    """What cannot be used of the cloth; a damaged spot is crossed out from corner to corner, or it looks like a piece."""
    corners = [Point(float(x), float(y)) for x, y in ring_of(hole)]
    ways = [(*corners, corners[0])]
    if is_crossed and len(corners) == BOX:
        ways += [(corners[0], corners[2]), (corners[1], corners[3])]
    for way in ways:
        yield Stroke(Path.line_through(*way), Meaning.CAUTION, "not to be used")


def _folded_across(lay: Lay) -> bool:
    return lay.spread.way in (Way.CROSSWISE, Way.FOUR_LAYERS)


def overall(lay: Lay, units: Units, height: float = SMALL) -> Iterator[Mark]:
    """The length and the width of the spread, outside the cloth, and what the figures on the pieces mean."""
    right, top = lay.length, lay.spread.height
    yield from _dimension(Point(0, -OUTSIDE), Point(right, -OUTSIDE), "length", units, height)
    yield from _dimension(Point(-OUTSIDE, 0), Point(-OUTSIDE, top), "width", units, height)
    note = f"Figures: {units} from the cut end / from {lower_edge(lay)}."
    yield Label(note, Point(0, top + OUTSIDE / 3), Meaning.TEXT, height)


def _dimension(start: Point, end: Point, name: str, units: Units, height: float) -> Iterator[Mark]:
    way = end - start
    yield Stroke(Path.line_through(start, end), Meaning.GUIDE, name)
    yield arrow_head(end, way, Meaning.GUIDE, HEAD, name)
    yield arrow_head(start, -way, Meaning.GUIDE, HEAD, name)
    yield label_along(tape(way.length, units), start, end, Meaning.GUIDE, height=height, name=name)


def _cut(lay: Lay, placement: Placement, divisor: float, units: Units) -> Iterator[Mark]:
    piece = lay.piece(placement.piece)
    shape = lay.shape(placement)
    yield from lines_of(lay, placement, divisor, units)
    start, end = (placement.affine.apply(point) for point in piece.arrow)
    words, middle = f"{piece.number} {piece.title or piece.name}", start.towards(end, 0.5)
    if _width(words, Meaning.TITLE) * divisor <= _room(shape, middle):
        yield Label(words, middle, Meaning.TITLE, anchor="middle")
    else:
        number = Label(str(piece.number), middle, Meaning.TITLE, anchor="middle")
        yield replace(number, at=beside(shape, start, end, label_bounds(number).height * divisor))


def lines_of(lay: Lay, placement: Placement, divisor: float, units: Units) -> Iterator[Mark]:
    """A cut without its name: its outline, notches and arrow, and where the ends of the arrow come."""
    piece = lay.piece(placement.piece)
    corners = [Point(float(x), float(y)) for x, y in ring_of(lay.shape(placement))]
    yield Stroke(Path.line_through(*corners, corners[0]), Meaning.CUT, piece.name)
    for snip in piece.snips:
        for ends in in_place(snip, piece, placement):
            yield Stroke(Path.line_through(*ends), Meaning.NOTCH, piece.name)
    start, end = (placement.affine.apply(point) for point in piece.arrow)
    yield from _arrow(start, end, max(HEAD, HEAD_ON_PAPER * divisor), piece.name)
    yield from _places(start, end, divisor, units)


def in_place(points: tuple[Point, ...], piece: LayPiece, placement: Placement) -> Iterator[tuple[Point, ...]]:
    """A line of a piece where it comes on the cloth; on a piece that is laid unfolded also that of the other half."""
    affine = placement.affine
    yield tuple(affine.apply(point) for point in points)
    if piece.on_fold and not placement.half:
        yield tuple(affine.apply(Point(point.x, -point.y)) for point in points)


def beside(shape: shapely.Polygon, start: Point, end: Point, high: float) -> Point:
    """The foot of a number as high as `high` [mm] in the widest part of a shape that the grain arrow leaves free."""
    arrow = shapely.LineString([(start.x, start.y), (end.x, end.y)])
    free = shapely.difference(shape, shapely.buffer(arrow, high / 4))
    parts = [part for part in shapely.get_parts(free) if isinstance(part, shapely.Polygon)]
    radii = [shapely.maximum_inscribed_circle(part, tolerance=1.0) for part in parts]
    widest = max(radii, key=shapely.length)
    x, y = shapely.get_coordinates(widest)[0]
    return Point(float(x), float(y) - high / 3)


def _places(start: Point, end: Point, divisor: float, units: Units) -> Iterator[Mark]:
    """Both ends of a grain arrow, with their distances where the arrow is long enough for them."""
    ends = {point: spot(point, units) for point in (start, end)}
    have_room = max(_width(words, Meaning.GUIDE) for words in ends.values()) * divisor < start.distance(end)
    for point, words in ends.items():
        yield Dot(point, Meaning.GUIDE)
        if have_room:
            yield Label(words, point, Meaning.GUIDE, SMALL, anchor="middle")


def _room(shape: shapely.Polygon, at: Point) -> float:
    """How long the level line through a point is inside a shape [mm]; 0 where the point lies outside."""
    left, _, right, _ = shape.bounds
    level = shapely.intersection(shape, shapely.LineString([(left, at.y), (right, at.y)]))
    here = shapely.Point(at.x, at.y)
    parts = (part for part in shapely.get_parts(level) if shapely.distance(part, here) <= ON_FOLD)
    return max((float(part.length) for part in parts), default=0.0)


def _width(words: str, meaning: Meaning) -> float:
    """How wide words are on the page [mm]."""
    return label_bounds(Label(words, Point(0, 0), meaning, ON_PAPER)).width


def _arrow(start: Point, end: Point, head: float, name: str) -> Iterator[Mark]:
    """The grain arrow; its one head points the way the piece points, so that nap can be seen."""
    yield Stroke(Path.line_through(start, end), Meaning.GRAIN, name)
    yield arrow_head(end, end - start, Meaning.GRAIN, head, name)
