"""Paths: chains of segments measured by arc length."""

from __future__ import annotations

import itertools
from math import hypot, pi

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Point as ShapelyPoint
from shapely.geometry import Polygon

from littlefold.geometry import Affine, Arc, Cubic, Line, Path, Point, Vector
from littlefold.geometry.tolerance import SAME_POINT
from tests.geometry.shapes import AWKWARD, close, fractions, motions, points

some = settings(max_examples=60, deadline=None)

# A square of 100 mm whose right side bulges by a half circle and whose top is a wave.
OUTLINE = Path(
    (
        Line(Point(0, 0), Point(100, 0)),
        Arc(Point(100, 50), 50, -pi / 2, pi),
        Cubic(Point(100, 100), Point(60, 140), Point(40, 60), Point(0, 100)),
        Line(Point(0, 100), Point(0, 0)),
    )
)


@st.composite
def chains(draw: st.DrawFn) -> Path:
    """Open chains of lines and cubics through up to five points."""
    corners = draw(st.lists(points, min_size=2, max_size=5))
    assume(all(p.distance(q) > 0.1 for p, q in itertools.pairwise(corners)))
    handles = [draw(points) for _ in corners]
    return Path(
        tuple(
            Line(p, q) if draw(st.booleans()) else Cubic(p, h, h, q)
            for p, q, h in zip(corners, corners[1:], handles, strict=False)
        )
    )


def test_a_broken_chain_is_refused() -> None:
    with pytest.raises(ValueError, match="broken"):
        Path((Line(Point(0, 0), Point(1, 0)), Line(Point(2, 0), Point(3, 0))))
    with pytest.raises(ValueError, match="at least one"):
        Path(())


def test_joining_snaps_lines_to_arcs() -> None:
    arc = Arc(Point(0, 0), 10, 0, 1)
    end = Point(arc.end.x + 4e-7, arc.end.y)
    joined = Path.joined(
        Path((Line(Point(20, 0), Point(10 + 4e-7, 0)), arc)), Path((Line(end, Point(0, 30)),))
    )
    for before, after in zip(joined.segments, joined.segments[1:], strict=False):
        assert before.end == after.start
    assert joined.segments[1] == arc


def test_joining_what_does_not_meet_is_refused() -> None:
    with pytest.raises(ValueError, match="broken"):
        Path.joined(
            Path.line_through(Point(0, 0), Point(1, 0)), Path.line_through(Point(1.1, 0), Point(2, 0))
        )


def test_area_of_the_outline_is_that_of_its_parts() -> None:
    # The wave is symmetrical about the middle of the top side, so it adds nothing to the square.
    assert OUTLINE.signed_area() == pytest.approx(10_000 + 50 * 50 * pi / 2)
    assert OUTLINE.reversed().signed_area() == pytest.approx(-10_000 - 50 * 50 * pi / 2)


@some
@given(motions, st.lists(points, min_size=3, max_size=3))
def test_area_agrees_with_shapely(motion: Affine, corners: list[Point]) -> None:
    p, q, r = corners
    assume(min(p.distance(q), q.distance(r), r.distance(p)) > 1)
    path = Path((Cubic(p, r, q, q), Line(q, r), Cubic(r, q, r, p))).transformed(motion)
    chords = [(c.x, c.y) for c in path.flatten(1e-4)]
    signed = sum(a * d - c * b for (a, b), (c, d) in itertools.pairwise(chords)) / 2
    assert path.signed_area() == pytest.approx(signed, abs=1e-4 * path.length())


def test_an_open_path_has_no_area_and_contains_nothing() -> None:
    line = Path.line_through(Point(0, 0), Point(1, 0))
    with pytest.raises(ValueError, match="open"):
        line.signed_area()
    with pytest.raises(ValueError, match="open"):
        line.contains(Point(0, 0))


@some
@given(st.builds(Point, st.floats(-20, 170), st.floats(-20, 140)))
def test_containment_agrees_with_shapely(point: Point) -> None:
    polygon = Polygon([(p.x, p.y) for p in OUTLINE.flatten()])
    place = ShapelyPoint(point.x, point.y)
    assume(polygon.exterior.distance(place) > 1e-9)
    assert OUTLINE.contains(point) == polygon.contains(place)
    assert OUTLINE.reversed().contains(point) == polygon.contains(place)


@some
@given(chains(), fractions)
def test_a_place_at_a_length_is_that_far_along(path: Path, share: float) -> None:
    wanted = share * path.length()
    index, t = path.locate(wanted)
    assert path.length_to(index, t) == pytest.approx(wanted, abs=2 * SAME_POINT)
    assert close(path.at_length(wanted), path.segments[index].at(t))


@some
@given(chains(), fractions)
def test_split_parts_add_up_and_rejoin(path: Path, share: float) -> None:
    at = share * path.length()
    assume(0.001 < at < path.length() - 0.001)
    before, after = path.split_at_length(at)
    assert before.length() == pytest.approx(at, abs=2e-6)
    assert before.length() + after.length() == pytest.approx(path.length(), rel=1e-6)
    again = Path.joined(before, after)
    assert close(again.at_length(path.length() * 0.7), path.at_length(path.length() * 0.7), 1e-5)


