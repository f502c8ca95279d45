"""Cutting a drawing at the edges of an upright rectangle, so that neighbouring pages reassemble exactly.

Lines, arcs and cubics are split where they cross an edge and stay what they are; nothing is flattened.
"""

from __future__ import annotations

from itertools import pairwise
from math import acos, asin, pi
from typing import TYPE_CHECKING

from littlefold.drawing.drawing import Drawing, mark_bounds
from littlefold.drawing.marks import Mark, Stroke
from littlefold.geometry import Arc, Bounds, Cubic, Line, Path, Vector
from littlefold.geometry.equation import root_between

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.geometry import Segment

# A crossing is found to this distance [mm].  Larger: pages meet with visible steps.  Smaller: below the
# rounding of coordinates of a metre or two.
CROSSING = 1e-9

# A piece of a segment that takes less than this share of its parameter is a touch at a corner, not a line.
SLIVER = 1e-10

# A piece lies inside if its middle does, to this distance [mm]: lines that run along an edge belong to both
# sides.
ON_THE_EDGE = 1e-7


Boxed = tuple[Mark, Bounds]
"""A mark and the rectangle round it."""


def crop(drawing: Drawing, window: Bounds) -> Drawing:
    """The part of a drawing inside a rectangle, which includes its edges.

    Strokes are cut at the edges, and one that leaves and comes back becomes several of the same name.
    Fills, dots and words are kept whole when their box touches the rectangle: a writer that must not draw
    beyond it clips.
    """
    return Drawing(crop_boxed(boxed(drawing), window), drawing.title)


def boxed(drawing: Drawing) -> tuple[Boxed, ...]:
    """The marks with the rectangles round them, so that many windows can be cut from one drawing quickly."""
    return tuple((mark, mark_bounds(mark)) for mark in drawing.marks)


def crop_boxed(marks: tuple[Boxed, ...], window: Bounds) -> tuple[Mark, ...]:
    """The same as `crop`, for marks whose boxes are known."""
    return tuple(part for mark, box in marks for part in _cropped(mark, box, window))


def _cropped(mark: Mark, box: Bounds, window: Bounds) -> Iterator[Mark]:
    if not box.overlaps(window):
        return
    if not isinstance(mark, Stroke) or _holds(window, box):
        yield mark
        return
    for path in crop_path(mark.path, window):
        yield Stroke(path, mark.meaning, mark.name)


def _holds(window: Bounds, box: Bounds) -> bool:
    return (
        window.left <= box.left
        and box.right <= window.right
        and window.bottom <= box.bottom
        and box.top <= window.top
    )


def crop_path(path: Path, window: Bounds) -> tuple[Path, ...]:
    """The parts of a path inside a rectangle, in the order in which it is travelled."""
    chains: list[list[Segment]] = []
    going_on = False
    for segment in path.segments:
        for piece, inside in _pieces(segment, window):
            if inside and going_on:
                chains[-1].append(piece)
            elif inside:
                chains.append([piece])
            going_on = inside
    return tuple(Path(tuple(chain)) for chain in chains)


def _pieces(segment: Segment, window: Bounds) -> Iterator[tuple[Segment, bool]]:
    """A segment cut at the edges of the rectangle, each piece with whether it lies inside."""
    box = segment.bounds()
    if _holds(window, box):
        yield segment, True
        return
    if not box.overlaps(window):
        yield segment, False
        return
    slack = window.grown(ON_THE_EDGE)
    for low, high in _spans(_crossings(segment, window)):
        yield segment.part(low, high), slack.contains(segment.at((low + high) / 2))


def _spans(crossings: tuple[float, ...]) -> Iterator[tuple[float, float]]:
    """The spans of the parameter between crossings; slivers go to the span before them."""
    places = [0.0]
    places.extend(t for t in sorted(crossings) if SLIVER < t < 1 - SLIVER)
    places.append(1.0)
    distinct = [places[0], *(t for before, t in pairwise(places) if t - before > SLIVER)]
    return pairwise(distinct)


def _crossings(segment: Segment, window: Bounds) -> tuple[float, ...]:
    """The parameters at which a segment crosses the four lines that the edges lie on."""
    upright = [t for x in (window.left, window.right) for t in _meets(segment, Vector(1.0, 0.0), x)]
    level = [t for y in (window.bottom, window.top) for t in _meets(segment, Vector(0.0, 1.0), y)]
    return (*upright, *level)


def _meets(segment: Segment, axis: Vector, value: float) -> tuple[float, ...]:
    """The parameters at which the coordinate along an axis has a value [mm]."""
    if isinstance(segment, Line):
        return _line_meets(segment, axis, value)
    if isinstance(segment, Arc):
        return _arc_meets(segment, axis, value)
    assert isinstance(segment, Cubic), "a path is made of lines, arcs and cubics"  # noqa: S101 - our own mistake
    return _cubic_meets(segment, axis, value)


def _line_meets(line: Line, axis: Vector, value: float) -> tuple[float, ...]:
    rise = (line.end - line.start).dot(axis)
    if rise == 0:
        return ()
    return ((value - line.start.x * axis.x - line.start.y * axis.y) / rise,)


def _arc_meets(arc: Arc, axis: Vector, value: float) -> tuple[float, ...]:
    rise = value - (arc.centre.x * axis.x + arc.centre.y * axis.y)
    if abs(rise) > arc.radius:
        return ()
    share = rise / arc.radius
    angles = (acos(share), -acos(share)) if axis.x else (asin(share), pi - asin(share))
    found = (arc.parameter_of_angle(angle) for angle in angles)
    return tuple(t for t in found if t is not None)


def _cubic_meets(cubic: Cubic, axis: Vector, value: float) -> tuple[float, ...]:
    """One root for each stretch between turning points over which the coordinate passes the value."""

    def above(t: float) -> float:
        place = cubic.at(t)
        return place.x * axis.x + place.y * axis.y - value

    turns = (0.0, *cubic.extremes(axis), 1.0)
    passing = [(low, high) for low, high in pairwise(turns) if above(low) * above(high) < 0]
    touching = (t for t in turns if above(t) == 0)
    return (*touching, *(root_between(above, low, high, CROSSING) for low, high in passing))
