"""Constructions with ruler, set square and compasses."""

from __future__ import annotations

from math import pi, sqrt

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from littlefold.geometry import (
    Point,
    Vector,
    angle_between,
    arc_about,
    arc_of_radius,
    arc_through,
    bisector,
    circle_meets_circle,
    foot,
    line_meets_circle,
    line_meets_line,
    rounded_corner,
    side_of,
    turn_between,
)
from tests.geometry.shapes import close, directions, points

some = settings(max_examples=60, deadline=None)
radii = st.floats(1, 300)


@some
@given(points, points, points)
def test_the_foot_stands_square(point: Point, a: Point, b: Point) -> None:
    assume(a.distance(b) > 1)
    here = foot(point, a, b)
    assert abs((point - here).dot((b - a).unit())) <= 1e-8
    assert abs(side_of(here, a, b)) <= 1e-8
    assert abs(side_of(point, a, b)) == pytest.approx(point.distance(here), abs=1e-8)


def test_left_is_positive() -> None:
    assert side_of(Point(5, 2), Point(0, 0), Point(10, 0)) == 2


@some
@given(points, points, points, points)
def test_lines_meet_on_both(a: Point, b: Point, c: Point, d: Point) -> None:
    assume(min(a.distance(b), c.distance(d)) > 1)
    assume(abs((b - a).unit().cross((d - c).unit())) > 0.01)
    here = line_meets_line(a, b, c, d)
    assert here is not None
    assert abs(side_of(here, a, b)) <= 1e-7
    assert abs(side_of(here, c, d)) <= 1e-7


def test_parallels_do_not_meet() -> None:
    assert line_meets_line(Point(0, 0), Point(1, 1), Point(0, 1), Point(5, 6)) is None
    assert line_meets_line(Point(0, 0), Point(0, 0), Point(0, 1), Point(5, 6)) is None


def test_a_line_crosses_touches_and_misses_a_circle() -> None:
    across = line_meets_circle(Point(-9, 3), Point(9, 3), Point(0, 0), 5)
    assert across == (Point(-4, 3), Point(4, 3))
    assert line_meets_circle(Point(9, 3), Point(-9, 3), Point(0, 0), 5) == across[::-1]
    assert line_meets_circle(Point(-9, 5), Point(9, 5), Point(0, 0), 5) == (Point(0, 5),)
    assert line_meets_circle(Point(-9, 5.01), Point(9, 5.01), Point(0, 0), 5) == ()


@some
@given(points, radii, points, radii)
def test_circles_meet_on_both(first: Point, r: float, second: Point, q: float) -> None:
    places = circle_meets_circle(first, r, second, q)
    apart = first.distance(second)
    assert len(places) in {0, 1, 2}
    assert all(place.distance(first) == pytest.approx(r, abs=2e-6) for place in places)
    assert all(place.distance(second) == pytest.approx(q, abs=2e-6) for place in places)
    if abs(r - q) + 1e-3 < apart < r + q - 1e-3:
        assert len(places) == 2
        assert side_of(places[0], first, second) > 0
    if apart > r + q + 1e-3 or apart < abs(r - q) - 1e-3:
        assert places == ()


def test_touching_and_common_circles() -> None:
    assert circle_meets_circle(Point(0, 0), 3, Point(5, 0), 2) == (Point(3, 0),)
    assert circle_meets_circle(Point(0, 0), 3, Point(1, 0), 2) == (Point(3, 0),)
    assert circle_meets_circle(Point(0, 0), 3, Point(0, 0), 3) == ()


@some
@given(points, points, points)
def test_an_arc_goes_through_three_points_in_order(p: Point, q: Point, r: Point) -> None:
    assume(min(p.distance(q), q.distance(r), p.distance(r)) > 1)
    assume(abs((q - p).unit().cross((r - p).unit())) > 0.01)
    arc = arc_through(p, q, r)
    assert arc is not None
    assert close(arc.start, p)
    assert close(arc.end, r)
    assert close(arc.at(arc.nearest(q)), q)


def test_no_arc_goes_through_points_in_line() -> None:
    assert arc_through(Point(0, 0), Point(1, 1), Point(3, 3)) is None
    assert arc_through(Point(0, 0), Point(0, 0), Point(3, 3)) is None


@some
@given(points, points, st.floats(1, 3))
def test_arcs_of_a_radius_lie_on_both_sides(start: Point, end: Point, share: float) -> None:
    chord = start.distance(end)
    assume(chord > 1)
    left, right = arc_of_radius(start, end, chord / 2 * share)
    for arc in (left, right):
        assert arc.radius == pytest.approx(chord / 2 * share)
        assert close(arc.start, start)
        assert close(arc.end, end)
        assert abs(arc.sweep) <= pi + 1e-9
    assert side_of(left.at(0.5), start, end) > 0
    assert side_of(right.at(0.5), start, end) < 0


def test_a_radius_too_short_reaches_nothing() -> None:
    assert arc_of_radius(Point(0, 0), Point(10, 0), 4.9) == ()
    assert arc_of_radius(Point(0, 0), Point(0, 0), 4.9) == ()
    assert len(arc_of_radius(Point(0, 0), Point(10, 0), 5)) == 2


@some
@given(points, directions, st.floats(0.2, 2.9), st.sampled_from((-1, 1)), st.floats(1, 20))
def test_a_rounded_corner_is_tangent_to_both_legs(
    corner: Point,
    first: Vector,
    opening: float,
    side: int,
    radius: float,
) -> None:
    second = first.turned(opening * side)
    arc = rounded_corner(corner, corner + first * 400, corner + second * 400, radius)
    assert arc is not None
    assert arc.radius == pytest.approx(radius)
    assert abs(side_of(arc.start, corner, corner + first)) <= 1e-7
    assert abs(side_of(arc.end, corner, corner + second)) <= 1e-7
    assert (arc.tangent(0.0) + first).length <= 1e-7
    assert (arc.tangent(1.0) - second).length <= 1e-7


def test_a_right_angle_is_rounded_one_radius_from_its_corner() -> None:
    arc = rounded_corner(Point(0, 0), Point(50, 0), Point(0, 50), 8)
    assert arc is not None
    assert close(arc.start, Point(8, 0), 1e-9)
    assert close(arc.end, Point(0, 8), 1e-9)
    assert arc.at(0.5).distance(Point(0, 0)) == pytest.approx(8 * (sqrt(2) - 1))


def test_a_corner_is_not_rounded_beyond_its_legs() -> None:
    assert rounded_corner(Point(0, 0), Point(5, 0), Point(0, 50), 8) is None
    assert rounded_corner(Point(0, 0), Point(50, 0), Point(-50, 0), 8) is None
    assert rounded_corner(Point(0, 0), Point(50, 0), Point(0, 0), 8) is None


def test_an_arc_about_a_centre() -> None:
    arc = arc_about(Point(1, 1), Point(4, 1), -pi / 2)
    assert close(arc.end, Point(1, -2), 1e-12)
    assert arc.curvature(0.5) == pytest.approx(-1 / 3)


def test_turns_and_angles() -> None:
    east, north = Vector(2, 0), Vector(0, 5)
    assert turn_between(east, north) == pytest.approx(pi / 2)
    assert turn_between(north, east) == pytest.approx(-pi / 2)
    assert turn_between(east, -east) == pi
    assert turn_between(-east, east) == pi
    assert angle_between(north, east) == pytest.approx(pi / 2)
    assert (bisector(east, north) - Vector(1, 1).unit()).length <= 1e-12
    assert (bisector(east, -east) - Vector(0, 1)).length <= 1e-12
