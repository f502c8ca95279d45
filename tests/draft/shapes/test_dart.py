from __future__ import annotations

from math import atan, sin

import pytest

from tests.draft.rings import gap, length, only_problem, polygon
from tests.draft.shapes.frame import AREA, BLOCK, EDGES

# A dart 4 cm wide at the hem, 20 cm deep; H on the side, K on the waist straight above its tip.
FRAME = (
    BLOCK
    + """
continue block
point M right of B by 6 cm
point N right of B by 10 cm
point T above Q by 20 cm
point H below C by 10 cm
"""
)
ANGLE = 2 * atan(20 / 200)


def test_dart_swung_to_the_side(drafted):
    """
    close dart M-T-N of block as swung opening T-H
    """
    assert not drafted.problems
    assert length(drafted, "swung.hem") == pytest.approx(200 - 40)
    assert gap(drafted, "swung.M", "swung.N") == pytest.approx(0, abs=1e-6)
    assert gap(drafted, "swung.H_1", "swung.H_2") == pytest.approx(2 * 120 * sin(ANGLE / 2))
    assert gap(drafted, "swung.T", "swung.H_1") == pytest.approx(120)
    assert gap(drafted, "swung.T", "swung.H_2") == pytest.approx(120)
    assert drafted.points["swung.A"].at == drafted.points["block.A"].at


def test_area_loses_one_wedge_and_gains_another(drafted):
    """
    close dart M-T-N of block as swung opening T-P
    """
    taken = 40 * 200 / 2
    opened = 100 * 100 * ANGLE / 2  # a sector: the waist is carried across by an arc's near likeness
    assert polygon(drafted, "swung", *EDGES).area == pytest.approx(AREA - taken + opened, abs=0.5)


def test_dart_in_the_other_order(drafted):
    """
    close dart N-T-M of block as swung opening T-H
    close dart M-T-N of block as again opening H-T
    """
    one, other = (polygon(drafted, name, *EDGES) for name in ("swung", "again"))
    assert one.symmetric_difference(other).area == pytest.approx(0, abs=1e-3)


def test_dart_that_runs_right_across(drafted):
    """
    close dart M-P-N of block as shut
    """
    assert not drafted.problems
    assert length(drafted, "shut.hem") == pytest.approx(160)
    assert length(drafted, "shut.waist") == pytest.approx(200)
    assert polygon(drafted, "shut", *EDGES).area == pytest.approx(AREA - 40 * 300 / 2)


def test_the_part_with_the_first_edge_stays(drafted):
    """
    outline other edges side, waist, middle, hem
    close dart M-T-N of other as swung opening T-P
    """
    assert drafted.points["swung.D"].at == drafted.points["block.D"].at
    assert drafted.points["swung.B"].at != drafted.points["block.B"].at


def test_new_dart_can_be_stated(drafted):
    """
    close dart M-T-N of block as swung opening T-H
    piece swung cut 1 on fold
    edges middle fold, hem hem, side seam, waist seam
    inside dart H_1-T-H_2 as side_dart on side
    """
    assert not drafted.problems
    assert drafted.pieces[0].inside[0].path.length() == pytest.approx(240)


def test_tip_inside_and_nothing_opens(drafted):
    """
    close dart M-T-N of block as shut
    """
    problem = only_problem(drafted)
    assert problem.code == "nothing-opens"
    assert problem.numbers[0].value == pytest.approx(80)  # T lies 8 cm from the fold, 10 cm from the waist


def test_legs_that_differ(drafted):
    """
    point L right of B by 12 cm
    close dart M-T-L of block as shut opening T-H
    """
    problem = only_problem(drafted)
    assert problem.code == "dart-legs-differ"
    legs = [(200**2 + 20**2) ** 0.5, (200**2 + 40**2) ** 0.5, 2]
    assert [number.value for number in problem.numbers] == pytest.approx(legs)


def test_leg_beside_the_outline(drafted):
    """
    point L above M by 1 cm
    close dart L-T-N of block as shut opening T-H
    """
    problem = only_problem(drafted)
    assert problem.code == "not-on-outline"
    assert problem.numbers[0].value == pytest.approx(10)


def test_tip_outside(drafted):
    """
    point L below Q by 20 cm
    close dart M-L-N of block as shut opening L-H
    """
    assert only_problem(drafted).code == "dart-without-room"


def test_opening_that_begins_elsewhere(drafted):
    """
    close dart M-T-N of block as shut opening P-H
    """
    problem = only_problem(drafted)
    assert problem.code == "opening-not-from-tip"
    assert problem.numbers[0].value == pytest.approx(100)


def test_opening_that_reaches_no_edge(drafted):
    """
    point L right of T by 3 cm
    close dart M-T-N of block as shut opening T-L
    """
    problem = only_problem(drafted)
    assert problem.code == "opening-not-to-edge"
    assert problem.numbers[0].value == 0


def test_opening_into_the_dart_itself(drafted):
    """
    close dart M-T-N of block as shut opening T-Q
    """
    assert only_problem(drafted).code == "opening-not-to-edge"
