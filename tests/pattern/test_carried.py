"""Lines carried on beyond their ends, and where two of them cross."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from littlefold.geometry import Cubic, Line, Path
from littlefold.pattern.carried import Carried
from littlefold.pattern.crossing import crossing
from tests.pattern.shapes import point, straight

CURVE = Path((Cubic(point(0, 0), point(30, 0), point(60, 20), point(60, 60)),))
PLACES = st.floats(-50, 150)


@given(PLACES)
def test_the_foot_of_a_place_is_the_place(place):
    line = Carried(CURVE)
    assert line.foot(line.at(place)) == pytest.approx(place, abs=1e-4)
    assert line.footing(line.at(place)).point.distance(line.at(place)) < 1e-6


@given(PLACES, PLACES)
def test_parts_are_as_long_as_they_should_be(one, other):
    line = Carried(CURVE)
    low, high = sorted((one, other))
    if high - low > 1e-3:
        part = line.part(low, high)
        assert part.length() == pytest.approx(high - low, abs=1e-4)
        assert part.start.distance(line.at(low)) < 1e-6
        assert part.end.distance(line.at(high)) < 1e-6


@given(PLACES)
def test_travelled_the_other_way_it_is_the_same_line(place):
    line = Carried(CURVE)
    back = line.reversed()
    assert back.at(line.length - place).distance(line.at(place)) < 1e-6
    assert back.tangent(line.length - place).dot(line.tangent(place)) == pytest.approx(-1.0)


def test_a_line_carried_on_stays_one_line():
    line = Carried(straight((0, 0), (100, 0)))
    assert line.part(-10, 120).segments == (Line(point(-10, 0), point(120, 0)),)
    assert line.part(-10, -5).segments == (Line(point(-10, 0), point(-5, 0)),)


def test_lines_cross_beyond_their_ends():
    found = crossing(
        Carried(straight((0, 0), (100, 0))), Carried(straight((-5, 5), (-5, 90))), point(0, 0), 50
    )
    assert (found.first, found.second) == pytest.approx((-5.0, -5.0))


def test_a_crossing_too_far_off_is_none():
    first, second = Carried(straight((0, 0), (100, 0))), Carried(straight((-80, 5), (-80, 90)))
    assert crossing(first, second, point(0, 0), 50) is None


def test_parallel_lines_do_not_cross():
    first, second = Carried(straight((0, 0), (100, 0))), Carried(straight((0, 5), (100, 5)))
    assert crossing(first, second, point(0, 0), 50) is None


def test_a_curve_is_crossed_where_it_bends():
    found = crossing(Carried(CURVE), Carried(straight((40, -10), (40, 80))), point(40, 0), 50)
    assert found.point.x == pytest.approx(40.0)
    assert CURVE.nearest(found.point).distance < 1e-6
