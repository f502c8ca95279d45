"""What every segment promises, for lines, arcs and cubics alike, and for curves with a name for trouble."""

from __future__ import annotations

from itertools import pairwise
from math import isclose, isfinite, pi

import pytest
from fontTools.misc import bezierTools
from hypothesis import assume, given, settings
from shapely.geometry import LineString
from shapely.geometry import Point as ShapelyPoint

from littlefold.geometry import Affine, Arc, Cubic, Line, Path, Point, Segment, Vector
from tests.geometry.shapes import (
    AWKWARD,
    arcs,
    as_shapely,
    close,
    control_points,
    cubics,
    fractions,
    motions,
    points,
    segments,
)

some = settings(max_examples=60, deadline=None)
named = pytest.mark.parametrize("cubic", AWKWARD.values(), ids=AWKWARD.keys())


@some
@given(segments)
def test_ends_are_at_zero_and_one(segment: Segment) -> None:
    assert close(segment.at(0.0), segment.start, 1e-9)
    assert close(segment.at(1.0), segment.end, 1e-9)


@some
@given(segments, fractions)
def test_derivative_agrees_with_the_difference(segment: Segment, t: float) -> None:
    step = 1e-5
    t = min(1 - step, max(step, t))
    difference = (segment.at(t + step) - segment.at(t - step)) / (2 * step)
    assert (segment.derivative(t) - difference).length <= 1e-4


@some
@given(segments, fractions)
def test_tangent_has_length_one_and_the_direction_of_the_derivative(segment: Segment, t: float) -> None:
    way = segment.derivative(t)
    tangent = segment.tangent(t)
    assert isclose(tangent.length, 1, abs_tol=1e-12)
    assume(way.length > 1e-3)
    assert (way.unit() - tangent).length <= 1e-9


@some
@given(segments, fractions)
def test_curvature_agrees_with_the_turn_of_the_tangent(segment: Segment, t: float) -> None:
    step = 1e-6
    t = min(1 - step, max(step, t))
    speed = segment.derivative(t).length
    assume(speed > 30)
    turn = segment.tangent(t - step).cross(segment.tangent(t + step)) / (2 * step)
    assert isclose(segment.curvature(t), turn / speed, rel_tol=1e-3, abs_tol=1e-6)


@some
@given(segments, fractions)
def test_split_rejoins(segment: Segment, t: float) -> None:
    before, after = segment.split(t)
    assert close(before.start, segment.start, 1e-9)
    assert close(before.end, after.start, 1e-9)
    assert close(after.end, segment.end, 1e-9)
    assert close(before.at(0.5), segment.at(t / 2), 1e-9)
    assert close(after.at(0.5), segment.at((1 + t) / 2), 1e-9)


@some
@given(cubics, fractions)
def test_split_agrees_with_fonttools(cubic: Cubic, t: float) -> None:
    assume(0 < t < 1)
    theirs = bezierTools.splitCubicAtT(*control_points(cubic), t)
    for mine, their in zip(cubic.split(t), theirs, strict=True):
        for p, q in zip(control_points(mine), their, strict=True):
            assert p == pytest.approx(q, abs=1e-9)


@some
@given(segments, fractions, fractions)
def test_part_runs_between_its_parameters_either_way(segment: Segment, t0: float, t1: float) -> None:
    part = segment.part(t0, t1)
    for u in (0.0, 0.3, 1.0):
        assert close(part.at(u), segment.at(t0 + (t1 - t0) * u), 1e-8)


@some
@given(segments)
def test_reversed_twice_is_the_same(segment: Segment) -> None:
    back = segment.reversed()
    assert close(back.at(0.25), segment.at(0.75), 1e-9)
    twice = back.reversed()
    assert close(twice.at(0.25), segment.at(0.25), 1e-9)
    assert isclose(back.length(), segment.length(), rel_tol=1e-9)


@some
@given(segments)
def test_bounds_hold_the_curve_and_touch_it(segment: Segment) -> None:
    box = segment.bounds()
    places = [segment.at(k / 500) for k in range(501)]
    assert all(box.grown(1e-9).contains(p) for p in places)
    coarse = segment.length() / 100
    assert min(p.x for p in places) - box.left <= coarse
    assert box.right - max(p.x for p in places) <= coarse
    assert min(p.y for p in places) - box.bottom <= coarse
    assert box.top - max(p.y for p in places) <= coarse


def test_bounds_of_an_arc_over_the_top() -> None:
    box = Arc(Point(10, 20), 5, pi / 4, pi / 2).bounds()
    assert box.top == pytest.approx(25)
    assert box.bottom == pytest.approx(20 + 5 / 2**0.5)


