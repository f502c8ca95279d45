from __future__ import annotations

import pytest

from tests.draft.rings import length, only_problem, polygon

FRAME = """
recipe test-outline
drawing body
point A at the fold
point B below A by 30 cm
point C right of A by 20 cm
point D right of B by 20 cm
point E right of D by 5 cm
point F right of A by 3 cm and below by 4 cm
line hemline from B to E
line side from D to C
line waist from C to A
"""


def test_outline_on_its_own_sheet(drafted):
    """
    outline front edges A-B as middle, hemline as hem, side, waist
    """
    assert not drafted.problems
    assert polygon(drafted, "front", "middle", "hem", "side", "waist").area == pytest.approx(60_000)
    assert length(drafted, "front.hem") == pytest.approx(200)  # cut where it meets the side
    assert length(drafted, "body.hemline") == pytest.approx(250)  # as drawn
    assert [sheet.name for sheet in drafted.sheets] == ["body", "front"]


def test_points_on_it_and_in_it_go_along(drafted):
    """
    outline front edges A-B, hemline, side, waist
    """
    carried = {name for name in drafted.points if name.startswith("front.")}
    assert carried == {"front.A", "front.B", "front.C", "front.D", "front.F"}  # E lies outside
    assert drafted.points["front.F"].at == drafted.points["body.F"].at


def test_clockwise_edges_are_turned(drafted):
    """
    outline front edges A-B, waist, side, hemline
    """
    assert polygon(drafted, "front", "A-B", "hemline", "side", "waist").area == pytest.approx(60_000)


def test_sheet_in_hand_becomes_an_outline(drafted):
    """
    outline body edges A-B as middle, hemline, side, waist
    split body along F-F2 into upper nearer A and lower
    """
    problem = only_problem(drafted)  # F2 is not there; the outline itself is
    assert problem.code == "name-not-known"
    assert drafted.lines["body.middle"].path.length() == pytest.approx(300)
    assert drafted.lines["body.middle"].step == drafted.steps[-1].number
    assert length(drafted, "body.hemline") == pytest.approx(250)  # lines drawn before stay as they are
    assert drafted.steps[-1].kind == "shape.outline"


def test_edge_named_by_its_points_is_found_again(drafted):
    """
    outline front edges A-B, hemline, side, waist
    piece front cut 1 on fold
    edges A-B fold, hemline hem, side seam, waist seam
    """
    assert not drafted.problems
    assert [edge.name for edge in drafted.pieces[0].edges] == ["A-B", "hemline", "side", "waist"]


def test_edges_that_do_not_meet(drafted):
    """
    outline front edges A-B, side, waist
    """
    problem = only_problem(drafted)
    assert problem.code == "edges-do-not-meet"
    assert problem.numbers[0].value == pytest.approx(200)


def test_two_edges_of_one_name(drafted):
    """
    outline front edges A-B as hem, hemline as hem, side, waist
    """
    assert only_problem(drafted).code == "name-taken"


def test_name_of_another_drawing(drafted):
    """
    drawing back
    point A at the fold
    continue body
    outline back edges A-B, hemline, side, waist
    """
    assert only_problem(drafted).code == "name-taken"


def test_sheet_made_an_outline_twice(drafted):
    """
    outline body edges A-B, hemline, side, waist
    outline body edges A-B, hemline, side, waist
    """
    assert only_problem(drafted).code == "name-taken"


def test_name_of_an_edge_that_is_taken(drafted):
    """
    outline body edges A-B as F, hemline, side, waist
    """
    assert only_problem(drafted).code == "name-taken"


def test_points_still_mean_the_straight_line_between_them(drafted):
    """
    point N below A by 4 cm
    line neckline from N to F
    point F2 right of N by 20 cm
    line across from N to F2
    outline body edges A-B, hemline, side, across
    amount whole = length of A-B
    piece body cut 1 on fold
    edges A-B fold, hemline hem, side seam, across seam
    """
    assert not drafted.problems
    whole = next(amount for amount in drafted.amounts if amount.name == "whole")
    assert whole.value == pytest.approx(300)
    assert drafted.pieces[0].edges[0].path.length() == pytest.approx(260)
