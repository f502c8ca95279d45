"""Size numbers beside lines that lie close to each other: each where its line is farthest from all others."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import shapely

from littlefold.drawing import Label, Meaning, text_width
from littlefold.pattern.simple import line_string

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.geometry import Path, Point, Vector

# Heights of the numbers [mm]: as large as the free space allows, never smaller than can be read.
LARGEST: Final = 3.0
SMALLEST: Final = 1.6

# So many times a number stands on its line, at most, and so far from each other at least [mm].
MOST: Final = 6
APART: Final = 70.0

# Lines that run closer than this get no number there, but for their freest place [mm].
CLOSE: Final = 3.1

# Bare paper between a number and its own line, and between it and the next line, at least [mm].
OWN: Final = 0.8
NEXT: Final = 0.9

# No number can use more room than this [mm].
MOST_ROOM: Final = 10.0

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
    length, own = path.length(), line_string(path)
    spots = [_spot(size, path, k * STEP, others) for k in range(int(length / STEP))]
    taken: list[_Spot] = []
    for spot in sorted(spots, key=lambda spot: -spot.room):
        near = any(min(abs(spot.at - one.at), length - abs(spot.at - one.at)) < APART for one in taken)
        is_readable = spot.room > CLOSE or not taken
        if len(taken) < MOST and is_readable and not near and spot.stands_free(own, others):
            taken.append(spot)
    return [spot.label() for spot in taken]


def _spot(size: str, path: Path, at: float, others: shapely.Geometry) -> _Spot:
    foot, along = path.at_length(at), path.tangent_at_length(at).unit()
    apart = shapely.distance(shapely.Point(foot.x, foot.y), others)
    room = MOST_ROOM if others.is_empty else min(float(apart), MOST_ROOM)
    return _Spot(size, at, foot, along, room)


@dataclass(frozen=True, slots=True)
class _Spot:
    """A place on an outline where a number may stand beside it.

    Attributes:
        size: The number.
        at: Along the outline [mm].
        foot: The point there.
        along: The direction of the outline there, which runs counter-clockwise.
        room: To the nearest of the other lines [mm]; as much as the largest number can use.
    """

    size: str
    at: float
    foot: Point
    along: Vector
    room: float

    @property
    def height(self) -> float:
        """Of the number [mm]."""
        return min(LARGEST, max(SMALLEST, self.room - OWN - NEXT))

    @property
    def centre(self) -> Point:
        """The middle of the number, on the inner side of its line."""
        return self.foot + self.along.turned_left() * (self.height / 2 + OWN)

    def stands_free(self, own: shapely.Geometry, others: shapely.Geometry) -> bool:
        """Whether no line runs through the number, and its own is the nearest."""
        half = self.along * (text_width(self.size, self.height, "heavy") / 2)
        ends = [(end.x, end.y) for end in (self.centre + half, self.centre + -half)]
        words = shapely.buffer(shapely.LineString(ends), self.height / 2, cap_style="flat")
        to_own, to_others = shapely.distance(words, own), shapely.distance(words, others)
        return bool(to_own > OWN / 2 and (others.is_empty or to_others > to_own))

    def label(self) -> Label:
        """The number along its line, never upside down."""
        is_upright = self.along.x > 0 or (self.along.x == 0 and self.along.y > 0)
        reading = self.along if is_upright else -self.along
        foot = self.centre + reading.turned_right() * (self.height / 2)
        return Label(
            self.size, foot, Meaning.TITLE, self.height, reading.angle, "middle", f"size.{self.size}"
        )
