"""Meetings of paths, against the bezier package, fontTools, shapely and closed forms."""

from __future__ import annotations

from math import pi, sqrt
from random import Random

import numpy as np
import pytest
from fontTools.misc import bezierTools
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Point as ShapelyPoint

from littlefold.geometry import (
    Affine,
    Arc,
    Cubic,
    Line,
    Path,
    Point,
    Segment,
    Vector,
    curve_between,
    meet,
    meet_circle,
    meet_line,
    self_crossings,
)
from littlefold.geometry.intersection import do_meet
from tests.geometry.shapes import (
    AWKWARD,
    as_bezier,
    as_shapely,
    circle,
    close,
    control_points,
    cubics,
    directions,
    fractions,
    motions,
    points,
    segments,
)

some = settings(max_examples=60, deadline=None)
SQUARE = Path.line_through(Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100), Point(0, 0))


def even(cubic: Cubic) -> bool:
    """Whether the control points are far enough apart for another library to be sure of its answer."""
    corners = (cubic.start, cubic.control1, cubic.control2, cubic.end)
    return all(p.distance(q) > 5 for k, p in enumerate(corners) for q in corners[k + 1 :])


rough_points = st.builds(Point, st.integers(-200, 200), st.integers(-200, 200))
rough_cubics = st.builds(Cubic, rough_points, rough_points, rough_points, rough_points).filter(even)


@some
@given(rough_cubics, rough_cubics)
def test_cubics_meet_where_the_bezier_package_says(first: Cubic, second: Cubic) -> None:
    try:
        theirs = as_bezier(first).intersect(as_bezier(second))
    except NotImplementedError:  # it cannot do near-tangent pairs
        assume(condition=False)
    places = [first.at(float(t)) for t in theirs[0]]
    mine = [meeting.point for meeting in meet(first, second)]
    assert all(any(close(p, q, 1e-4) for q in mine) for p in places)
    assert all(any(close(p, q, 1e-4) for q in places) for p in mine)


@pytest.mark.parametrize("seed", range(30))
def test_no_meeting_that_fonttools_finds_is_missed(seed: int) -> None:
    numbers = Random(seed)  # noqa: S311 - shapes, no secrets
    first, second = (
        Cubic(*(Point(numbers.uniform(-200, 200), numbers.uniform(-200, 200)) for _ in range(4)))
        for _ in range(2)
    )
    theirs = bezierTools.curveCurveIntersections(control_points(first), control_points(second))
    mine = [meeting.point for meeting in meet(first, second)]
    for found in theirs:
        assert any(p.distance(Point(*found.pt)) <= 0.5 for p in mine)


@some
@given(segments, segments)
def test_meetings_lie_on_both_at_the_lengths_they_say(first: Segment, second: Segment) -> None:
    one, other = Path((first,)), Path((second,))
    for meeting in meet(one, other):
        assert close(one.at_length(meeting.first_length), meeting.point, 1e-5)
        assert close(other.at_length(meeting.second_length), meeting.point, 1e-5)


@some
@given(segments, segments)
def test_paths_that_shapely_sees_cross_are_seen_to_meet(first: Segment, second: Segment) -> None:
    one, other = as_shapely(Path((first,)), 1e-3), as_shapely(Path((second,)), 1e-3)
    if one.crosses(other) and one.intersection(other).distance(one.boundary.union(other.boundary)) > 1:
        assert meet(first, second)
    if one.distance(other) > 0.01:
        assert meet(first, second) == ()


@some
@given(segments, segments)
def test_whether_two_paths_meet_is_told_as_their_meetings_tell_it(first: Segment, second: Segment) -> None:
    one, other = Path((first,)), Path((second,))
    assert do_meet(one, other) is bool(meet(one, other))


@some
@given(segments, segments, motions)
def test_moving_both_moves_the_meetings(first: Segment, second: Segment, motion: Affine) -> None:
    here = [m.point for m in meet(first, second)]
    there = [m.point for m in meet(first.transformed(motion), second.transformed(motion))]
    crossings = [p for p in here if _angle(first, second, p) > 0.01]
    for p in crossings:
        assert any(close(motion.apply(p), q, 1e-4) for q in there)


@some
@given(rough_cubics, st.lists(directions, min_size=4, max_size=4), st.sampled_from([0.003, 0.03, 0.3, 3.0]))
def test_curves_that_nearly_run_in_one_another_lose_no_crossing(
    first: Cubic, ways: list[Vector], away: float
) -> None:
    """Wherever the first goes from one side of the second to the other, they meet (sides by sampling, in numpy)."""
    moved = [
        p + way * away
        for p, way in zip((first.start, first.control1, first.control2, first.end), ways, strict=True)
    ]
    second = Cubic(*moved)
    lengths = [meeting.first_length for meeting in meet(first, second)]
    for low, high in _changes_of_side(first, second):
        assert any(first.length_to(low) - 1e-3 <= at <= first.length_to(high) + 1e-3 for at in lengths)


