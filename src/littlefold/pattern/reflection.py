"""The reflection of a line in a fold, straight or curved.

A point that lies at some distance from the fold, square to it, comes to lie at the same distance on the other
side, square to the same place of the fold.  On a straight fold that is the mirror, and every curve stays what
it is.  On a curved fold cloth must be eased or stretched to lie flat; square to the fold it keeps its length,
which is what is drawn here, followed by cubics to `FIT`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry import Affine, Cubic, Line, Path
from littlefold.geometry.fit import Sample, fitted

if TYPE_CHECKING:
    from littlefold.geometry import Point, Segment
    from littlefold.pattern.margin import Margin

# A reflection in a curved fold is nowhere further from the true one than this [mm].  Larger: a turned edge
# visibly misses its seam.  Smaller: more cubics.
FIT = 0.005


def depth(fold: Margin, point: Point) -> float:
    """How far inside the stitch line of a margin a point lies [mm]; negative outside."""
    footing = fold.stitch.footing(point)
    return (point - footing.point).dot(footing.along.turned_left()) * fold.inside


def turned_out(path: Path, fold: Margin, level: float) -> Path:
    """Where cloth that will lie along a path, once it is turned, lies while it is flat.

    Args:
        path: On the inside of the fold.
        fold: The edge that is turned.
        level: 0 for cloth turned once; twice the distance between the folds for what is turned under.  A
            point at the depth v comes to lie v outside the stitch line, or `level` - v.
    """
    if _folds_straight(path, fold):
        return path.transformed(_mirror(fold, level))
    cubics = [fitted(Reflected(segment, fold, level), 0.0, 1.0, FIT) for segment in path.segments]
    return Path.joined(*(Path(chain) for chain in cubics))


@dataclass(frozen=True, slots=True)
class Reflected:
    """The reflection of a segment in a curved fold, as a curve that can be followed.

    With the foot f, the unit tangent T, the left normal N and the curvature k of the fold, a point is f + h N
    and moves by (1 - k h) T ds + N dh; its reflection has another height h' over the same foot.
    """

    segment: Segment
    fold: Margin
    level: float

    def sample(self, t: float) -> Sample:
        """The reflected point at a parameter of the segment, with its direction and speed."""
        point, way = self.segment.at(t), self.segment.derivative(t)
        footing = self.fold.stitch.footing(point)
        left = footing.along.turned_left()
        height, rise = (point - footing.point).dot(left), way.dot(left)
        forward = way.dot(footing.along) / (1 - footing.bend * height)
        height, rise = self._turned(height, rise)
        moved = footing.along * (forward * (1 - footing.bend * height)) + left * rise
        place, unit = footing.point + left * height, moved.unit()
        return Sample(place.x, place.y, unit.x, unit.y, moved.length)

    def _turned(self, height: float, rise: float) -> tuple[float, float]:
        """The height and its change after turning once, or twice."""
        if self.level == 0:
            return -height, -rise
        return height - self.level * self.fold.inside, rise


def ending_at(path: Path, end: Point) -> Path:
    """A reflected line with its end moved on to the line it runs up to, itself right to a tolerance only."""
    last = path.segments[-1]
    if isinstance(last, Line):
        return Path((*path.segments[:-1], Line(last.start, end)))
    if isinstance(last, Cubic):
        moved = Cubic(last.start, last.control1, last.control2 + (end - last.end), end)
        return Path((*path.segments[:-1], moved))
    return path


def _folds_straight(path: Path, fold: Margin) -> bool:
    """Whether all feet of a path lie on the straight beginning of the fold, or before it."""
    start, along = fold.stitch.path.start, fold.stitch.path.start_tangent
    limit = fold.stitch.straight_start()
    return all((point - start).dot(along) <= limit for point in path.flatten())


def _mirror(fold: Margin, level: float) -> Affine:
    start, along = fold.stitch.path.start, fold.stitch.path.start_tangent
    mirror = Affine.mirror(start, along)
    if level == 0:
        return mirror
    return mirror.then(Affine.mirror(start + fold.outward(0.0) * (level / 2), along))
