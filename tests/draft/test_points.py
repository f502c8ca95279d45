"""Every way to place a point, each against plane geometry worked out by hand."""

from __future__ import annotations

from math import cos, pi, sin, sqrt
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = """title "Points"
drawing s
point A at the start
point B right of A by 4 cm
point C above A by 3 cm
point D at 40 mm across and 30 mm up"""


def at(draft: Draft, name: str = "P") -> tuple[float, float]:
    assert not draft.problems, draft.problems[0].message
    point = draft.points[f"s.{name}"].at
    return (point.x, point.y)


def test_the_frame(drafted: Draft) -> None:
    """point P at the start"""
    assert at(drafted) == (0, 0)
    assert at(drafted, "D") == (40, 30)


def test_offset_in_one_direction(drafted: Draft) -> None:
    """point P below B by 1 in"""
    assert at(drafted) == pytest.approx((40, -25.4))


def test_offset_with_a_second_leg(drafted: Draft) -> None:
    """point P left of B by 1 cm and above by 2 cm"""
    assert at(drafted) == pytest.approx((30, 20))


def test_level_and_plumb(drafted: Draft) -> None:
    """point P level with C and plumb with B"""
    assert at(drafted) == (40, 30)


def test_in_from_the_fold(drafted: Draft) -> None:
    """point P in from the fold by 15 mm level with C"""
    assert at(drafted) == (15, 30)


def test_towards(drafted: Draft) -> None:
    """point P from A towards D by 25 mm"""
    assert at(drafted) == pytest.approx((20, 15))  # A-D is 5 cm long, a 3-4-5 triangle


def test_share(drafted: Draft) -> None:
    """point P from A towards D at 1/5"""
    assert at(drafted) == pytest.approx((8, 6))


def test_midway(drafted: Draft) -> None:
    """point P midway between B and C"""
    assert at(drafted) == (20, 15)


def test_reach_of_two_compasses(drafted: Draft) -> None:
    """point P at 3 cm from A and 5 cm from B upward"""
    assert at(drafted) == pytest.approx((0, 30))  # the 3-4-5 triangle again


def test_reach_the_other_way(drafted: Draft) -> None:
    """point P at 3 cm from A and 5 cm from B further from C"""
    assert at(drafted) == pytest.approx((0, -30))


def test_on_a_line(drafted: Draft) -> None:
    """point P on B-C by 1 cm from C"""
    assert at(drafted) == pytest.approx((8, 24))


def test_on_a_line_by_share(drafted: Draft) -> None:
    """point P on B-C at 1/4 from B"""
    assert at(drafted) == pytest.approx((30, 7.5))


def test_on_a_line_level(drafted: Draft) -> None:
    """
    point Q above A by 15 mm
    point P on B-C level with Q
    """
    assert at(drafted) == pytest.approx((20, 15))


def test_on_a_line_plumb(drafted: Draft) -> None:
    """
    point Q right of A by 10 mm
    point P on B-C plumb with Q
    """
    assert at(drafted) == pytest.approx((10, 22.5))


def test_a_line_carried_on(drafted: Draft) -> None:
    """point P carrying on A-D past D by 5 cm"""
    assert at(drafted) == pytest.approx((80, 60))


def test_a_line_carried_on_at_its_beginning(drafted: Draft) -> None:
    """point P carrying on A-D past A by 5 cm"""
    assert at(drafted) == pytest.approx((-40, -30))


def test_foot_of_a_perpendicular(drafted: Draft) -> None:
    """point P foot of A on B-C"""
    assert at(drafted) == pytest.approx((40 * 9 / 25, 30 * 16 / 25))


def test_square_from_a_line(drafted: Draft) -> None:
    """point P square from A-D at D by 5 cm leftward"""
    assert at(drafted) == pytest.approx((10, 70))


def test_from_a_corner(drafted: Draft) -> None:
    """point P from corner B-A-C by 2 cm"""
    assert at(drafted) == pytest.approx((20 / sqrt(2), 20 / sqrt(2)))


def test_lines_meet(drafted: Draft) -> None:
    """point P where A-D meets B-C"""
    assert at(drafted) == pytest.approx((20, 15))


def test_a_line_is_carried_on_to_meet(drafted: Draft) -> None:
    """
    point Q above D by 3 cm
    point P where A-B meets C-Q
    """
    assert at(drafted) == pytest.approx((-40, 0))


def test_a_line_meets_a_circle(drafted: Draft) -> None:
    """point P where A-D meets a circle about A of 5 cm nearer D"""
    assert at(drafted) == pytest.approx((40, 30))


def test_a_line_meets_an_arc(drafted: Draft) -> None:
    """
    arc bow about A from B by 90 degrees anticlockwise
    point P where A-D meets bow
    """
    assert at(drafted) == pytest.approx((32, 24))


def test_mirror(drafted: Draft) -> None:
    """point P mirror of A across B-C"""
    assert at(drafted) == pytest.approx((2 * 14.4, 2 * 19.2))


def test_turned(drafted: Draft) -> None:
    """point P turning B about A by 30 degrees anticlockwise"""
    assert at(drafted) == pytest.approx((40 * cos(pi / 6), 40 * sin(pi / 6)))


def test_at_an_angle_from_a_line(drafted: Draft) -> None:
    """point P from A by 2 cm at 90 degrees clockwise from A-C"""
    assert at(drafted) == pytest.approx((20, 0))


def test_end_of_a_line(drafted: Draft) -> None:
    """
    line side from B to D
    point P at the end of side
    """
    assert at(drafted) == (40, 30)


@pytest.mark.parametrize("name", ["Q"])
def test_names_of_other_sheets(drafted: Draft, name: str) -> None:
    """
    drawing t
    point Q right of s.D by 1 cm
    """
    assert not drafted.problems
    assert drafted.points[f"t.{name}"].at.x == pytest.approx(50)
