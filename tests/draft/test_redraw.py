"""A sheet drawn again: what is repeated, what is changed, what is left out, and what is told."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.problem import Severity

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = """title "Redraw"
drawing other
point X at the start
point Y right of X by 5 cm
line edge from X to Y
drawing body
point A at the start
point B right of A by 6 cm
point C below B by 4 cm
line top from A to B
line side from B to C
run rim = top then side
trace other.edge
point R on rim by 8 cm from A
"""


def test_runs_and_traced_lines_are_repeated(drafted: Draft) -> None:
    """
    redraw body as back
    with point B right of A by 7 cm
    amount around = length of back.rim
    amount traced = length of back.edge
    """
    assert not drafted.problems
    amounts = {amount.name: amount.value for amount in drafted.amounts}
    assert amounts == pytest.approx({"around": 110, "traced": 50})  # 7 + 4 cm; 5 cm
    # 8 cm along the rim: 7 cm to the right and 1 cm down.
    assert (drafted.points["back.R"].at.x, drafted.points["back.R"].at.y) == pytest.approx((70, -10))


def test_what_needs_a_line_left_out_is_left_out_where_it_is_named_so(drafted: Draft) -> None:
    """
    redraw body as back
    without side, R, edge
    """
    assert not drafted.problems
    assert "back.top" in drafted.lines
    assert not {"back.side", "back.R", "back.edge"} & {*drafted.lines, *drafted.points}


def test_a_change_of_what_is_not_there(drafted: Draft) -> None:
    """
    redraw body as back
    with line syde from A to C
    without top
    """
    problem = next(one for one in drafted.problems if one.code == "nothing-to-change")
    assert 'no step that makes "syde". Did you mean "side"?' in problem.message
    assert (problem.place.line, problem.place.column) == (FRAME.count("\n") + 3, 11)
    assert "back.side" in drafted.lines
    assert "back.top" not in drafted.lines


def test_outlines_are_not_repeated_and_this_is_told(drafted: Draft) -> None:
    """
    line last from C to A
    outline flag edges top, side, last
    redraw body as back
    """
    (problem,) = drafted.problems
    assert problem.code == "outlines-not-redrawn"
    assert problem.severity is Severity.NOTE
    assert "its outlines (flag) are not" in problem.message


def test_outlines_stated_anew_are_not_told(drafted: Draft) -> None:
    """
    line last from C to A
    outline flag edges top, side, last
    redraw body as back
    outline back_flag edges top, side, last
    """
    assert not drafted.problems
    assert "back_flag.top" in drafted.lines


def test_a_sheet_redrawn_from_a_redrawn_one(drafted: Draft) -> None:
    """
    redraw body as back
    with point B right of A by 7 cm
    redraw back as lining
    with point C below B by 1 cm
    amount around = length of lining.rim
    """
    assert drafted.amounts[-1].value == pytest.approx(80)
