"""Corners that are not turned: each rule by coordinates worked out with pencil and ruler."""

from __future__ import annotations

from math import cos, radians, sin, sqrt, tan

import pytest

from littlefold.draft.model import EdgeKind
from littlefold.pattern.corner import Rule
from littlefold.pattern.cutting_line import strips
from littlefold.pattern.margin import Margin
from littlefold.pattern.trace import trace_piece
from tests.pattern.shapes import edge, piece, point, polygon_edges, straight

SQUARE = ((0, 0), (100, 0), (100, 100), (0, 100))


def cut_points(drawn):
    traced, problems = trace_piece(drawn)
    assert problems == ()
    return [segment.start for segment in traced.outline.cut.segments]


def rules(edges):
    return [corner.rule for corner in strips([Margin.of(edge) for edge in edges])[1]]


def has(points, *wanted):
    return all(min(p.distance(point(*w)) for p in points) < 1e-6 for w in wanted)


def test_a_square_with_one_width_is_a_larger_square():
    edges = polygon_edges(*SQUARE)
    points = cut_points(piece("square", edges))
    assert rules(edges) == [Rule.MITRED] * 4
    assert len(points) == 4
    assert has(points, (-10, -10), (110, -10), (110, 110), (-10, 110))


def test_different_widths_meet_where_their_lines_cross():
    points = cut_points(piece("square", polygon_edges(*SQUARE, allowances=[5, 10, 15, 20])))
    assert has(points, (-20, -5), (110, -5), (110, 115), (-20, 115))


def test_an_edge_without_allowance_lets_the_others_run_out_to_its_line():
    kinds = [EdgeKind.SEAM, EdgeKind.BOUND, EdgeKind.SEAM, EdgeKind.RAW]
    points = cut_points(piece("square", polygon_edges(*SQUARE, kinds=kinds, allowances=[10, 0, 10, 0])))
    assert has(points, (0, -10), (100, -10), (100, 110), (0, 110))


def test_nothing_lies_beyond_a_fold():
    kinds = [EdgeKind.SEAM, EdgeKind.SEAM, EdgeKind.HEM, EdgeKind.FOLD]
    edges = polygon_edges(*SQUARE, kinds=kinds, allowances=[10, 10, 30, 0])
    assert rules(edges)[2:] == [Rule.TO_FOLD, Rule.TO_FOLD]
    points = cut_points(piece("half", edges))
    assert has(points, (0, -10), (0, 130))
    assert min(p.x for p in points) == 0


def test_a_slanting_edge_runs_straight_on_to_the_line_of_the_fold():
    edges = polygon_edges((0, 0), (100, 50), (0, 100), kinds=[EdgeKind.SEAM, EdgeKind.SEAM, EdgeKind.FOLD])
    points = cut_points(piece("gore", edges))
    # the lower edge rises by 1 in 2; its parallel at 10 meets the fold 10 * sqrt(5) / 2 lower
    assert has(points, (0, -10 * sqrt(5) / 2), (0, 100 + 10 * sqrt(5) / 2))


def test_a_hollow_corner_ends_where_the_lines_cross():
    corners = ((0, 0), (100, 0), (100, 100), (50, 100), (50, 50), (0, 50))
    points = cut_points(piece("notched", polygon_edges(*corners)))
    assert has(points, (40, 60), (40, 110), (-10, 60))


def test_a_sharp_corner_is_squared():
    """The shorter seam carries its stitch line on to the other's cutting line and ends square there."""
    angle = radians(40)
    tip = point(200, 0)
    back = point(200 - 150 * cos(angle), 150 * sin(angle))
    edges = (
        edge("long", straight((0, 0), (200, 0))),
        edge("short", straight((tip.x, tip.y), (back.x, back.y))),
        edge("rest", straight((back.x, back.y), (0, 0))),
    )
    assert rules(edges)[0] is Rule.SQUARED
    points = cut_points(piece("gusset", edges))
    # carried on beyond the tip, the short seam falls at 40 degrees to the cut line 10 below
    crossing = point(200 + 10 / tan(angle), -10)
    square = point(crossing.x + 10 * sin(angle), crossing.y + 10 * cos(angle))
    assert has(points, (crossing.x, crossing.y), (square.x, square.y))
    mitre = 10 / sin(angle / 2)
    assert all(p.distance(tip) < mitre for p in points if p.x > 150)


def test_a_very_sharp_corner_is_cut_across():
    edges = polygon_edges((0, 0), (300, 0), (0, 60))
    assert rules(edges)[0] is Rule.BLUNT
    points = cut_points(piece("spike", edges))
    assert has(points, (310, -10))
    assert max(p.x for p in points) < 320


def test_a_change_of_width_on_a_straight_run_is_a_step():
    edges = polygon_edges((0, 0), (50, 0), (100, 0), (100, 80), (0, 80), allowances=[20, 10, 10, 10, 10])
    assert rules(edges)[0] is Rule.STEPPED
    assert has(cut_points(piece("slit", edges)), (50, -20), (50, -10))


def test_edges_that_run_on_smoothly_have_no_corner():
    edges = polygon_edges((0, 0), (50, 0), (100, 0), (100, 80), (0, 80))
    assert rules(edges)[0] is Rule.PLAIN
    assert len(cut_points(piece("run", edges))) == 5


@pytest.mark.parametrize("degrees", [65, 90, 120, 150])
def test_a_mitre_lies_on_the_bisector(degrees):
    angle = radians(degrees)
    edges = polygon_edges((0, 0), (200, 0), (200 * cos(angle), 200 * sin(angle)))
    assert rules(edges)[2] is Rule.MITRED
    far = 10 / sin(angle / 2)
    expected = (-far * cos(angle / 2), -far * sin(angle / 2))
    assert has(cut_points(piece("wedge", edges)), expected)
