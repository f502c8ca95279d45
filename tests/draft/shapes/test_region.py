"""What lies on or in an outline, against an independent polygon library."""

from __future__ import annotations

from math import pi

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from littlefold.draft.outline import CORNER
from littlefold.draft.shapes.region import Region
from littlefold.geometry import Arc, Cubic, Line, Path, Point

# A tear-drop with every kind of segment: a straight foot, a quarter of a circle, a curve that swings back.
OUTLINE = Path(
    (
        Line(Point(0, 0), Point(80, 0)),
        Arc(Point(80, 20), 20, -pi / 2, pi / 2),
        Cubic(Point(100, 20), Point(100, 90), Point(-60, 60), Point(0, 40)),
        Line(Point(0, 40), Point(0, 0)),
    )
)
REGION = Region.within(OUTLINE)
POLYGON = shapely.Polygon([(point.x, point.y) for point in OUTLINE.flatten(1e-4)])

heights = st.sampled_from((0.0, 20.0, 40.0))
places = st.builds(Point, st.floats(-50, 150), st.floats(-20, 120) | heights)


@given(places)
def test_a_point_is_told_inside_or_outside(place: Point) -> None:
    spot = shapely.Point(place.x, place.y)
    assume(POLYGON.exterior.distance(spot) > CORNER + 0.001)
    assert REGION.holds(place) == REGION.holds_inside(place) == POLYGON.contains(spot)


@given(places)
def test_turned_the_other_way_it_holds_the_same(place: Point) -> None:
    turned = Region.within(OUTLINE.reversed())
    assert turned.holds(place) == REGION.holds(place)
    assert turned.holds_inside(place) == REGION.holds_inside(place)


@given(st.floats(0, OUTLINE.length()), st.floats(-0.9, 0.9))
def test_within_a_corner_a_point_lies_on_it(at: float, share: float) -> None:
    beside = OUTLINE.at_length(at) + OUTLINE.tangent_at_length(at).turned_left() * (share * CORNER)
    assert REGION.holds(beside)
    assert not REGION.holds_inside(beside)


@pytest.mark.parametrize(
    ("line", "held"),
    [
        (Path.line_through(Point(10, 10), Point(70, 10)), True),
        (Path.line_through(Point(0, 0), Point(80, 30)), True),
        (Path.line_through(Point(0, 0), Point(80, 0)), False),
        (Path.line_through(Point(10, 10), Point(150, 10)), False),
        (Path.line_through(Point(0, 5), Point(-40, 25), Point(0, 35)), False),
        (Path((OUTLINE.segments[2],)), False),
        (OUTLINE.part(90.0, 170.0), False),
        (Path((Cubic(Point(100, 20), Point(90, 30), Point(30, 30), Point(0, 40)),)), True),
    ],
    ids=[
        "inside",
        "between corners",
        "an edge",
        "out of it",
        "out and in",
        "a curve of it",
        "round it",
        "curved",
    ],
)
def test_lines_in_it_and_not_along_it(line: Path, *, held: bool) -> None:
    assert REGION.holds_line(line) == held
    assert REGION.holds_line(line.reversed()) == held
