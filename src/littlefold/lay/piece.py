"""A piece as the lay sees it: its cutting line, laid with the grain along x, and what must be cut of it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import cos, radians, sin

import numpy as np
import shapely

from littlefold.geometry import Point
from littlefold.lay.convex import Points, polygon_of

# Two shapes are the same if they differ by no more than this share of their area.  Larger: a left and a right
# front with a deeper neck pass for twins; smaller: flattened curves tell a mirror image from its pattern.
SAME_SHAPE = 2e-3


@dataclass(frozen=True, slots=True)
class InsideLine:
    """A line inside a piece that is marked on the cloth and not cut at once: a dart, pleat, slit, buttonhole ...

    Attributes:
        words: What it is, in words; empty where the pattern does not say.
        points: Its corners, curves already flattened [mm]; one alone for a point that is marked.
    """

    words: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class LayPiece:
    """One pattern piece, ready to be laid.

    The grain runs along x.  A piece on the fold is the half as drawn, its fold edge on y = 0 and the rest above.

    Attributes:
        name: The name in the recipe.
        ring: The corners of the cutting line, counter-clockwise, curves already flattened [mm].
        copies: How many are wanted in all; a pair counts two.
        on_fold: Whether `ring` is a half that must lie with its straight edge on a fold, or be unfolded.
        pair: Whether half of the copies are mirror images.
        bias: Whether the grain arrow lies at 45 degrees to the selvedge.
        crossgrain: Whether the piece may as well lie square to the grain (felt, interfacing).
        tilt: By how much it may lie off its grain either way [degrees], both of a pair alike.
        one_way: Whether this piece must not be turned end for end even on cloth without nap.
        number: The number of the piece in the lay.
        title: The name on the paper.
        match: The point that is to meet the stripes; None where stripes do not matter.
        grain: The ends of the grain arrow.
        notches: The feet of the notches, with a point further outward of each.
        snips: The lines that mark the notches on the cloth, one or two of each, from the cutting line inwards.
        insides: The lines and points inside that are marked on the cloth.
    """

    name: str
    ring: tuple[Point, ...]
    copies: int = 1
    on_fold: bool = False
    pair: bool = False
    bias: bool = False
    crossgrain: bool = False
    one_way: bool = False
    number: int = 0
    title: str = ""
    match: Point | None = None
    grain: tuple[Point, Point] | None = None
    notches: tuple[tuple[Point, Point], ...] = ()
    snips: tuple[tuple[Point, Point], ...] = ()
    tilt: float = 0.0
    insides: tuple[InsideLine, ...] = ()

    @property
    def arrow(self) -> tuple[Point, Point]:
        """The ends of the grain arrow, or a line through the middle where none was drawn."""
        return self.grain or _chord(self.ring)

    def matching(self, number: int) -> Point:
        """The point of a notch, by its number from 0, that is to meet the stripes.

        Of a piece that is folded or unfolded the middle lies on the middle of a lengthwise stripe, so that both its
        sides are striped alike (Vilumsone-Nemes, *Industrial Cutting of Textile Materials*, pp. 216-231).
        """
        foot = self.notches[number][0]
        return Point(foot.x, 0.0) if self.on_fold else foot

    @property
    def angles(self) -> tuple[float, ...]:
        """The angles at which it may lie, mirror images and turns end for end apart [degrees]."""
        if self.bias:
            return (45.0, -45.0)
        straight = (0.0, 90.0) if self.crossgrain else (0.0,)
        return (*straight, self.tilt, -self.tilt) if self.tilt else straight

    @property
    def polygon(self) -> shapely.Polygon:
        """The shape as drawn."""
        return _polygon(self.ring)

    @property
    def whole(self) -> shapely.Polygon:
        """The shape as cut from open cloth: unfolded where it lies on a fold."""
        return _unfolded(self.ring) if self.on_fold else _polygon(self.ring)

    @property
    def area(self) -> float:
        """The cloth that all copies take [mm2]."""
        return float(self.whole.area) * self.copies

    @property
    def fold_length(self) -> float:
        """The length of the edge on the fold [mm]; 0 for a piece that is not on the fold."""
        if not self.on_fold:
            return 0.0
        on = [p.x for p in self.ring if abs(p.y) <= ON_FOLD]
        return max(on) - min(on) if on else 0.0


ON_FOLD = 0.01
"""A point this near to the fold [mm] lies on it."""


def points_of(ring: tuple[Point, ...]) -> Points:
    """The corners as an array."""
    return np.array([(p.x, p.y) for p in ring], dtype=np.float64)


@lru_cache(maxsize=512)
def _polygon(ring: tuple[Point, ...]) -> shapely.Polygon:
    return polygon_of(points_of(ring))


@lru_cache(maxsize=512)
def _unfolded(ring: tuple[Point, ...]) -> shapely.Polygon:
    """The half and its mirror image in y = 0, joined along the fold."""
    half = points_of(ring)
    half[np.abs(half[:, 1]) <= ON_FOLD, 1] = 0.0
    upper = polygon_of(half)
    whole = shapely.union(upper, mirrored(upper))
    return shapely.Polygon(whole.exterior) if isinstance(whole, shapely.Polygon) else whole.convex_hull


def _chord(ring: tuple[Point, ...]) -> tuple[Point, Point]:
    """The longest level line inside a shape at the height of an inner point, a fifth taken off at either end."""
    polygon = _polygon(ring)
    left, _, right, _ = polygon.bounds
    y = polygon.representative_point().y
    level = shapely.intersection(polygon, shapely.LineString([(left, y), (right, y)]))
    longest = max(shapely.get_parts(level), key=shapely.length)
    start, _, end, _ = longest.bounds
    inset = (end - start) / 5
    return Point(float(start + inset), float(y)), Point(float(end - inset), float(y))


def rotated(polygon: shapely.Polygon, degrees: float) -> shapely.Polygon:
    """A polygon turned counter-clockwise about the origin."""
    if degrees == 0.0:
        return polygon
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return shapely.transform(polygon, lambda xy: xy @ np.array(((c, s), (-s, c))))


def mirrored(polygon: shapely.Polygon) -> shapely.Polygon:
    """A polygon mirrored across the grain, in y = 0."""
    return shapely.transform(polygon, lambda xy: xy * np.array((1.0, -1.0)))


def turned(polygon: shapely.Polygon) -> shapely.Polygon:
    """A polygon turned end for end."""
    return shapely.transform(polygon, lambda xy: -xy)


def mirrors_to_itself(polygon: shapely.Polygon, *, may_turn: bool) -> bool:
    """Whether the mirror image of a piece is the piece again, turned end for end if it may be."""
    across = mirrored(polygon)
    return _same(polygon, across) or (may_turn and _same(polygon, turned(across)))


def _same(first: shapely.Polygon, second: shapely.Polygon) -> bool:
    """Whether two polygons differ only by where they are."""
    here, there = first.bounds, second.bounds
    moved = shapely.transform(second, lambda xy: xy + np.array((here[0] - there[0], here[1] - there[1])))
    return bool(shapely.symmetric_difference(first, moved).area <= SAME_SHAPE * first.area)
