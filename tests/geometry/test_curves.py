"""Curves by ends and directions, by a depth, past a corner, and through points."""

from __future__ import annotations

from itertools import pairwise
from math import pi, sin, tan

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from littlefold.geometry import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    bisector,
    curve_between,
    curve_past_corner,
    curve_past_point,
    curve_through,
    curve_with_depth,
    meet,
    side_of,
)
from tests.geometry.shapes import close, directions, points

some = settings(max_examples=80, deadline=None)


@pytest.mark.parametrize("degrees", [1, 30, 60, 90, 120, 180])
def test_equal_angles_give_the_usual_approximation_of_an_arc(degrees: float) -> None:
    angle, radius = degrees * pi / 180, 100.0
    start, end = Point(0, -radius), Point(0, 0) + Vector.polar(angle - pi / 2, radius)
    curve = curve_between(start, end, Vector(1, 0), Vector.polar(angle))
    # Handle 4/3 r tan(angle / 4): Goldapp, Approximation of circular arcs by cubic polynomials (CAGD 8,
    # 1991), from memory.
    assert start.distance(curve.control1) == pytest.approx(4 / 3 * radius * tan(angle / 4))
    assert end.distance(curve.control2) == pytest.approx(4 / 3 * radius * tan(angle / 4))


def test_square_tangents_give_a_quarter_ellipse() -> None:
    a, b = 100.0, 30.0
    curve = curve_between(Point(0, 0), Point(a, b), Vector(1, 0), Vector(0, 1))
    for k in range(11):
        place = curve.at(k / 10)
        # On the ellipse about (0, b) with half axes a and b; the known error of the approximation is 2.8e-4.
        assert (place.x / a) ** 2 + ((place.y - b) / b) ** 2 == pytest.approx(1, abs=6e-4)


def test_directions_along_the_chord_give_the_chord() -> None:
    curve = curve_between(Point(0, 0), Point(90, 0), Vector(1, 0), Vector(1, 0))
    assert curve == Cubic(Point(0, 0), Point(30, 0), Point(60, 0), Point(90, 0))


@some
@given(points, points, directions, directions)
def test_a_curve_between_leaves_and_arrives_as_told(
    p: Point, q: Point, leave: Vector, arrive: Vector
) -> None:
    assume(p.distance(q) > 1)
    curve = curve_between(p, q, leave * 7, arrive * 3)
    assert (curve.start, curve.end) == (p, q)
    assert (curve.tangent(0.0) - leave).length <= 1e-9
    assert (curve.tangent(1.0) - arrive).length <= 1e-9


def test_the_default_changes_smoothly_where_a_direction_passes_the_chord() -> None:
    def handles(lean: float) -> tuple[float, float]:
        curve = curve_between(Point(0, 0), Point(100, 0), Vector.polar(0.6), Vector.polar(lean))
        return curve.control1.distance(curve.start), curve.control2.distance(curve.end)

    for lean in (-0.3, -0.1, 0.0, 0.1, 0.3):
        before, after = handles(lean - 1e-4), handles(lean + 1e-4)
        assert before == pytest.approx(after, abs=0.05)


@some
@given(st.floats(0.4, 1.5), st.floats(0.4, 1.5), st.floats(0.3, 1.2), st.sampled_from((-1, 1)))
def test_the_depth_at_the_middle_of_the_chord_is_met(
    leave: float, arrive: float, share: float, side: int
) -> None:
    start, end = Point(10, 20), Point(150, 60)
    chord = end - start
    along = chord.angle
    out, back = Vector.polar(along + side * leave), Vector.polar(along - side * arrive)
    usual = curve_between(start, end, out, back)
    middle = start.towards(end, 0.5)
    square = Line(middle + chord.turned_right() * 3, middle + chord.turned_left() * 3)
    depth = side_of(meet(usual, square)[0].point, start, end) * share
    curve = curve_with_depth(start, end, out, back, depth)
    assert curve is not None
    crossings = [side_of(m.point, start, end) for m in meet(curve, square)]
    assert min(abs(d - depth) for d in crossings) <= 1e-6
    assert (curve.tangent(0.0) - out).length <= 1e-9
    assert (curve.tangent(1.0) - back).length <= 1e-9
    usual_share = usual.start.distance(usual.control1) / usual.end.distance(usual.control2)
    assert curve.start.distance(curve.control1) / curve.end.distance(curve.control2) == pytest.approx(
        usual_share
    )


def test_a_shallow_arc_has_the_depth_of_its_sagitta() -> None:
    # The sagitta of an arc of 60 degrees and radius 100 is 100 (1 - cos 30 degrees).
    start, end = Point(-50, 0), Point(50, 0)
    curve = curve_with_depth(start, end, Vector.polar(pi / 6), Vector.polar(-pi / 6), 100 * (1 - sin(pi / 3)))
    assert curve is not None
    assert start.distance(curve.control1) == pytest.approx(4 / 3 * 100 * tan(pi / 12), rel=1e-3)


