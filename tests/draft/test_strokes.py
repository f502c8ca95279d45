"""Every way to draw a line, against plane geometry worked out by hand."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

import pytest

from littlefold.geometry import Path, Point, turn_between

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = """title "Strokes"
drawing s
point A at the start
point B right of A by 4 cm
point C above A by 3 cm
point D at 40 mm across and 30 mm up"""


def path(draft: Draft, name: str = "l") -> Path:
    assert not draft.problems, draft.problems[0].message
    return draft.lines[f"s.{name}"].path


def depth_at_middle(curve: Path) -> float:
    """The distance from the middle of the chord to the curve, square to the chord, by bisection on the curve."""
    chord = curve.end - curve.start
    middle, across = curve.start.towards(curve.end, 0.5), chord.unit().turned_left()
    low, high = 0.0, curve.length()
    for _ in range(80):
        half = (low + high) / 2
        if (curve.at_length(half) - middle).dot(chord.unit()) < 0:
            low = half
        else:
            high = half
    return (curve.at_length(low) - middle).dot(across)


def test_straight_through_points(drafted: Draft) -> None:
    """line l from A to B to D"""
    assert path(drafted).length() == pytest.approx(70)


def test_parallel_line(drafted: Draft) -> None:
    """line l parallel to A-B by 1 cm nearer C"""
    line = path(drafted)
    assert (line.start.x, line.start.y, line.end.x, line.end.y) == pytest.approx((0, 10, 40, 10))


def test_even_curve_by_depth(drafted: Draft) -> None:
    """curve l from A to B depth 8 mm upward"""
    curve = path(drafted)
    assert depth_at_middle(curve) == pytest.approx(8, abs=1e-6)
    assert turn_between(curve.start_tangent, Point(1, 0) - Point(0, 0)) == pytest.approx(
        -turn_between(curve.end_tangent, Point(1, 0) - Point(0, 0))
    )


def test_curve_by_directions_and_depth(drafted: Draft) -> None:
    """curve l from A going up to D going right depth 7 mm upward"""
    curve = path(drafted)
    assert (curve.start_tangent.x, curve.start_tangent.y) == pytest.approx((0, 1), abs=1e-9)
    assert (curve.end_tangent.x, curve.end_tangent.y) == pytest.approx((1, 0), abs=1e-9)
    assert depth_at_middle(curve) == pytest.approx(7, abs=1e-5)


def test_curve_past_a_corner(drafted: Draft) -> None:
    """curve l from A going up to D going right passing 1 cm from corner C"""
    curve = path(drafted)
    corner = Point(0, 30)
    on_bisector = min(
        (curve.at_length(s / 1000 * curve.length()) for s in range(1001)),
        key=lambda point: abs((point.x - corner.x) + (point.y - corner.y)),
    )
    assert on_bisector.distance(corner) == pytest.approx(10, abs=0.05)


def test_a_quarter_circle_comes_out_of_directions_alone(drafted: Draft) -> None:
    """
    point E above A by 4 cm
    curve l from B going up to E going left
    """
    curve = path(drafted)
    for share in (0.2, 0.5, 0.8):
        point = curve.at_length(curve.length() * share)
        assert point.distance(Point(0, 0)) == pytest.approx(40, abs=0.02)  # the usual cubic errs by 0.03 %


def test_square_and_tangent(drafted: Draft) -> None:
    """
    line side from B to D
    curve l from A along A-B to D tangent to side
    """
    curve = path(drafted)
    assert (curve.end_tangent.x, curve.end_tangent.y) == pytest.approx((0, 1), abs=1e-9)


def test_angled_direction(drafted: Draft) -> None:
    """curve l from A at 45 degrees anticlockwise from A-B to B going down"""
    assert path(drafted).start_tangent.angle == pytest.approx(pi / 4)


def test_through_points(drafted: Draft) -> None:
    """curve l through A, D, B starting going up ending going down"""
    curve = path(drafted)
    assert curve.nearest(Point(40, 30)).distance == pytest.approx(0, abs=1e-9)
    assert (curve.start_tangent.x, curve.end_tangent.y) == pytest.approx((0, -1), abs=1e-9)


def test_parallel_curve(drafted: Draft) -> None:
    """
    arc bow about A from B by 90 degrees anticlockwise
    curve l parallel to bow by 1 cm nearer A
    """
    assert path(drafted).length() == pytest.approx(30 * pi / 2)


def test_parallel_curve_with_two_distances(drafted: Draft) -> None:
    """
    arc bow about A from B by 90 degrees anticlockwise
    curve l parallel to bow by 1 cm at its beginning and 2 cm at its end nearer A
    """
    curve = path(drafted)
    assert curve.start.distance(Point(0, 0)) == pytest.approx(30, abs=1e-6)
    assert curve.end.distance(Point(0, 0)) == pytest.approx(20, abs=1e-6)


def test_arc_by_radius(drafted: Draft) -> None:
    """arc l from A to B radius 2 cm upward"""
    assert path(drafted).length() == pytest.approx(20 * pi)  # a half circle


def test_arc_through_three_points(drafted: Draft) -> None:
    """arc l through C, A, B"""
    assert path(drafted).length() == pytest.approx(25 * pi)  # the right angle stands on a diameter of 5 cm


def test_arc_about_a_centre(drafted: Draft) -> None:
    """arc l about A from B by 180 degrees clockwise"""
    assert path(drafted).length() == pytest.approx(40 * pi)
    assert path(drafted).at_length(20 * pi).y == pytest.approx(-40)


def test_arc_to_a_point(drafted: Draft) -> None:
    """
    point E above A by 4 cm
    arc l about A from B to E clockwise
    """
    assert path(drafted).length() == pytest.approx(1.5 * pi * 40)


def test_corner_rounded(drafted: Draft) -> None:
    """arc l rounding B-A-C by 1 cm"""
    assert path(drafted).length() == pytest.approx(10 * pi / 2)


def test_circle(drafted: Draft) -> None:
    """circle l about A radius 3 cm"""
    assert path(drafted).length() == pytest.approx(60 * pi)


def test_copies(drafted: Draft) -> None:
    """
    line side from B to D
    copy side as l moved by 1 cm right and by 2 cm below
    copy side as m mirrored across A-C
    copy side as n turned about A by 90 degrees anticlockwise
    """
    moved, mirrored, turned = (path(drafted, name) for name in "lmn")
    assert (moved.start.x, moved.start.y) == pytest.approx((50, -20))
    assert (mirrored.end.x, mirrored.end.y) == pytest.approx((-40, 30))
    assert (turned.end.x, turned.end.y) == pytest.approx((-30, 40))


def test_a_run_is_one_line(drafted: Draft) -> None:
    """
    line one from A to B
    line two from D to B
    run both = one then two
    curve l parallel to both by 5 mm nearer C
    point P on both by 5 cm from A
    """
    assert path(drafted).length() == pytest.approx(35 + 25)
    assert drafted.points["s.P"].at.y == pytest.approx(10)


def test_guides_of_a_curve(drafted: Draft) -> None:
    """curve l from A to B depth 8 mm upward"""
    guides = drafted.lines["s.l"].guides
    assert [guide.at for guide in guides] == [0.25, 0.5, 0.75]
    # The even curve is the parabola-like cubic 4 d s (1 - s) in height over its parameter; at the middle it is d.
    assert guides[1].depth == pytest.approx(8)
    assert guides[0].depth == pytest.approx(guides[2].depth)
    assert 5 < guides[0].depth < 7
