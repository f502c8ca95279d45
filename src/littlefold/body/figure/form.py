"""The child form, drawn by ourselves: front, back and side, 100 high, feet at 0, the middle at x = 0.

Its proportions are those of size 104 of the built-in chart, rounded: chest level at 73, waist at 60, hip at 50,
crotch at 42, knee at 27 hundredths of the height.  It has no face and no hair; it is a form to lay a tape on.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from littlefold.drawing import Meaning, Stroke
from littlefold.geometry import Affine, Path, Point, Vector, curve_through

HEIGHT: Final = 100.0


class View(StrEnum):
    """From where the form is seen."""

    FRONT = "front"
    BACK = "back"
    SIDE = "side"


def _points(*pairs: tuple[float, float]) -> tuple[Point, ...]:
    return tuple(Point(x, y) for x, y in pairs)


SHOULDER_NECK: Final = Point(3.4, 83.6)  # the side of the neck, where the shoulder begins
SHOULDER_END: Final = Point(10.6, 80.6)
NAPE: Final = Point(0.0, 84.2)
CROTCH: Final = Point(0.0, 42.0)

# The outlines of the wearer's half that lies at the right of the sheet.
_HEAD: Final = _points((0, 100), (5.2, 97.4), (7.0, 92.5), (5.6, 88.0), (3.2, 86.0))
_NECK: Final = _points((3.2, 86.0), (2.9, 84.9), (3.4, 83.6))
_ARM_OUT: Final = _points((10.6, 80.6), (12.9, 77.2), (14.4, 69.0), (15.6, 60.5), (17.2, 53.0), (18.2, 47.4))
_HAND: Final = _points((18.2, 47.4), (19.9, 44.6), (19.3, 41.2), (17.1, 40.8), (16.1, 43.6), (15.9, 47.6))
_ARM_IN: Final = _points((15.9, 47.6), (14.2, 53.6), (12.2, 61.0), (10.6, 68.5), (9.4, 74.4))
_TRUNK: Final = _points((9.4, 74.4), (9.2, 71.0), (8.7, 65.5), (8.6, 60.0), (9.3, 54.0), (9.9, 49.0))
_LEG_OUT: Final = _points(
    (9.9, 49.0), (9.7, 42.0), (8.4, 33.0), (7.3, 26.5), (7.5, 20.5), (6.2, 12.0), (5.2, 5.6)
)
_FOOT_OUT: Final = _points((5.2, 5.6), (6.3, 3.0), (7.9, 1.2), (7.2, 0.0))
_SOLE: Final = _points((7.2, 0.0), (2.4, 0.0))
_FOOT_IN: Final = _points((2.4, 0.0), (1.8, 1.0), (2.1, 5.6))
_LEG_IN: Final = _points((2.1, 5.6), (1.6, 12.0), (1.1, 20.0), (1.5, 26.5), (0.9, 34.0), (0.0, 42.0))

_SIDE_HEAD: Final = _points(
    (0.8, 100), (6.4, 98.0), (8.4, 93.0), (6.6, 88.2), (3.8, 86.0)
)  # the back of the head, at the right
_SIDE_FACE: Final = _points((0.8, 100), (-4.9, 97.6), (-6.8, 92.6), (-5.6, 87.2), (-1.6, 85.8))
_SIDE_BACK: Final = _points(
    (3.8, 86.0),
    (3.6, 84.2),
    (5.2, 79.5),
    (5.8, 73.0),
    (4.6, 66.0),
    (4.2, 60.5),
    (6.2, 54.0),
    (6.8, 49.6),
    (5.0, 44.0),
)
_SIDE_LEG_BACK: Final = _points(
    (5.0, 44.0), (4.3, 35.0), (3.2, 27.0), (4.1, 20.0), (3.1, 11.0), (3.0, 5.0), (4.0, 2.0)
)
_SIDE_HEEL: Final = _points((4.0, 2.0), (4.1, 0.9), (3.2, 0.0))
_SIDE_SOLE: Final = _points((3.2, 0.0), (-9.6, 0.0))
_SIDE_TOE: Final = _points((-9.6, 0.0), (-10.6, 0.8), (-9.6, 1.9), (-6.2, 3.2), (-3.0, 5.2))
_SIDE_FRONT: Final = _points(
    (-1.6, 85.8), (-1.9, 84.2), (-4.9, 76.0), (-5.6, 71.0), (-6.9, 62.5), (-6.4, 54.5), (-5.4, 48.0)
)
_SIDE_LEG_FRONT: Final = _points(
    (-5.4, 48.0), (-4.9, 40.0), (-4.0, 30.0), (-3.5, 26.0), (-2.9, 18.0), (-2.6, 10.0), (-3.0, 5.2)
)
_SIDE_ARM_BACK: Final = _points((1.9, 79.6), (3.3, 74.0), (3.1, 66.0), (2.7, 60.5), (1.3, 53.0), (0.2, 48.0))
_SIDE_ARM_FRONT: Final = _points(
    (-1.5, 79.6), (-2.4, 74.0), (-1.9, 66.0), (-1.5, 60.5), (-2.2, 53.0), (-2.3, 48.0)
)
_SIDE_HAND: Final = _points((0.2, 48.0), (0.9, 44.8), (-0.6, 41.4), (-2.9, 41.8), (-3.4, 45.0), (-2.3, 48.0))
_SIDE_SHOULDER: Final = _points((-1.5, 79.6), (-0.6, 81.4), (1.0, 81.4), (1.9, 79.6))

_LEFT, _RIGHT = Vector(-1.0, 0.0), Vector(1.0, 0.0)
_MIRROR: Final = Affine.mirror(Point(0.0, 0.0), Vector(0.0, 1.0))
_HALF: Final = (_NECK, _ARM_OUT, _HAND, _ARM_IN, _TRUNK, _LEG_OUT, _FOOT_OUT, _SOLE, _FOOT_IN, _LEG_IN)
_PROFILE: Final = (
    _SIDE_BACK, _SIDE_LEG_BACK, _SIDE_HEEL, _SIDE_SOLE, _SIDE_TOE, _SIDE_FRONT, _SIDE_LEG_FRONT,
    _SIDE_ARM_BACK, _SIDE_ARM_FRONT, _SIDE_HAND, _SIDE_SHOULDER,
)  # fmt: skip


def form(view: View) -> tuple[Stroke, ...]:
    """The outline of the form as receding lines; front and back are alike but for the fold of the seat."""
    paths = _profile() if view is View.SIDE else _front()
    if view is View.BACK:
        seat = curve_through(_points((1.0, 43.6), (4.4, 42.6), (7.4, 43.8)))
        paths = (*paths, seat, seat.transformed(_MIRROR))
    return tuple(Stroke(path, Meaning.OLD, "form") for path in paths)


def _front() -> tuple[Path, ...]:
    head, shoulder = curve_through(_HEAD, _RIGHT), Path.line_through(SHOULDER_NECK, SHOULDER_END)
    half = (head, shoulder, *(curve_through(points) for points in _HALF))
    return (*half, *(path.transformed(_MIRROR) for path in half))


def _profile() -> tuple[Path, ...]:
    head = (curve_through(_SIDE_HEAD, _RIGHT), curve_through(_SIDE_FACE, _LEFT))
    return (*head, *(curve_through(points) for points in _PROFILE))