def test_a_depth_on_the_wrong_side_is_refused() -> None:
    assert curve_with_depth(Point(0, 0), Point(100, 0), Vector(1, 1), Vector(1, -1), -10) is None
    assert curve_with_depth(Point(0, 0), Point(100, 0), Vector(1, 0), Vector(1, 0), 5) is None


def test_a_depth_that_no_handles_reach_is_refused() -> None:
    start, end, out, back = Point(0, 0), Point(100, 0), Vector.polar(1.0), Vector.polar(-0.2)
    usual = curve_between(start, end, out, back)
    square = Line(Point(50, -500), Point(50, 500))

    def deepest(factor: float) -> float:
        longer = Cubic(
            start,
            start + (usual.control1 - start) * factor,
            end + (usual.control2 - end) * factor,
            end,
        )
        return max(m.point.y for m in meet(longer, square))

    reached = max(deepest(0.1 * k) for k in range(1, 100))
    assert curve_with_depth(start, end, out, back, reached - 0.01) is not None
    assert curve_with_depth(start, end, out, back, reached + 0.1) is None


@some
@given(st.floats(20, 150), st.floats(20, 150), st.floats(0, 1))
def test_the_corner_is_passed_at_the_distance(a: float, b: float, share: float) -> None:
    corner, start, end = Point(0, 0), Point(a, 0), Point(0, b)
    out, back = Vector(-1, 0), Vector(0, 1)
    line = Line(corner, corner + Vector(1, 1) * 200)
    usual = meet(curve_between(start, end, out, back), line)[0].point.distance(corner)
    chord = meet(Line(start, end), line)[0].point.distance(corner)  # where handles without length would pass
    wanted = 0.7 * usual + share * (0.98 * chord - 0.7 * usual)
    curve = curve_past_corner(start, end, out, back, corner, wanted)
    assert curve is not None
    crossings = [m.point.distance(corner) for m in meet(curve, line)]
    assert min(abs(d - wanted) for d in crossings) <= 1e-6
    assert curve_past_corner(start, end, out, back, corner, 1.02 * chord) is None


def test_a_tight_armhole_corner_is_met() -> None:
    curve = curve_past_corner(Point(0, 60), Point(45, 0), Vector(0, -1), Vector(1, 0), Point(0, 0), 15.0)
    assert curve is not None
    wanted = Point(0, 0) + bisector(Vector(0, 1), Vector(1, 0)) * 15.0
    assert close(curve.at(curve.nearest(wanted)), wanted)


def test_a_corner_at_an_end_is_refused() -> None:
    assert (
        curve_past_corner(Point(0, 60), Point(45, 0), Vector(0, -1), Vector(1, 0), Point(0, 60), 15.0) is None
    )


@some
@given(points)
def test_a_curve_past_a_point_goes_through_it_or_is_none(target: Point) -> None:
    curve = curve_past_point(Point(0, 0), Point(100, 40), Vector(1, 0), Vector(0, 1), target)
    if curve is not None:
        assert close(curve.at(curve.nearest(target)), target)


@some
@given(st.lists(points, min_size=2, max_size=7), directions, directions)
def test_a_spline_goes_through_its_points_with_steady_curvature(
    through: list[Point], leave: Vector, arrive: Vector
) -> None:
    assume(all(p.distance(q) > 1 for p, q in pairwise(through)))
    path = curve_through(tuple(through), leave, arrive)
    assert [path.start, *(segment.end for segment in path.segments)] == through
    assert (path.start_tangent - leave).length <= 1e-9
    assert (path.end_tangent - arrive).length <= 1e-9
    assert_second_derivatives_agree(path)


def assert_second_derivatives_agree(path: Path) -> None:
    """The first and second derivatives by the chord length have no jumps."""
    for before, after in pairwise(path.segments):
        assert isinstance(before, Cubic)
        assert isinstance(after, Cubic)
        g, h = before.start.distance(before.end), after.start.distance(after.end)
        assert (before.derivative(1.0) / g - after.derivative(0.0) / h).length <= 1e-9
        jump = before.second_derivative(1.0) / (g * g) - after.second_derivative(0.0) / (h * h)
        assert jump.length <= 1e-9 * (1 + before.second_derivative(1.0).length)


def test_an_end_without_a_direction_does_not_bend() -> None:
    path = curve_through((Point(0, 0), Point(30, 20), Point(70, 10), Point(100, 50)))
    assert path.segments[0].curvature(0.0) == pytest.approx(0, abs=1e-12)
    assert path.segments[-1].curvature(1.0) == pytest.approx(0, abs=1e-12)


def test_points_in_line_give_a_straight_spline() -> None:
    path = curve_through((Point(0, 0), Point(10, 10), Point(15, 15), Point(90, 90)))
    assert path.length() == pytest.approx(90 * 2**0.5)


def test_two_points_with_directions_are_the_curve_between_them() -> None:
    ends = (Point(0, 0), Point(50, 50))
    path = curve_through(ends, Vector(1, 0), Vector(0, 1))
    assert path.segments == (curve_between(*ends, Vector(1, 0), Vector(0, 1)),)


def test_one_point_is_no_curve() -> None:
    with pytest.raises(ValueError, match="two points"):
        curve_through((Point(0, 0),))
