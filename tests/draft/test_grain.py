"""Where the grain arrow lies."""

from __future__ import annotations

from math import degrees

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from littlefold.draft.grain import CLEAR, LONGEST, grain_arrow
from littlefold.geometry import Arc, Path, Point, Vector


def rectangle(width: float, height: float) -> Path:
    corners = (Point(0, 0), Point(width, 0), Point(width, height), Point(0, height), Point(0, 0))
    return Path.line_through(*corners)


def test_upright_where_nothing_is_said_and_off_the_middle() -> None:
    start, end = grain_arrow([rectangle(200, 300)], None)
    assert (start.x, end.x) == pytest.approx((60, 60))
    assert (start.y, end.y) == pytest.approx((60, 240))


def test_it_points_up_whichever_way_is_stated() -> None:
    start, end = grain_arrow([rectangle(200, 300)], Vector(0, -7))
    assert start.y < end.y
    start, end = grain_arrow([rectangle(200, 300)], Vector(-7, 0))
    assert start.x < end.x


def test_it_is_not_longer_than_needed() -> None:
    start, end = grain_arrow([rectangle(300, 2000)], None)
    assert start.distance(end) == pytest.approx(LONGEST)
    assert start.towards(end, 0.5).y == pytest.approx(1000)


def test_it_keeps_clear_of_the_sides_where_it_can() -> None:
    """At 0.3 of 50 mm it would come within 15 mm of the side; at the first place that is clear, it lies well inside."""
    start, _ = grain_arrow([rectangle(50, 300)], None)
    assert CLEAR <= start.x <= 50 - CLEAR


@pytest.mark.parametrize("length", [300, 377.7, 512.3])
def test_in_a_strip_all_places_are_alike_and_the_first_is_taken(length: float) -> None:
    """Cut at half a right angle, every arrow is as long as the others and as near the sides."""
    start, end = grain_arrow([rectangle(length, 35)], Vector(1, 1))
    assert degrees((end - start).angle) == pytest.approx(45)
    middle = start.towards(end, 0.5)
    assert middle.y == pytest.approx(17.5)
    assert middle.x - middle.y == pytest.approx(
        -35 + 0.3 * (length + 35)
    )  # across: from (0, 35) to (length, 0)


angles = st.floats(-3.2, 3.2)
sides = st.tuples(st.floats(50, 400), st.floats(50, 400), st.floats(5, 45))


@given(sides, angles)
def test_it_lies_inside_along_the_grain(size: tuple[float, float, float], angle: float) -> None:
    """A piece with a scooped corner: the arrow lies in it, whatever the direction of the grain."""
    width, height, scoop = size
    outline = [
        Path.line_through(Point(0, 0), Point(width, 0), Point(width, height - scoop)),
        Path((Arc(Point(width, height), scoop, -1.5707963267948966, -1.5707963267948966),)),
        Path.line_through(Point(width - scoop, height), Point(0, height), Point(0, 0)),
    ]
    start, end = grain_arrow(outline, Vector.polar(angle))
    inside = shapely.Polygon([(point.x, point.y) for path in outline for point in path.flatten(0.01)])
    assert inside.contains(shapely.LineString([(start.x, start.y), (end.x, end.y)]))
    assert (end - start).unit().cross(Vector.polar(angle)) == pytest.approx(0, abs=1e-9)
