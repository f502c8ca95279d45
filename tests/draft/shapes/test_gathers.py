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
