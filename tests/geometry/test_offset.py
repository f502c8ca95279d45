"""Offsets: at their distance everywhere, with corners and without loops; shapely's buffer as the judge."""

from __future__ import annotations

from math import pi, sqrt
from random import Random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as ShapelyPoint

from littlefold.geometry import (
    Arc,
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    curve_between,
    curve_through,
    offset,
    offset_tapered,
    self_crossings,
    turn_between,
)
from littlefold.geometry.tolerance import OFFSET
from tests.geometry.shapes import AWKWARD, as_shapely, circle, close

some = settings(max_examples=60, deadline=None)
SQUARE = Path.line_through(Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100), Point(0, 0))


@st.composite
def gentle_curves(draw: st.DrawFn) -> Cubic:
    """Curves as drafted: two ends 20 to 300 mm apart, directions within 70 degrees of the chord."""
    length, lean = draw(st.floats(20, 300)), draw(st.floats(-3, 3))
    start = Point(10, 20)
    out, back = draw(st.floats(-1.2, 1.2)), draw(st.floats(-1.2, 1.2))
    end = start + Vector.polar(lean, length)
    return curve_between(start, end, Vector.polar(lean + out), Vector.polar(lean + back))


def tightest(cubic: Cubic, distance: float) -> float:
    """The least of 1 - distance x curvature: 0 where the offset would have a cusp."""
    return min(1 - distance * cubic.curvature(k / 200) for k in range(201))


def assert_beside(path: Path, moved: Path, distance: float) -> None:
    """Every place of the offset is at the distance from the path, and on the right side of it."""
    chain = as_shapely(path)
    for segment in moved.segments:
        for k in range(9):
            place = segment.at(k / 8)
            assert chain.distance(ShapelyPoint(place.x, place.y)) == pytest.approx(
                abs(distance), abs=OFFSET + 1e-4
            )


@some
@given(gentle_curves(), st.floats(-25, 25))
def test_a_gentle_curve_is_followed_at_its_distance(cubic: Cubic, distance: float) -> None:
    assume(abs(distance) > 0.1)
    assume(tightest(cubic, distance) > 0.05)
    path = Path((cubic,))
    moved = offset(path, distance)
    assert moved is not None
    assert_beside(path, moved, distance)
    assert close(moved.start, cubic.start + path.start_tangent.turned_left() * distance)
    assert close(moved.end, cubic.end + path.end_tangent.turned_left() * distance)
    assert (moved.start_tangent - path.start_tangent).length <= 1e-6
    assert (moved.end_tangent - path.end_tangent).length <= 1e-6


@some
@given(gentle_curves(), st.floats(-25, 25))
def test_the_strip_between_has_the_area_of_steiners_formula(cubic: Cubic, distance: float) -> None:
    assume(abs(distance) > 0.1)
    assume(tightest(cubic, distance) > 0.05)
    path = Path((cubic,))
    moved = offset(path, distance)
    assert moved is not None
    across = Path.line_through(cubic.end, moved.end)
    back = Path.line_through(moved.start, cubic.start)
    strip = Path.joined(path, across, moved.reversed(), back)
    # The integral of (d - d^2 curvature / 2) along the curve; the integral of the curvature is the whole turn.
    turn = sum(turn_between(cubic.tangent(k / 50), cubic.tangent((k + 1) / 50)) for k in range(50))
    wanted = cubic.length() * distance - distance * distance * turn / 2
    assert strip.signed_area() == pytest.approx(wanted, abs=OFFSET * moved.length())


@some
@given(gentle_curves(), st.floats(-25, 25))
def test_an_offset_and_back_is_where_it_was(cubic: Cubic, distance: float) -> None:
    assume(abs(distance) > 0.1)
    assume(tightest(cubic, distance) > 0.3)
    moved = offset(Path((cubic,)), distance)
    assert moved is not None
    back = offset(moved, -distance)
    assert back is not None
    assert as_shapely(back, 1e-3).hausdorff_distance(as_shapely(Path((cubic,)), 1e-3)) <= 3 * OFFSET


@some
@given(gentle_curves(), st.floats(0, 25), st.floats(0, 25))
def test_a_tapered_offset_keeps_its_changing_distance(cubic: Cubic, here: float, there: float) -> None:
    assume(here + there > 0.1)
    assume(min(tightest(cubic, d) for d in (here, there)) > 0.2)
    path = Path((cubic,))
    moved = offset_tapered(path, here, there)
    assert moved is not None
    for k in range(21):
        along = path.length() * k / 20
        wanted = path.at_length(along) + path.tangent_at_length(along).turned_left() * (
            here + (there - here) * k / 20
        )
        assert moved.nearest(wanted).distance <= OFFSET


def test_lines_and_arcs_are_exact() -> None:
    path = Path((Line(Point(0, 0), Point(50, 0)), Arc(Point(50, 30), 30, -pi / 2, pi / 2)))
    moved = offset(path, 10)
    assert moved == Path((Line(Point(0, 10), Point(50, 10)), Arc(Point(50, 30), 20, -pi / 2, pi / 2)))