def _changes_of_side(first: Cubic, second: Cubic) -> list[tuple[float, float]]:
    """The steps of the first curve from one side of the second to the other, away from the ends of the second."""
    steps = np.linspace(0, 1, 301)
    places, chords = (
        as_bezier(c).evaluate_multi(np.linspace(0, 1, n)).T for c, n in ((first, 301), (second, 3001))
    )
    nearest = np.argmin(((places[:, None] - chords[None]) ** 2).sum(axis=2), axis=1)
    inside = (nearest > 2) & (nearest < 2998)
    way, gap = chords[np.clip(nearest + 1, 0, 3000)] - chords[nearest - 1], places - chords[nearest]
    side = np.sign(way[:, 0] * gap[:, 1] - way[:, 1] * gap[:, 0])
    return [
        (float(steps[k]), float(steps[k + 1]))
        for k in range(300)
        if inside[k] and inside[k + 1] and side[k] * side[k + 1] < 0 and abs(nearest[k] - nearest[k + 1]) < 60
    ]


def test_curves_with_the_same_ends_and_directions_that_cross_half_way() -> None:
    """Both are their own image when turned half about (50, 0), so they cross there, at the middle of both."""
    first = Cubic(Point(0, 0), Point(40, 40), Point(60, -40), Point(100, 0))
    second = Cubic(Point(0, 0), Point(20, 20), Point(80, -20), Point(100, 0))
    found = meet(first, second)
    assert [(m.point.x, m.point.y) for m in found] == [
        (0, 0),
        (pytest.approx(50), pytest.approx(0)),
        (100, 0),
    ]


def test_a_quarter_circle_and_its_usual_cubic_touch_at_the_ends_and_the_middle() -> None:
    """The handle is chosen so that the middle lies on the circle; elsewhere the cubic lies outside, by 0.03 % at most."""
    k = 4 / 3 * (sqrt(2) - 1)
    cubic = Cubic(Point(100, 0), Point(100, 100 * k), Point(100 * k, 100), Point(0, 100))
    arc = Arc(Point(0, 0), 100, 0, pi / 2)
    places = [m.point for m in meet(cubic, arc)]
    assert [close(p, q, 1e-3) for p, q in zip(places, (arc.at(0), arc.at(0.5), arc.at(1)), strict=True)] == [
        True
    ] * 3


def test_a_run_within_a_hair_is_given_by_its_ends() -> None:
    """Halves of a curve that differ from it by rounding only, on a hundred millimetres."""
    whole = AWKWARD["inflection"]
    half = whole.part(0.25, 0.75).transformed(Affine.translation(Vector(0, 3e-8)))
    found = meet(whole, half)
    assert len(found) == 2
    assert close(found[0].point, half.start, 0.05)
    assert close(found[-1].point, half.end, 0.05)


def _angle(first: Segment, second: Segment, place: Point) -> float:
    one, other = first.tangent(first.nearest(place)), second.tangent(second.nearest(place))
    return abs(one.cross(other))


@some
@given(cubics, points, directions)
def test_meetings_with_a_line_are_on_it(cubic: Cubic, through: Point, along: Vector) -> None:
    for meeting in meet_line(cubic, through, along * 3):
        assert abs(along.cross(meeting.point - through)) <= 2e-6
        assert close(through + along * meeting.second_length, meeting.point, 1e-5)


@some
@given(cubics, fractions, directions)
def test_a_line_through_a_place_of_the_curve_meets_it_there(cubic: Cubic, t: float, along: Vector) -> None:
    place = cubic.at(t)
    assume(abs(cubic.tangent(t).cross(along)) > 0.01)
    assert any(close(m.point, place, 1e-3) for m in meet_line(cubic, place, along))


def test_a_line_meets_a_circle_and_a_square() -> None:
    assert [m.point for m in meet_line(circle(Point(0, 0), 5), Point(0, 3), Vector(1, 0))] == [
        Point(4, pytest.approx(3)),
        Point(-4, pytest.approx(3)),
    ]
    diagonal = meet_line(SQUARE, Point(50, 50), Vector(1, 1))
    assert [m.second_length for m in diagonal] == pytest.approx([-50 * sqrt(2), 50 * sqrt(2)])


def test_a_line_along_a_side_gives_its_ends() -> None:
    assert [m.point for m in meet_line(SQUARE, Point(-5, 0), Vector(1, 0))] == [Point(0, 0), Point(100, 0)]
    assert [m.point for m in meet(SQUARE, Line(Point(-10, 0), Point(50, 0)))] == [Point(0, 0), Point(50, 0)]


def test_a_circle_touches_the_sides_of_its_square() -> None:
    touches = meet_circle(SQUARE, Point(50, 50), 50)
    assert [m.first_length for m in touches] == pytest.approx([50, 150, 250, 350])
    assert [m.second_length for m in touches] == pytest.approx([75 * pi, 0, 25 * pi, 50 * pi], abs=1e-6)


