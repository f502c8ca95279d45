from __future__ import annotations

from math import asin, cos, sin

import pytest

from tests.draft.rings import gap, length, only_problem, polygon
from tests.draft.shapes.frame import AREA, BLOCK, EDGES

FRAME = BLOCK


def test_one_opening_turns_about_the_other_end(drafted):
    """
    slash block along P-Q as flared opening 4 cm at hem
    """
    assert not drafted.problems
    assert gap(drafted, "flared.Q_1", "flared.Q_2") == pytest.approx(40)
    turn = 2 * asin(20 / 300)  # the chord of 4 cm at 30 cm from the hinge
    corner = drafted.points["flared.C"].at
    assert corner.x == pytest.approx(80 + 120 * cos(turn))
    assert corner.y == pytest.approx(120 * sin(turn))
    assert drafted.points["flared.P"].at == drafted.points["block.P"].at
    assert drafted.points["flared.B"].at == drafted.points["block.B"].at


def test_edges_that_are_not_opened_keep_their_lengths(drafted):
    """
    slash block along P-Q as flared opening 4 cm at hem
    """
    assert length(drafted, "flared.waist") == pytest.approx(200)
    assert length(drafted, "flared.side") == pytest.approx(300)
    assert length(drafted, "flared.middle") == pytest.approx(300)


def test_opened_edge_is_carried_across_smoothly(drafted):
    """
    slash block along P-Q as flared opening 4 cm at hem
    """
    hem = drafted.lines["flared.hem"].path
    for before, after in zip(hem.segments, hem.segments[1:], strict=False):
        assert before.tangent(1.0).cross(after.tangent(0.0)) == pytest.approx(0, abs=1e-6)
    # The bridge bends like an arc of 30 cm round the hinge: a little longer than its chord.
    assert length(drafted, "flared.hem") - 200 == pytest.approx(300 * 2 * asin(20 / 300), abs=0.02)


def test_area_grows_by_the_wedge(drafted):
    """
    slash block along P-Q as flared opening 4 cm at hem
    """
    turn = 2 * asin(20 / 300)
    grown = polygon(drafted, "flared", *EDGES).area - AREA
    assert grown == pytest.approx(300 * 300 * turn / 2, abs=1)  # a sector of that angle


def test_two_equal_openings_are_parallel(drafted):
    """
    slash block along P-Q as fuller opening 4 cm at hem and 4 cm at waist
    """
    assert length(drafted, "fuller.waist") == pytest.approx(240)
    assert length(drafted, "fuller.hem") == pytest.approx(240)
    assert polygon(drafted, "fuller", *EDGES).area == pytest.approx(AREA + 40 * 300)
    assert drafted.lines["fuller.hem"].path.is_straight


def test_two_unequal_openings(drafted):
    """
    slash block along P-Q as fuller opening 6 cm at hem and 2 cm at waist
    """
    assert gap(drafted, "fuller.Q_1", "fuller.Q_2") == pytest.approx(60)
    assert gap(drafted, "fuller.P_1", "fuller.P_2") == pytest.approx(20)
    assert gap(drafted, "fuller.P_2", "fuller.Q_2") == pytest.approx(300)  # the other part is not bent
    assert gap(drafted, "fuller.C", "fuller.D") == pytest.approx(300)
    assert gap(drafted, "fuller.Q_2", "fuller.D") == pytest.approx(120)
    diagonals = gap(drafted, "fuller.P_1", "fuller.Q_2"), gap(drafted, "fuller.Q_1", "fuller.P_2")
    assert diagonals[0] == pytest.approx(diagonals[1])  # the gap looks the same from both sides


def test_several_lines_open_alike(drafted):
    """
    point R right of A by 12 cm
    point S right of B by 13 cm
    slash block along P-Q, R-S as flared opening 4 cm at hem
    """
    assert not drafted.problems
    assert gap(drafted, "flared.Q_1", "flared.Q_2") == pytest.approx(40)
    assert gap(drafted, "flared.S_1", "flared.S_2") == pytest.approx(40)
    assert length(drafted, "flared.waist") == pytest.approx(200)
    assert polygon(drafted, "flared", *EDGES).area > AREA


def test_lines_in_the_other_order_give_the_same(drafted):
    """
    point R right of A by 12 cm
    point S right of B by 13 cm
    slash block along P-Q, R-S as flared opening 4 cm at hem
    slash block along R-S, P-Q as swapped opening 4 cm at hem
    """
    one, other = (polygon(drafted, name, *EDGES) for name in ("flared", "swapped"))
    assert one.symmetric_difference(other).area == pytest.approx(0, abs=0.1)


def test_lines_fanned_from_one_point(drafted):
    """
    point S right of B by 14 cm
    slash block along P-Q, P-S as flared opening 3 cm at hem
    """
    assert not drafted.problems
    assert gap(drafted, "flared.Q_1", "flared.Q_2") == pytest.approx(30)
    assert gap(drafted, "flared.S_1", "flared.S_2") == pytest.approx(30)
    reach = 300.0, (300.0**2 + 60.0**2) ** 0.5
    turn = sum(2 * asin(15 / leg) for leg in reach)
    assert drafted.points["flared.C"].at.y == pytest.approx(120 * sin(turn))


def test_the_side_opens_and_the_fold_stays(drafted):
    """
    point V below C by 10 cm
    point U below A by 10 cm
    slash block along U-V as longer opening 3 cm at side
    """
    assert drafted.points["longer.A"].at == drafted.points["block.A"].at
    assert gap(drafted, "longer.V_1", "longer.V_2") == pytest.approx(30)
    assert length(drafted, "longer.middle") == pytest.approx(300)


def test_opening_of_nothing(drafted):
    """
    slash block along P-Q as flared opening 0 cm at hem
    """
    assert only_problem(drafted).code == "opening-not-possible"


def test_no_such_edge(drafted):
    """
    slash block along P-Q as flared opening 4 cm at hemline
    """
    problem = only_problem(drafted)
    assert problem.code == "name-not-known"
    assert '"hem"' in problem.message


def test_line_does_not_end_at_the_edge(drafted):
    """
    slash block along P-Q as flared opening 4 cm at side
    """
    assert only_problem(drafted).code == "slash-not-at-edge"


def test_lines_that_cross(drafted):
    """
    point R right of A by 12 cm
    point S right of B by 5 cm
    slash block along P-Q, R-S as flared opening 4 cm at hem
    """
    problem = only_problem(drafted)
    assert problem.code == "slash-lines-cross"
    assert problem.numbers[0].value == pytest.approx(300 * 3 / 7)  # similar triangles: 4 to 3


def test_opening_that_would_turn_too_far(drafted):
    """
    slash block along P-Q as flared opening 45 cm at hem
    """
    problem = only_problem(drafted)
    assert problem.code == "opening-too-wide"
    assert [number.value for number in problem.numbers] == pytest.approx([450, 300 * 2**0.5])