def test_no_distance_is_the_path_itself() -> None:
    assert offset(SQUARE, 0) is SQUARE


def test_a_square_grows_with_mitres_or_round_corners() -> None:
    mitred, rounded = offset(SQUARE, -10), offset(SQUARE, -10, "round")
    assert mitred is not None
    assert rounded is not None
    assert mitred.signed_area() == pytest.approx(120 * 120)
    assert rounded.signed_area() == pytest.approx(100 * 100 + 4 * 100 * 10 + pi * 100)
    theirs = Polygon([(p.x, p.y) for p in SQUARE.flatten()]).buffer(10, quad_segs=256)
    assert rounded.signed_area() == pytest.approx(theirs.area, rel=1e-4)


def test_a_square_shrinks_until_nothing_is_left() -> None:
    smaller = offset(SQUARE, 30)
    assert smaller is not None
    assert smaller.signed_area() == pytest.approx(40 * 40)
    assert offset(SQUARE, 60) is None


def test_a_sharp_corner_is_cut_across() -> None:
    sharp = Path.line_through(Point(0, 0), Point(100, 0), Point(0, 5))
    moved = offset(sharp, -10)
    assert moved is not None
    assert len(moved.segments) == 3
    assert max(p.x for p in moved.flatten()) < 120


def test_an_inner_corner_of_curves_is_cut_where_they_cross() -> None:
    first = Cubic(Point(0, 0), Point(30, 10), Point(70, 10), Point(100, 0))
    second = Cubic(Point(100, 0), Point(90, 30), Point(90, 70), Point(100, 100))
    path = Path((first, second))
    moved = offset(path, 12)
    assert moved is not None
    assert self_crossings(moved) == ()
    assert_beside(path, moved, 12)


def test_a_bend_tighter_than_the_distance_loses_its_loop() -> None:
    path = Path(
        (
            Line(Point(0, 0), Point(100, 0)),
            Arc(Point(100, 6), 6, -pi / 2, pi / 2),
            Line(Point(106, 6), Point(106, 100)),
        )
    )
    moved = offset(path, 15)
    assert moved is not None
    wanted = (Point(0, 15), Point(91, 15), Point(91, 100))
    for mine, their in zip(moved.flatten(), wanted, strict=True):
        assert close(mine, their)


def test_a_cubic_bend_tighter_than_the_distance_loses_its_swallowtail() -> None:
    bend = Cubic(Point(0, 100), Point(0, 0), Point(0, 0), Point(100, 0))
    assert tightest(bend, 35) < 0
    moved = offset(Path((bend,)), 35)
    assert moved is not None
    assert self_crossings(moved) == ()
    assert_beside(Path((bend,)), moved, 35)


def test_a_turn_that_uses_up_the_end_is_refused() -> None:
    hook = Path((Line(Point(0, 0), Point(100, 0)), Arc(Point(100, 5), 5, -pi / 2, pi / 2)))
    assert offset(hook, 10) is None
    assert offset(hook, -10) is not None


def test_a_circle_shrinks_until_nothing_is_left() -> None:
    ring = Path((circle(Point(0, 0), 50),))
    smaller = offset(ring, 20)
    assert smaller is not None
    assert smaller.signed_area() == pytest.approx(pi * 30 * 30)
    assert offset(ring, 50) is None
    assert offset(ring, 60) is None


def test_a_closed_spline_grows_by_length_times_distance_and_a_disc() -> None:
    # Steiner's formula for a convex outline: area + perimeter x d + pi d^2.
    half = Cubic(Point(100, 0), Point(100, 120), Point(-100, 120), Point(-100, 0))
    oval = Path((half, Cubic(Point(-100, 0), Point(-100, -120), Point(100, -120), Point(100, 0))))
    grown = offset(oval, -10)
    assert grown is not None
    assert grown.is_closed
    assert grown.signed_area() == pytest.approx(oval.signed_area() + oval.length() * 10 + pi * 100, rel=1e-4)


def test_a_smooth_chain_stays_smooth() -> None:
    chain = curve_through(
        (Point(0, 0), Point(60, 20), Point(120, 10), Point(180, 60)), Vector(1, 0), Vector(1, 2)
    )
    moved = offset(chain, 8)
    assert moved is not None
    for before, after in zip(moved.segments, moved.segments[1:], strict=False):
        assert (before.tangent(1.0) - after.tangent(0.0)).length <= 1e-6
    assert_beside(chain, moved, 8)


def test_a_loop_across_the_start_of_an_outline_is_cut_off() -> None:
    # An L whose inner corner at (40, 40) is rounded by 3 mm; the outline begins in the middle of that arc.
    before, after = Arc(Point(43, 43), 3, -pi / 2, -pi / 2).split(0.5)
    outline = Path(
        (
            after,
            *Path.line_through(after.end, Point(40, 100), Point(0, 100), Point(0, 0), Point(100, 0)).segments,
            *Path.line_through(Point(100, 0), Point(100, 40), before.start).segments,
            before,
        )
    )
    grown = offset(outline, -10)
    assert grown is not None
    assert grown.is_closed
    assert self_crossings(grown) == ()
    corners = [(0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100)]
    assert grown.signed_area() == pytest.approx(Polygon(corners).buffer(10, join_style="mitre").area)


