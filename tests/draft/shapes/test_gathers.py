from __future__ import annotations

import pytest

from tests.draft.rings import length, only_problem, polygon
from tests.draft.shapes.frame import AREA, BLOCK, EDGES

FRAME = BLOCK


def test_ratio(drafted):
    """
    gathers in block across waist as full by ratio 1.8
    """
    assert not drafted.problems
    assert length(drafted, "full.waist") == pytest.approx(360)
    assert length(drafted, "full.middle") == pytest.approx(300)
    assert polygon(drafted, "full", *EDGES).area == pytest.approx(1.8 * AREA)
    assert drafted.points["full.A"].at == drafted.points["block.A"].at
    assert drafted.points["full.P"].at.x == pytest.approx(1.8 * 80)


def test_to_a_length(drafted):
    """
    gathers in block across waist as full to 33 cm
    """
    assert length(drafted, "full.waist") == pytest.approx(330)


def test_upright_edge_grows_upright(drafted):
    """
    gathers in block across side as long_one by ratio 1.5
    """
    assert length(drafted, "long_one.side") == pytest.approx(450)
    assert length(drafted, "long_one.waist") == pytest.approx(200)


def test_round_edge_with_an_arc(drafted):
    """
    point R below A by 6 cm
    point S right of A by 6 cm
    arc neck about A from R to S anticlockwise
    outline front edges R-B as middle, hem, side, S-C as shoulder, neck
    gathers in front across neck as full to 14 cm
    """
    assert not drafted.problems
    assert length(drafted, "front.neck") == pytest.approx(94.25, abs=0.01)  # a quarter of a circle of 6 cm
    assert length(drafted, "full.neck") == pytest.approx(140, abs=1e-3)
    before = polygon(drafted, "front", "middle", "hem", "side", "shoulder", "neck")
    after = polygon(drafted, "full", "middle", "hem", "side", "shoulder", "neck")
    factor = length(drafted, "full.hem") / 200
    assert after.area == pytest.approx(before.area * factor, rel=1e-5)
    assert drafted.lines["full.middle"].path.start.x == pytest.approx(0, abs=1e-9)  # the fold stays upright


def test_shorter_than_it_is(drafted):
    """
    gathers in block across waist as full to 18 cm
    """
    problem = only_problem(drafted)
    assert problem.code == "gathers-not-possible"
    assert [number.value for number in problem.numbers] == pytest.approx([200, 180, 2000])


def test_much_too_long(drafted):
    """
    gathers in block across waist as full by ratio 11
    """
    assert only_problem(drafted).code == "gathers-not-possible"


def test_no_such_edge(drafted):
    """
    gathers in block across waste as full by ratio 2
    """
    problem = only_problem(drafted)
    assert problem.code == "name-not-known"
    assert '"waist"' in problem.message


def test_edge_that_closes(drafted):
    """
    circle rim about Q radius 5 cm
    outline disc edges rim
    gathers in disc across rim as full by ratio 2
    """
    assert only_problem(drafted).code == "edge-is-closed"


def test_between_two_notches(drafted):
    """
    point M right of A by 5 cm
    point N right of A by 15 cm
    gathers in block across waist from M to N as full by ratio 1.8
    """
    assert not drafted.problems
    at = {name: drafted.points[f"full.{name}"].at.x for name in ("A", "M", "P", "N", "C")}
    # 10 cm become 18 cm: what lies before M stays, what lies beyond N moves on by the 8 cm.
    assert at == pytest.approx({"A": 0, "M": 50, "P": 50 + 1.8 * 30, "N": 230, "C": 280})
    assert length(drafted, "full.waist") == pytest.approx(280)
    assert length(drafted, "full.side") == pytest.approx(300)
    assert polygon(drafted, "full", *EDGES).area == pytest.approx(AREA + 80 * 300)


def test_between_two_notches_to_a_length(drafted):
    """
    point M right of A by 5 cm
    point N right of A by 15 cm
    gathers in block across waist from N to M as full to 24 cm
    """
    assert drafted.points["full.N"].at.x - drafted.points["full.M"].at.x == pytest.approx(240)


def test_between_two_notches_of_a_round_edge(drafted):
    """
    point R below A by 6 cm
    point S right of A by 6 cm
    arc neck about A from R to S anticlockwise
    point M on neck at 1/4 from R
    point N on neck at 3/4 from R
    outline front edges R-B as middle, hem, side, S-C as shoulder, neck
    gathers in front across neck from M to N as full by ratio 2
    """
    assert not drafted.problems
    quarter = 94.2478 / 4  # a quarter circle of 6 cm is 9.42478 cm long
    assert length(drafted, "full.neck") == pytest.approx(94.2478 + 2 * quarter, abs=1e-3)
    # The straight edges that are cut stay in one line: hem and shoulder are as much longer as the part is wider.
    wider = drafted.points["full.N"].at.x - drafted.points["full.M"].at.x
    before = drafted.points["front.N"].at.x - drafted.points["front.M"].at.x
    assert length(drafted, "full.hem") == pytest.approx(200 + wider - before)
    assert drafted.lines["full.middle"].path.start.x == pytest.approx(0, abs=1e-9)


def test_a_notch_that_is_not_on_the_edge(drafted):
    """
    point M below A by 5 cm
    gathers in block across waist from M to P as full by ratio 2
    """
    assert only_problem(drafted).code == "not-on-line"


def test_nothing_between_the_notches(drafted):
    """
    gathers in block across waist from P to P as full by ratio 2
    """
    assert only_problem(drafted).code == "edge-is-closed"
