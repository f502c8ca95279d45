from __future__ import annotations

import pytest
from shapely import box
from shapely.affinity import affine_transform

from tests.draft.rings import length, only_problem, polygon
from tests.draft.shapes.frame import AREA, BLOCK, EDGES

FRAME = BLOCK


def test_straight_stand(drafted):
    """
    button stand on middle of block by 2 cm as wide
    """
    assert not drafted.problems
    assert polygon(drafted, "wide", *EDGES).area == pytest.approx(AREA + 20 * 300)
    assert drafted.lines["wide.middle"].path.start.x == pytest.approx(-20)
    assert length(drafted, "wide.waist") == pytest.approx(220)
    line = drafted.lines["wide.middle_line"].path
    assert (line.start.x, line.end.x, line.length()) == pytest.approx((0, 0, 300))


def test_stand_folded_back_lies_on_the_piece(drafted):
    """
    point N below A by 6 cm
    point M right of A by 7 cm
    curve neck from M going down to N going left
    outline front edges N-B as middle, hem, side, M-C as shoulder, neck
    button stand on middle of front by 2 cm as wide
    """
    assert not drafted.problems
    edges = ("middle", "hem", "side", "shoulder", "neck")
    front, wide = (polygon(drafted, sheet, *edges) for sheet in ("front", "wide"))
    stand = wide.intersection(box(-100, -1000, 0, 1000))
    turned = affine_transform(stand, [-1, 0, 0, 1, 0, 0])
    under = front.intersection(box(0, -1000, 20, 1000))
    assert turned.symmetric_difference(under).area == pytest.approx(0, abs=0.1)


def test_bent_edge(drafted):
    """
    arc bow from C to D radius 40 cm rightward
    outline front edges middle, hem, bow, waist
    button stand on bow of front by 2 cm as wide
    """
    assert only_problem(drafted).code == "line-not-straight"


def test_no_width(drafted):
    """
    button stand on middle of block by 0 cm as wide
    """
    assert only_problem(drafted).code == "stand-without-width"


def test_wider_than_the_piece(drafted):
    """
    button stand on middle of block by 25 cm as wide
    """
    problem = only_problem(drafted)
    assert problem.code == "stand-too-wide"
    assert [number.value for number in problem.numbers] == pytest.approx([250, 200])


def test_no_such_edge(drafted):
    """
    button stand on centre of block by 2 cm as wide
    """
    assert only_problem(drafted).code == "name-not-known"
