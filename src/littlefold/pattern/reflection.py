"""The reflection of a line in a fold, straight or curved.

A point that lies at some distance from the fold, square to it, comes to lie at the same distance on the other
side, square to the same place of the fold.  On a straight fold that is the mirror, and every curve stays what
it is.  On a curved fold cloth must be eased or stretched to lie flat; square to the fold it keeps its length,
which is what is drawn here, fitted by cubics to `fitted.FIT`.
"""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING

from littlefold.geometry import Affine, Cubic, Line, Path
from littlefold.pattern.fitted import fitted

if TYPE_CHECKING:
    from littlefold.geometry import Point
    from littlefold.pattern.margin import Margin


def depth(fold: Margin, point: Point) -> float:
    """How far inside the stitch line of a margin a point lies [mm]; negative outside."""
    place = fold.stitch.foot(point)
    return (fold.stitch.at(place) - point).dot(fold.outward(place))


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
    joints = accumulate((segment.length() for segment in path.segments), initial=0.0)
    return fitted(lambda place: _image(path.at_length(place), fold, level), *joints)


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
    """Whether all feet of a path lie on the straight beginning of the fold."""
    limit = fold.stitch.straight_start()
    return all(fold.stitch.foot(point) <= limit for point in path.flatten())


def _mirror(fold: Margin, level: float) -> Affine:
    start, along = fold.stitch.path.start, fold.stitch.path.start_tangent
    mirror = Affine.mirror(start, along)
    if level == 0:
        return mirror
    return mirror.then(Affine.mirror(start + fold.outward(0.0) * (level / 2), along))


def _image(point: Point, fold: Margin, level: float) -> Point:
    place = fold.stitch.foot(point)
    foot, out = fold.stitch.at(place), fold.outward(place)
    deep = (foot - point).dot(out)
    return foot + out * (deep if level == 0 else level - deep)
