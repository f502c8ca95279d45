"""Maps of the plane, and upright rectangles."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given, settings

from littlefold.geometry import ORIGIN, Affine, Bounds, Point, Vector
from tests.geometry.shapes import close, motions, points

some = settings(max_examples=60, deadline=None)


def test_a_quarter_turn_about_a_point() -> None:
    assert close(Affine.rotation(pi / 2, Point(1, 1)).apply(Point(3, 1)), Point(1, 3), 1e-12)


def test_scaling_about_a_point_leaves_it_in_place() -> None:
    scale = Affine.scale(0.25, Point(8, 4))
    assert close(scale.apply(Point(8, 4)), Point(8, 4), 1e-12)
    assert close(scale.apply(Point(12, 0)), Point(9, 3), 1e-12)
    assert scale.stretch == pytest.approx(0.25)


def test_a_mirror_swaps_sides_and_keeps_its_line() -> None:
    mirror = Affine.mirror(Point(0, 10), Vector(1, 0))
    assert close(mirror.apply(Point(3, 12)), Point(3, 8), 1e-12)
    assert close(mirror.apply(Point(5, 10)), Point(5, 10), 1e-12)
    assert mirror.flips
    assert mirror.determinant == pytest.approx(-1)


@some
@given(motions, points)
def test_the_inverse_brings_back(motion: Affine, point: Point) -> None:
    assert close(motion.inverse().apply(motion.apply(point)), point)
    assert close(motion.then(motion.inverse()).apply(point), point)


@some
@given(motions, motions, points)
def test_then_means_afterwards(first: Affine, second: Affine, point: Point) -> None:
    assert close(first.then(second).apply(point), second.apply(first.apply(point)), 1e-8)


@some
@given(motions, points, points)
def test_vectors_are_differences_of_points(motion: Affine, p: Point, q: Point) -> None:
    assert (motion.apply_vector(q - p) - (motion.apply(q) - motion.apply(p))).length <= 1e-8


@some
@given(motions)
def test_taking_finds_the_motion_again(motion: Affine) -> None:
    if motion.flips:
        motion = motion.then(Affine.mirror(ORIGIN, Vector(1, 0)))
    p, q = Point(10, 20), Point(50, 60)
    found = Affine.taking(p, q, motion.apply(p), motion.apply(q))
    assert close(found.apply(Point(-7, 31)), motion.apply(Point(-7, 31)), 1e-8)


def test_taking_lays_the_ray_and_keeps_the_length() -> None:
    laid = Affine.taking(Point(0, 0), Point(10, 0), Point(5, 5), Point(5, 6))
    assert close(laid.apply(Point(0, 0)), Point(5, 5), 1e-12)
    assert close(laid.apply(Point(10, 0)), Point(5, 15), 1e-12)
    assert not laid.flips


def test_a_flat_map_has_no_way_back() -> None:
    with pytest.raises(ZeroDivisionError):
        Affine(1, 0, 0, 0, 0, 0).inverse()


def test_only_similar_maps_are_similar() -> None:
    assert Affine.rotation(1.0).then(Affine.scale(3.0)).is_similar()
    assert Affine.mirror(ORIGIN, Vector(1, 2)).is_similar()
    assert not Affine(1, 0, 0.001, 1, 0, 0).is_similar()
    assert not Affine(1, 0, 0, 1.001, 0, 0).is_similar()


def test_bounds() -> None:
    box = Bounds.of_points(Point(1, 2), Point(5, -2), Point(3, 3))
    assert box == Bounds(1, -2, 5, 3)
    assert (box.width, box.height, box.centre) == (4, 5, Point(3, 0.5))
    assert box.union(Bounds(0, 0, 1, 9)) == Bounds(0, -2, 5, 9)
    assert box.grown(1) == Bounds(0, -3, 6, 4)
    assert box.contains(Point(5, 3))
    assert not box.contains(Point(5.1, 3))
    assert box.overlaps(Bounds(5, 3, 6, 6))
    assert not box.overlaps(Bounds(5.01, 3, 6, 6))
