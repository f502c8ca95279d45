"""Size numbers beside lines that lie close to each other: each where its line is farthest from all others."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import shapely

from littlefold.drawing import Label, Meaning
from littlefold.pattern.simple import line_string

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.geometry import Path

# Heights of the numbers [mm]: as large as the free space allows, never smaller than can be read.
LARGEST: Final = 3.0
SMALLEST: Final = 1.6

# So many times a number stands on its line, at most, and so far from each other at least [mm].
MOST: Final = 3
APART: Final = 80.0

# A number fills so much of the room beside its line, and its middle stands so many heights off the line at least.
FILLED: Final = 0.55
LEAST_OFF: Final = 0.8

# How densely an outline is searched [mm].
STEP: Final = 4.0


def size_numbers(lines: Sequence[tuple[str, Path]]) -> tuple[Label, ...]:
    """Labels for outlines that lie on each other, each given with its size, the smallest first."""
    shapes = [line_string(path) for _, path in lines]
    found: list[Label] = []
    for number, (size, path) in enumerate(lines):
        others = shapely.union_all([shape for k, shape in enumerate(shapes) if k != number])
        found.extend(_labels(size, path, others))
    return tuple(found)


def _labels(size: str, path: Path, others: shapely.Geometry) -> list[Label]:
    """The number of one size at its freest places."""
    length = path.length()
    spots = [k * STEP for k in range(int(length / STEP))]
    points = shapely.points([(point.x, point.y) for point in map(path.at_length, spots)])
    room = [LARGEST * 3] * len(spots) if others.is_empty else shapely.distance(points, others)
    taken: list[float] = []
    for _, spot in sorted(zip(room, spots, strict=True), key=lambda pair: -pair[0]):
        if len(taken) < MOST and all(min(abs(spot - at), length - abs(spot - at)) > APART for at in taken):
            taken.append(spot)
    free = dict(zip(spots, room, strict=True))
    return [_label(size, path, spot, float(free[spot])) for spot in taken]


def _label(size: str, path: Path, spot: float, room: float) -> Label:
    """The number along the inner side of its line, as high as the room allows, never upside down."""
    height = min(LARGEST, max(SMALLEST, room * FILLED))
    along = path.tangent_at_length(spot).unit()
    inward = along.turned_left()  # outlines run counter-clockwise
    reading = along if along.x > 0 or (along.x == 0 and along.y > 0) else -along
    centre = path.at_length(spot) + inward * max(min(room / 2, height), height * LEAST_OFF)
    foot = centre + reading.turned_right() * (height / 2)
    return Label(size, foot, Meaning.TITLE, height, reading.angle, "middle", f"size.{size}")