@some
@given(segments, points)
def test_nearest_is_as_near_as_shapely_finds(segment: Segment, point: Point) -> None:
    mine = segment.at(segment.nearest(point)).distance(point)
    theirs = as_shapely(Path((segment,)), 1e-3).distance(ShapelyPoint(point.x, point.y))
    assert mine == pytest.approx(theirs, abs=2e-3)


@some
@given(segments)
def test_nearest_to_a_place_of_its_own_is_that_place(segment: Segment) -> None:
    place = segment.at(0.37)
    assert close(segment.at(segment.nearest(place)), place)


@some
@given(segments)
def test_flattened_chords_stay_within_the_tolerance(segment: Segment) -> None:
    chords = segment.flatten(0.02)
    assert close(chords[0], segment.start, 1e-9)
    assert close(chords[-1], segment.end, 1e-9)
    count = len(chords) - 1
    for k, (p, q) in enumerate(pairwise(chords)):
        chord = Line(p, q)
        for u in (0.25, 0.5, 0.75):
            place = segment.at((k + u) / count)
            assert chord.at(chord.nearest(place)).distance(place) <= 0.02 + 1e-9


@some
@given(segments, motions)
def test_rigid_motions_keep_lengths_and_move_every_place(segment: Segment, motion: Affine) -> None:
    moved = segment.transformed(motion)
    assert type(moved) is type(segment)
    assert isclose(moved.length(), segment.length(), rel_tol=1e-9)
    for t in (0.0, 0.4, 1.0):
        assert close(moved.at(t), motion.apply(segment.at(t)), 1e-8)


@some
@given(segments)
def test_mirrored_twice_is_nothing(segment: Segment) -> None:
    mirror = Affine.mirror(Point(7, -3), Vector(2, 5))
    twice = segment.transformed(mirror).transformed(mirror)
    assert close(twice.at(0.6), segment.at(0.6), 1e-8)


@some
@given(arcs)
def test_an_arc_is_not_stretched_one_way(arc: Arc) -> None:
    with pytest.raises(ValueError, match="stretched one way"):
        arc.transformed(Affine(2, 0, 0, 1, 0, 0))


@some
@given(segments)
def test_swept_area_agrees_with_the_polygon(segment: Segment) -> None:
    chords = segment.flatten(1e-4)
    polygon = sum(p.x * q.y - q.x * p.y for p, q in pairwise(chords)) / 2
    assert segment.swept_area() == pytest.approx(polygon, abs=1e-4 * segment.length() + 1e-6)


@named
def test_awkward_curves_have_sound_tangents(cubic: Cubic) -> None:
    for t in (0.0, 0.25, 0.5, 0.75, 1.0):
        tangent = cubic.tangent(t)
        assert isfinite(tangent.x)
        assert tangent.length == pytest.approx(1)


@named
def test_awkward_curves_are_flattened_within_the_tolerance(cubic: Cubic) -> None:
    chords = LineString([(p.x, p.y) for p in cubic.flatten()])
    assert all(
        chords.distance(ShapelyPoint(p.x, p.y)) <= 0.02 for p in (cubic.at(k / 400) for k in range(401))
    )


def test_tangent_without_a_handle_points_to_the_next_control_point() -> None:
    assert AWKWARD["no handle at start"].tangent(0.0).cross(Vector(70, 60)) == pytest.approx(0)
    assert AWKWARD["no handle at end"].tangent(1.0).cross(Vector(70, -60)) == pytest.approx(0)
    assert AWKWARD["both handles at the end"].tangent(1.0).cross(Vector(100, 40)) == pytest.approx(0)


def test_a_cusp_is_left_the_other_way() -> None:
    before, after = AWKWARD["cusp"].tangent(0.5 - 1e-6), AWKWARD["cusp"].tangent(0.5 + 1e-6)
    assert before.dot(after) == pytest.approx(-1, abs=1e-3)
    assert AWKWARD["cusp"].tangent(0.5).dot(after) == pytest.approx(1, abs=1e-3)


def test_a_point_has_no_direction() -> None:
    here = Point(1, 2)
    for segment in (Line(here, here), Cubic(here, here, here, here)):
        assert segment.length() == 0
        with pytest.raises(ZeroDivisionError):
            segment.tangent(0.0)


def test_nearest_beside_a_cusp_is_not_overlooked() -> None:
    curve = Cubic(Point(1, 2), Point(0, 0), Point(0, 9), Point(0, 0))
    for k in range(201):
        place = curve.at(k / 200)
        assert curve.at(curve.nearest(place)).distance(place) <= 1e-9