def outline_like_a_front(numbers: Random) -> Path:
    """An outline as of a bodice front: hem, side, hollow armhole, shoulder, hollow neck, fold; counter-clockwise."""
    width, height = numbers.uniform(120, 250), numbers.uniform(300, 450)
    centre, neck = Point(0, height - numbers.uniform(25, 90)), Point(numbers.uniform(40, 70), height)
    tip = Point(neck.x + numbers.uniform(20, 45), height - numbers.uniform(15, 40))
    under = Point(width, tip.y - numbers.uniform(80, 140))
    side, fold = Point(width + numbers.uniform(-5, 60), numbers.uniform(0, 15)), Point(0, 0)
    hem = curve_between(fold, side, Vector(1, 0), Vector(1, numbers.uniform(0, 0.2)))
    armhole = curve_between(under, tip, Vector(-1, 0), Vector(0, 1))
    hollow = curve_between(neck, centre, (tip - neck).turned_right(), Vector(-1, 0))
    return Path((hem, Line(side, under), armhole, Line(tip, neck), hollow, Line(centre, fold)))


@pytest.mark.parametrize("distance", [6.0, 10.0, 15.0])
@pytest.mark.parametrize("seed", range(12))
def test_outlines_with_tight_hollows_grow_as_shapely_grows_them(seed: int, distance: float) -> None:
    outline = outline_like_a_front(Random(seed))  # noqa: S311 - shapes, no secrets
    grown = offset(outline, -distance)
    assert grown is not None
    assert self_crossings(grown) == ()
    shape = Polygon([(p.x, p.y) for p in outline.flatten(0.005)])
    assert shape.is_valid
    theirs = shape.buffer(distance, join_style="mitre", mitre_limit=4, quad_segs=64)
    # GEOS simplifies the line by up to a hundredth of the distance before it grows it.
    assert grown.signed_area() == pytest.approx(theirs.area, abs=0.005 * distance * outline.length())


def test_segments_without_length_are_passed_over() -> None:
    path = Path(
        (Line(Point(0, 0), Point(9, 0)), Line(Point(9, 0), Point(9, 0)), Line(Point(9, 0), Point(9, 9)))
    )
    moved = offset(path, -1)
    assert moved == Path.line_through(Point(0, -1), Point(10, -1), Point(10, 9))


def test_a_tapered_line_is_a_line() -> None:
    moved = offset_tapered(Path.line_through(Point(0, 0), Point(100, 0)), 5, 15)
    assert moved == Path.line_through(Point(0, 5), Point(100, 15))


def test_a_tapered_arc_is_a_spiral() -> None:
    arc = Arc(Point(0, 0), 100, 0, pi / 2)
    moved = offset_tapered(Path((arc,)), -5, -25)
    assert moved is not None
    for k in range(21):
        wanted = Point(0, 0) + Vector.polar(pi / 2 * k / 20, 105 + k)
        assert moved.nearest(wanted).distance <= OFFSET


def test_a_tapered_chain_is_mitred_at_its_distance() -> None:
    moved = offset_tapered(Path.line_through(Point(0, 0), Point(100, 0), Point(100, 100)), -10, -30)
    assert moved is not None
    assert close(moved.start, Point(0, -10))
    assert close(moved.end, Point(130, 100))
    assert len(moved.segments) == 2
    corner = moved.segments[0].end
    assert corner.distance(Point(100, 0)) == pytest.approx(20 * sqrt(2), rel=0.15)


@pytest.mark.parametrize("cubic", AWKWARD.values(), ids=AWKWARD.keys())
@pytest.mark.parametrize("distance", [-15.0, -1.0, 1.0, 15.0])
def test_awkward_curves_are_followed_or_refused(cubic: Cubic, distance: float) -> None:
    moved = offset(Path((cubic,)), distance, "round")
    if moved is None:
        assert tightest(cubic, distance) < 0.05 or cubic.length() < 1
        return
    chain = as_shapely(Path((cubic,)), 1e-3)
    buffer = chain.buffer(abs(distance) + 2 * OFFSET, quad_segs=64)
    assert buffer.covers(LineString([(p.x, p.y) for p in moved.flatten()]))


def test_wild_curves_end_near_themselves_or_not_at_all() -> None:
    """Handles of nothing, of a hair's breadth and of ten metres: no exception, and nothing that runs away."""
    chance = Random(1)  # noqa: S311
    sizes = (0.0, 0.0, 1e-300, 1e-9, 1e-6, 1.0, 2.0, 9.0, 100.0, 1e4)
    for _ in range(250):
        corners = [
            Point(*(chance.choice(sizes) * chance.choice((1, -1)) for _ in range(2))) for _ in range(4)
        ]
        found = offset(Path((Cubic(*corners),)), chance.choice((1.0, -1.0, 10.0, -10.0)))
        if found is not None:
            box = found.bounds()
            assert max(map(abs, (box.left, box.bottom, box.right, box.top))) <= 3e4
