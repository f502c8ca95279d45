from math import pi

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.drawing import Dot, Drawing, Label, Meaning, Stroke, crop, crop_path
from littlefold.geometry import Arc, Bounds, Cubic, Line, Path, Point
from tests.drawing.paths import paths

SQUARE = Bounds(0.0, 0.0, 100.0, 100.0)


# Polygons stand for the curves, and follow them to this distance [mm].
NEAR = 2e-3


def off(point, parts):
    """How far a point lies off some paths, by an independent library."""
    lines = [[(p.x, p.y) for p in part.flatten(NEAR / 2)] for part in parts]
    return shapely.MultiLineString(lines).distance(shapely.Point(point.x, point.y))


def test_a_line_is_cut_at_both_edges():
    (part,) = crop_path(Path.line_through(Point(-50, 50), Point(150, 50)), SQUARE)
    assert part.start.distance(Point(0, 50)) < 1e-9
    assert part.end.distance(Point(100, 50)) < 1e-9


def test_a_circle_round_a_corner_keeps_its_quarter_as_an_arc():
    circle = Path((Arc(Point(0, 0), 40.0, -1.0, 2 * pi),))
    parts = crop_path(circle, SQUARE)
    assert all(isinstance(segment, Arc) for part in parts for segment in part.segments)
    assert sum(part.length() for part in parts) == pytest.approx(40 * pi / 2, abs=1e-9)


def test_a_line_that_leaves_and_comes_back_is_two_strokes_of_one_name():
    zigzag = Path.line_through(Point(50, 50), Point(150, 60), Point(50, 70))
    cropped = crop(Drawing((Stroke(zigzag, Meaning.STITCH, "side"),)), SQUARE)
    assert [mark.name for mark in cropped.marks] == ["side", "side"]


def test_a_line_along_an_edge_belongs_to_the_window_on_either_side():
    edge = Path.line_through(Point(100, 20), Point(100, 80))
    assert len(crop_path(edge, SQUARE)) == 1
    assert len(crop_path(edge, Bounds(100.0, 0.0, 200.0, 100.0))) == 1


def test_a_cubic_that_bulges_over_the_edge_is_split_where_it_crosses():
    bulge = Cubic(Point(50, 10), Point(170, 10), Point(170, 90), Point(50, 90))
    parts = crop_path(Path((bulge,)), SQUARE)
    assert len(parts) == 2
    for crossing in (parts[0].end, parts[1].start):
        assert crossing.x == pytest.approx(100.0, abs=1e-8)
        assert bulge.at(bulge.nearest(crossing)).distance(crossing) < 1e-8


def test_a_cubic_that_turns_exactly_on_the_edge_stays_whole():
    touching = Cubic(Point(50, 0), Point(150, 0), Point(50, 100), Point(50, 100))
    window = Bounds(0.0, 0.0, touching.bounds().right, 100.0)
    assert sum(part.length() for part in crop_path(Path((touching,)), window)) == pytest.approx(
        touching.length(), abs=1e-6
    )


def test_words_and_dots_are_kept_whole_or_not_at_all():
    drawing = Drawing(
        (
            Label("half in", Point(98, 50)),
            Label("outside", Point(300, 50)),
            Dot(Point(100, 100), Meaning.LETTER),
            Dot(Point(101, 100), Meaning.LETTER),
        )
    )
    kept = crop(drawing, SQUARE).marks
    assert kept == (drawing.marks[0], drawing.marks[2])


@settings(max_examples=120, deadline=None)
@given(paths(), st.floats(-250, 250), st.floats(-250, 250))
def test_the_lengths_in_four_quarters_add_up(path, x, y):
    x, y = x + 0.000123456, y + 0.000654321  # no stroke of the strategy runs along such an edge
    far = 5000.0
    quarters = (
        Bounds(-far, -far, x, y),
        Bounds(x, -far, far, y),
        Bounds(-far, y, x, far),
        Bounds(x, y, far, far),
    )
    parts = [part for quarter in quarters for part in crop_path(path, quarter)]
    assert sum(part.length() for part in parts) == pytest.approx(path.length(), rel=2e-6, abs=1e-5)


@settings(max_examples=120, deadline=None)
@given(paths())
def test_what_is_kept_lies_inside_and_on_the_path(path):
    window = Bounds(-100.0, -80.0, 120.0, 90.0)
    for part in crop_path(path, window):
        points = part.flatten(0.5)
        assert all(window.grown(1e-6).contains(point) for point in points)
        assert all(off(point, (path,)) < NEAR for point in points[::3])


@settings(max_examples=60, deadline=None)
@given(paths())
def test_what_is_left_out_lies_outside(path):
    window = Bounds(-100.0, -80.0, 120.0, 90.0)
    parts = crop_path(path, window)
    for point in path.flatten(0.5):
        if window.grown(-1e-6).contains(point):
            assert off(point, parts) < NEAR


def test_neighbouring_windows_cut_at_the_very_same_point():
    curve = Path((Cubic(Point(20, 30), Point(90, -40), Point(120, 160), Point(180, 40)),))
    (left,) = crop_path(curve, SQUARE)
    (right,) = crop_path(curve, Bounds(100.0, 0.0, 200.0, 100.0))
    assert left.end.distance(right.start) < 1e-7


def test_a_path_closed_over_its_start_keeps_its_line():
    square = Path.line_through(Point(10, 10), Point(90, 10), Point(90, 90), Point(10, 90), Point(10, 10))
    assert crop_path(square, SQUARE) == (square,)
    assert isinstance(square.segments[0], Line)