@some
@given(chains(), fractions, fractions)
def test_a_part_has_the_length_asked_for(path: Path, one: float, other: float) -> None:
    low, high = sorted((one * path.length(), other * path.length()))
    assume(high - low > 0.001)
    part = path.part(low, high)
    assert part.length() == pytest.approx(high - low, abs=4e-6)
    assert close(part.start, path.at_length(low), 1e-5)
    assert close(part.end, path.at_length(high), 1e-5)


def test_a_part_of_a_closed_path_goes_on_over_the_start() -> None:
    part = OUTLINE.part(OUTLINE.length() - 30, 20)
    assert part.length() == pytest.approx(50)
    for mine, wanted in zip(part.flatten(), (Point(0, 30), Point(0, 0), Point(20, 0)), strict=True):
        assert close(mine, wanted, 1e-9)
    with pytest.raises(ValueError, match="nothing lies between"):
        Path.line_through(Point(0, 0), Point(9, 0)).part(5, 2)


def test_parts_at_joints_hold_no_slivers() -> None:
    path = Path.line_through(Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10))
    assert path.part(10, 20) == Path.line_through(Point(10, 0), Point(10, 10))
    assert path.part(10 - 1e-8, 20 + 1e-8).segments[0].length() == pytest.approx(10)
    assert len(path.part(10 - 1e-8, 20 + 1e-8).segments) == 1


def test_a_length_outside_is_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="no place"):
        OUTLINE.at_length(OUTLINE.length() + 0.01)
    with pytest.raises(ValueError, match="no place"):
        OUTLINE.at_length(-0.01)
    assert close(OUTLINE.at_length(OUTLINE.length() + 1e-9), OUTLINE.end)


@some
@given(chains())
def test_reversed_twice_is_the_same(path: Path) -> None:
    back = path.reversed()
    assert close(back.at_length(back.length() / 3), path.at_length(path.length() * 2 / 3), 1e-5)
    assert close(back.reversed().at_length(1e-3), path.at_length(1e-3))
    assert (back.start_tangent + path.end_tangent).length <= 1e-9


@some
@given(chains(), points)
def test_nearest_is_where_it_says(path: Path, point: Point) -> None:
    found = path.nearest(point)
    assert found.distance == pytest.approx(found.point.distance(point), abs=1e-9)
    assert close(path.at_length(min(found.length, path.length())), found.point, 1e-5)
    sampled = min(p.distance(point) for p in path.flatten(0.001))
    assert found.distance <= sampled + 1e-9


def test_extending_goes_on_straight() -> None:
    quarter = Path((Arc(Point(0, 0), 10, 0, pi / 2),))
    longer = quarter.extended_start(3).extended_end(4)
    assert close(longer.start, Point(10, -3), 1e-12)
    assert close(longer.end, Point(-4, 10), 1e-12)
    assert longer.length() == pytest.approx(5 * pi + 7)
    assert (longer.end_tangent - Vector(-1, 0)).length <= 1e-12


def test_straight_is_straight_however_many_lines() -> None:
    assert Path.line_through(Point(0, 0), Point(1, 2), Point(3, 6)).is_straight
    assert not Path.line_through(Point(0, 0), Point(1, 2), Point(3, 6.1)).is_straight
    assert not Path.line_through(Point(0, 0), Point(2, 0), Point(1, 0)).is_straight
    assert not OUTLINE.is_straight


def test_flattened_joints_come_once() -> None:
    square = Path.line_through(Point(0, 0), Point(1, 0), Point(1, 1), Point(0, 0))
    assert square.flatten() == (Point(0, 0), Point(1, 0), Point(1, 1), Point(0, 0))
    assert square.is_closed


def test_bounds_are_the_union() -> None:
    box = OUTLINE.bounds()
    assert (box.left, box.bottom, box.right) == (0, 0, 150)
    assert box.top == pytest.approx(
        max(OUTLINE.segments[2].at(k / 10_000).y for k in range(10_001)), abs=1e-5
    )


def test_tangent_at_a_length() -> None:
    assert (OUTLINE.tangent_at_length(50) - Vector(1, 0)).length == 0
    assert (OUTLINE.tangent_at_length(100 + 25 * pi) - Vector(0, 1)).length <= 1e-9


@pytest.mark.parametrize("cubic", AWKWARD.values(), ids=AWKWARD.keys())
def test_awkward_curves_are_split_anywhere(cubic: Cubic) -> None:
    path = Path((cubic,))
    for k in range(1, 20):
        before, after = path.split_at_length(path.length() * k / 20)
        assert before.length() + after.length() == pytest.approx(path.length(), rel=1e-6)


def test_lengths_of_a_polyline() -> None:
    path = Path.line_through(Point(0, 0), Point(30, 40), Point(30, 100))
    assert path.length() == hypot(30, 40) + 60
    assert close(path.at_length(25), Point(15, 20), 1e-12)
