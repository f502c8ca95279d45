"""The upright rectangle around something."""

from __future__ import annotations

from dataclasses import dataclass

from .point import Point


@dataclass(frozen=True, slots=True)
class Bounds:
    """An upright rectangle [mm], closed: its edges belong to it."""

    left: float
    bottom: float
    right: float
    top: float

    @classmethod
    def of_points(cls, *points: Point) -> Bounds:
        """The smallest rectangle that holds all of one or more points."""
        xs = [p.x for p in points]
        ys = [p.y for p in points]
        return cls(min(xs), min(ys), max(xs), max(ys))

    @property
    def width(self) -> float:
        """From left to right [mm]."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From bottom to top [mm]."""
        return self.top - self.bottom

    @property
    def centre(self) -> Point:
        """The point in the middle."""
        return Point((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    def union(self, other: Bounds) -> Bounds:
        """The smallest rectangle that holds both."""
        return Bounds(
            min(self.left, other.left),
            min(self.bottom, other.bottom),
            max(self.right, other.right),
            max(self.top, other.top),
        )

    def grown(self, by: float) -> Bounds:
        """The rectangle with every side moved outwards [mm]; inwards if negative."""
        return Bounds(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def contains(self, point: Point) -> bool:
        """Whether a point lies inside or on an edge."""
        return self.left <= point.x <= self.right and self.bottom <= point.y <= self.top

    def overlaps(self, other: Bounds) -> bool:
        """Whether the two have a point in common."""
        return (
            self.left <= other.right
            and other.left <= self.right
            and self.bottom <= other.top
            and other.bottom <= self.top
        )
