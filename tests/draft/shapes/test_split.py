from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from littlefold.draft.shapes.cut import crossing, parts
from littlefold.draft.shapes.shape import Shape, ShapeEdge
from littlefold.geometry import Path, Point
from tests.draft.rings import length, only_problem, polygon
from tests.draft.shapes.frame import AREA, BLOCK

FRAME = BLOCK


def test_split_upright(drafted):
    """
    split block along P-Q into inner nearer A and outer
    """
    assert not drafted.problems
    inner = polygon(drafted, "inner", "middle", "hem", "P-Q", "waist")
    outer = polygon(drafted, "outer", "hem", "side", "waist", "P-Q")
    assert inner.area == pytest.approx(80 * 300)
    assert outer.area == pytest.approx(120 * 300)
    assert inner.intersection(outer).area == pytest.approx(0, abs=1e-6)
    assert length(drafted, "inner.hem") + length(drafted, "outer.hem") == pytest.approx(200)


def test_nearer_tells_the_names(drafted):
    """
    split block along P-Q into one nearer D and other
    """
    assert "one.side" in drafted.lines
    assert "other.middle" in drafted.lines


def test_points_of_both_parts(drafted):
    """
    split block along P-Q into inner nearer A and outer
    """
    own = {name.partition(".")[2] for name in drafted.points if name.startswith("outer.")}
    assert own == {"C", "D", "P", "Q"}
    assert drafted.points["outer.P"].at == drafted.points["block.P"].at
    assert drafted.lines["inner.P-Q"].start == "Q"


def test_line_that_runs_on_past_the_outline(drafted):
    """
    point V below A by 10 cm
    point W right of V by 50 cm
    line yoke_line from V to W
    split block along yoke_line into yoke nearer A and skirt
    """
    assert not drafted.problems
    assert length(drafted, "yoke.yoke_line") == pytest.approx(200)
    assert polygon(drafted, "yoke", "middle", "yoke_line", "side", "waist").area == pytest.approx(200 * 100)
    assert polygon(drafted, "skirt", "middle", "hem", "side", "yoke_line").area == pytest.approx(200 * 200)


def test_curved_line(drafted):
    """
    point V below A by 10 cm
    point W right of V by 20 cm
    curve yoke_line from V going right to W going up
    split block along yoke_line into yoke nearer A and skirt
    """
    yoke = polygon(drafted, "yoke", "middle", "yoke_line", "side", "waist")
    skirt = polygon(drafted, "skirt", "middle", "hem", "side", "yoke_line")
    assert yoke.area + skirt.area == pytest.approx(AREA, abs=0.5)  # both are flattened to 0.002 mm
    assert length(drafted, "yoke.yoke_line") == pytest.approx(length(drafted, "block.yoke_line"))


def test_both_ends_on_one_edge(drafted):
    """
    point V right of A by 15 cm
    point W right of A by 11 cm and below by 5 cm
    arc scoop through P, W, V
    split block along scoop into hole nearer W and rest
    """
    # W lies on the line itself, so it cannot tell the parts apart.
    assert only_problem(drafted).code == "answers-alike"


def test_edge_cut_in_two_is_numbered(drafted):
    """
    point V right of A by 15 cm
    point W right of A by 11 cm and below by 5 cm
    point Z right of A by 11 cm and below by 1 cm
    arc scoop through P, W, V
    split block along scoop into hole nearer Z and rest
    """
    assert not drafted.problems
    hole = polygon(drafted, "hole", "waist", "scoop")
    rest = polygon(drafted, "rest", "middle", "hem", "side", "waist_1", "scoop", "waist_2")
    assert hole.area + rest.area == pytest.approx(AREA, abs=0.5)
    assert length(drafted, "rest.waist_1") == pytest.approx(50)
    assert length(drafted, "rest.waist_2") == pytest.approx(80)


def test_lines_inside_go_along(drafted):
    """
    point R right of A by 10 cm and below by 5 cm
    point S right of A by 15 cm and below by 5 cm
    line pocket from R to S
    split block along P-Q into inner nearer A and outer
    """
    assert "outer.pocket" in drafted.lines
    assert "inner.pocket" not in drafted.lines


def test_line_that_stops_short(drafted):
    """
    point V above Q by 1 cm
    split block along P-V into inner nearer A and outer
    """
    problem = only_problem(drafted)
    assert problem.code == "line-not-across"
    assert [number.value for number in problem.numbers] == [1, 2]


def test_line_along_the_outside(drafted):
    """
    point V below P by 4 cm
    point W left of V by 4 cm
    point Z right of C by 3 cm
    arc round through C, Z, D
    split block along round into inner nearer A and outer
    """
    assert only_problem(drafted).code == "line-outside"


def test_no_such_outline(drafted):
    """
    split skirt along P-Q into inner nearer A and outer
    """
    problem = only_problem(drafted)
    assert problem.code == "name-not-known"
    assert "block" in problem.message


def test_what_a_split_did_not_make_is_not_reported_again(drafted):
    """
    split block along P-A into inner nearer A and outer
    split outer along P-Q into one nearer A and other
    slash one along P-Q as two opening 1 cm at hem
    """
    assert only_problem(drafted).code == "line-outside"


def test_name_taken(drafted):
    """
    split block along P-Q into block nearer A and outer
    """
    assert only_problem(drafted).code == "name-taken"


def test_name_with_a_dot(drafted):
    """
    split block along P-Q into block.inner nearer A and outer
    """
    assert only_problem(drafted).code == "name-with-dot"


SQUARE = (Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100))


def _square() -> Shape:
    corners = (*SQUARE, SQUARE[0])
    return Shape(tuple(ShapeEdge(f"e{k}", Path.line_through(corners[k], corners[k + 1])) for k in range(4)))


@given(st.floats(5, 95), st.floats(5, 95), st.integers(0, 3), st.integers(1, 3))
def test_parts_make_up_the_whole(along, across, edge, further):
    """Cut from any edge to any other, the two parts have the area of the square between them."""
    shape = _square()
    start = shape.edges[edge].path.at_length(along)
    end = shape.edges[(edge + further) % 4].path.at_length(across)
    cut = crossing(shape, Path.line_through(start, end), ("line", "square"), (1, 1))
    both = parts(shape, cut, "cut")
    areas = [part.outline.signed_area() for part in both]
    assert min(areas) > 0
    assert sum(areas) == pytest.approx(100 * 100)
    rims = sum(part.outline.length() for part in both)
    assert rims == pytest.approx(400 + 2 * start.distance(end))
