"""The form from the views that show a measurement, with the tape drawn where it lies."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from littlefold.body.figure.form import (
    CROTCH,
    HEIGHT,
    NAPE,
    SHOULDER_END,
    SHOULDER_NECK,
    View,
    form,
)
from littlefold.body.register import NAMES, REGISTER
from littlefold.drawing import Dot, Drawing, Label, Mark, Meaning, Stroke
from littlefold.geometry import Affine, Path, Point, Vector, curve_through

if TYPE_CHECKING:
    from collections.abc import Mapping

Tape = Callable[[View], tuple[Mark, ...]]

_SCALE: Final = 0.9  # mm of the drawing for a hundredth of the height
_APART: Final = 52.0  # hundredths between the middles of two views
_BEND: Final = 0.09  # of its width, by which the tape of a girth sags


def tape_figure(name: str) -> Drawing:
    """The views that show one measurement of the register, side by side, about 9 cm high.

    The form recedes; the tape stands out, broken where it runs behind the body, with a dot at each end.

    Raises:
        KeyError: If the register does not hold the name.
    """
    title = REGISTER[name].title
    seen = {view: TAPES[name](view) for view in View}
    views = [(view, tape) for view, tape in seen.items() if tape]
    marks: list[Mark] = []
    for place, (view, tape) in enumerate(views):
        label = Label(view.value, Point(0.0, -7.5), Meaning.TEXT, 2.2, anchor="middle", name=view.value)
        moved = Affine.translation(Vector(place * _APART, 0.0))
        marks += [mark.transformed(moved) for mark in (*form(view), *tape, label)]
    return Drawing(tuple(marks), title).transformed(Affine.scale(_SCALE))


def _line(*points: Point) -> tuple[Mark, ...]:
    """A tape along the body, through the points, with its ends marked."""
    path = Path.line_through(*points) if len(points) == 2 else curve_through(points)  # noqa: PLR2004
    ends = (Dot(points[0], Meaning.NEW, "tape"), Dot(points[-1], Meaning.NEW, "tape"))
    return (Stroke(path, Meaning.NEW, "tape"), *ends)


def _round(left: Point, right: Point) -> tuple[Mark, ...]:
    """A tape round the body between two points of its outline: before it whole, behind it broken."""
    across = right - left
    middle = left.towards(right, 0.5)
    sag = across.turned_left() * _BEND
    before = curve_through((left, middle + -sag, right))
    behind = curve_through((left, middle + sag, right))
    return (Stroke(behind, Meaning.INSIDE, "tape"), Stroke(before, Meaning.NEW, "tape"))


def _girth(front: tuple[Point, Point], side: tuple[Point, Point] | None = None) -> Tape:
    """A girth, seen from the front and, where that shows more, from the side."""

    def tape(view: View) -> tuple[Mark, ...]:
        if view is View.FRONT:
            return _round(*front)
        return _round(*side) if view is View.SIDE and side else ()

    return tape


def _along(**points: tuple[Point, ...]) -> Tape:
    """A length, by the views that show it."""

    def tape(view: View) -> tuple[Mark, ...]:
        return _line(*points[view.value]) if view.value in points else ()

    return tape


def _level(half_width: float, y: float) -> tuple[Point, Point]:
    return Point(-half_width, y), Point(half_width, y)


def _upright(x: float, low: float, high: float) -> tuple[Point, ...]:
    return Point(x, high), Point(x, low)


def _with_guide(tape: Tape, view: View, start: Point, end: Point) -> Tape:
    """The tape and a helping line in one of the views."""

    def both(seen: View) -> tuple[Mark, ...]:
        guide = (Stroke(Path.line_through(start, end), Meaning.GUIDE, "guide"),) if seen is view else ()
        return (*guide, *tape(seen))

    return both


_STOOL: Final = 47.0  # the level of the stool under a child that sits, shown on the form that stands

TAPES: Final[Mapping[str, Tape]] = {
    "stature": _along(front=_upright(-24.0, 0.0, HEIGHT)),
    "head": _girth(_level(6.9, 93.6), (Point(-6.6, 94.2), Point(8.3, 92.6))),
    "neck": _girth(_level(2.9, 85.0), (Point(-1.8, 84.9), Point(3.7, 85.2))),
    "chest": _girth(_level(9.3, 72.6), (Point(-5.4, 72.4), Point(5.8, 72.8))),
    "waist": _girth(_level(8.6, 60.4), (Point(-6.8, 60.2), Point(4.2, 60.8))),
    "hip": _girth(_level(9.9, 49.6), (Point(-5.6, 49.6), Point(6.8, 49.8))),
    "back_waist": _along(
        back=(NAPE, Point(0.0, 60.4)),
        side=(Point(3.6, 84.2), Point(5.3, 79.0), Point(5.8, 73.0), Point(4.6, 66.0), Point(4.2, 60.8)),
    ),
    "front_waist": _along(front=(SHOULDER_NECK, Point(4.4, 73.0), Point(3.8, 60.4))),
    "across_back": _along(back=(Point(-9.7, 77.2), Point(9.7, 77.2))),
    "shoulder": _along(front=(SHOULDER_NECK, SHOULDER_END), back=(SHOULDER_NECK, SHOULDER_END)),
    "scye_depth": _with_guide(
        _along(back=(NAPE, Point(0.0, 74.4))), View.BACK, Point(-10.5, 74.4), Point(10.5, 74.4)
    ),
    "upper_arm": _girth((Point(10.5, 69.4), Point(14.4, 70.4))),
    "arm": _along(front=(SHOULDER_END, Point(13.8, 71.0), Point(15.6, 60.5), Point(18.1, 47.8))),
    "wrist": _girth((Point(15.9, 47.6), Point(18.2, 47.6))),
    "fist": _girth((Point(16.1, 43.6), Point(19.8, 44.2))),
    "thigh": _girth((Point(0.3, 39.6), Point(9.5, 40.4))),
    "knee": _girth((Point(1.5, 26.6), Point(7.3, 26.6))),
    "calf": _girth((Point(1.1, 20.0), Point(7.5, 20.0))),
    "ankle": _girth((Point(2.1, 5.8), Point(5.2, 5.8))),
    "foot": _along(side=(Point(4.0, -2.0), Point(-10.6, -2.0))),
    "body_rise": _with_guide(
        _along(side=_upright(0.0, _STOOL, 60.4)), View.SIDE, Point(-9.0, _STOOL), Point(9.0, _STOOL)
    ),
    "inside_leg": _along(front=(CROTCH, Point(0.0, 0.0))),
    "outside_leg": _along(front=(Point(8.6, 60.4), Point(9.9, 49.0), Point(9.4, 30.0), Point(9.2, 0.0))),
}

if set(TAPES) != set(NAMES):
    raise ValueError("every measurement of the register has its tape, and no other")
