from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from littlefold.geometry import Arc, Path, Point
from littlefold.sheet.strokes import arc_as_cubics, commands


@given(st.floats(1, 2000), st.floats(-4, 4), st.floats(0.01, 2 * pi), st.booleans())
def test_cubics_follow_an_arc_to_a_millionth_of_its_radius(radius, start, sweep, left):
    arc = Arc(Point(12, -7), radius, start, sweep if left else -sweep)
    cubics = arc_as_cubics(arc)
    assert cubics[0].start.distance(arc.start) < 1e-9 * radius
    assert cubics[-1].end.distance(arc.end) < 1e-9 * radius
    for cubic in cubics:
        for k in range(11):
            assert abs(cubic.at(k / 10).distance(arc.centre) - radius) < 1e-6 * radius


def test_commands_count_right_of_and_below_the_home():
    path = Path.line_through(Point(10, 90), Point(30, 50))
    assert commands(path, Point(0, 100)) == (((10.0, 10.0),), ((30.0, 50.0),))


def test_a_half_circle_comes_in_pieces_of_thirty_degrees():
    half = Path((Arc(Point(0, 0), 10.0, 0.0, pi),))
    assert len(commands(half, Point(0, 0))) == 1 + 6
    assert commands(half, Point(0, 0))[-1][-1] == pytest.approx((-10.0, 0.0))