def test_a_circle_touches_the_top_of_a_curve() -> None:
    hill = Cubic(Point(0, 0), Point(30, 40), Point(60, 40), Point(90, 0))  # its top is at (45, 30)
    touches = meet_circle(hill, Point(45, 50), 20)
    assert len(touches) == 1
    assert close(touches[0].point, Point(45, 30), 1e-6)
    assert meet_circle(hill, Point(45, 50.001), 20) == ()
    assert len(meet_circle(hill, Point(45, 49.9), 20)) == 2


def test_arcs_meet_touch_and_miss() -> None:
    first = Arc(Point(0, 0), 5, 0, pi)
    assert [m.point for m in meet(first, Arc(Point(6, 0), 5, pi / 2, pi))] == [
        Point(pytest.approx(3), pytest.approx(4))
    ]
    assert len(meet(first, circle(Point(0, 8), 3))) == 1
    assert meet(first, Arc(Point(6, 0), 5, -pi / 2, pi)) == ()
    assert meet(first, circle(Point(0, -8), 3)) == ()


def test_arcs_of_one_circle_share_the_ends_of_their_overlap() -> None:
    shared = meet(Arc(Point(0, 0), 10, 0, pi), Arc(Point(0, 0), 10, pi / 2, pi))
    assert [m.first_length for m in shared] == pytest.approx([5 * pi, 10 * pi])


def test_shared_ends_are_met_once() -> None:
    first = curve_between(Point(0, 0), Point(50, 50), Vector(1, 0), Vector(0, 1))
    second = curve_between(Point(50, 50), Point(100, 0), Vector(0, 1), Vector(0, -1))
    assert [m.point for m in meet(first, second)] == [Point(50, 50)]
    corner = meet(Path.line_through(Point(0, 0), Point(9, 0)), Path.line_through(Point(9, 0), Point(9, 9)))
    assert [(m.first_length, m.second_length) for m in corner] == [(9, 0)]


def test_a_joint_on_a_curve_is_met_once() -> None:
    quarter = Arc(Point(0, 0), 10, 0, pi / 2)
    broken = Path.line_through(Point(0, 0), quarter.at(0.5), Point(20, 20.5))
    assert len(meet(broken, quarter)) == 1


@pytest.mark.parametrize("cubic", AWKWARD.values(), ids=AWKWARD.keys())
def test_a_curve_meets_a_part_of_itself_in_the_ends_of_the_part(cubic: Cubic) -> None:
    if cubic.length() < 1 or cubic in (
        AWKWARD["straight, out and back"],
        AWKWARD["loop"],
        AWKWARD["sharp bend"],
    ):
        return
    part = cubic.part(0.2, 0.7)
    found = [m.point for m in meet(cubic, part)]
    assert any(close(p, part.start, 1e-4) for p in found)
    assert any(close(p, part.end, 1e-4) for p in found)


@some
@given(rough_cubics)
def test_loops_are_found_where_the_bezier_package_finds_them(cubic: Cubic) -> None:
    theirs = as_bezier(cubic).self_intersections()
    mine = self_crossings(Path((cubic,)))
    places = [cubic.at(float(t)) for t in theirs[0]]
    mine_inside = [m.point for m in mine]
    assert len(mine_inside) == len(places)
    assert all(close(p, q, 1e-4) for p, q in zip(mine_inside, places, strict=True))


def test_the_named_loop_crosses_itself_on_its_axis() -> None:
    loop = Path((AWKWARD["loop"],))
    crossings = self_crossings(loop)
    assert len(crossings) == 1
    assert crossings[0].point.x == pytest.approx(50)
    assert crossings[0].first_length + crossings[0].second_length == pytest.approx(loop.length())


def test_simple_outlines_do_not_cross_themselves() -> None:
    assert self_crossings(SQUARE) == ()
    assert self_crossings(Path((circle(Point(0, 0), 5),))) == ()
    assert self_crossings(Path((AWKWARD["inflection"],))) == ()


def test_a_bow_tie_crosses_itself_in_the_middle() -> None:
    bow = Path.line_through(Point(0, 0), Point(10, 10), Point(10, 0), Point(0, 10), Point(0, 0))
    crossings = self_crossings(bow)
    assert len(crossings) == 1
    assert close(crossings[0].point, Point(5, 5), 1e-9)


def test_a_corner_that_touches_its_own_side_is_found() -> None:
    touching = Path.line_through(
        Point(0, 0), Point(10, 0), Point(10, 10), Point(5, 0), Point(0, 10), Point(0, 0)
    )
    assert {(m.point.x, m.point.y) for m in self_crossings(touching)} == {(5, 0)}


@some
@given(points)
def test_a_circle_meets_a_curve_at_its_radius(centre: Point) -> None:
    curve = AWKWARD["inflection"]
    radius = curve.at(0.3).distance(centre)
    assume(radius > 1)
    found = meet_circle(curve, centre, radius)
    assert any(close(m.point, curve.at(0.3), 0.1) for m in found)
    assert all(m.point.distance(centre) == pytest.approx(radius, abs=2e-6) for m in found)
    assert as_shapely(Path((curve,))).distance(ShapelyPoint(centre.x, centre.y)) <= radius + 1e-3
