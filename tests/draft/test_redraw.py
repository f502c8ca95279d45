"""A sheet drawn again: what is repeated, what is changed, what is left out, and what is told."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

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


def test_outlines_are_repeated_under_the_new_sheets_name(drafted: Draft) -> None:
    """
    line last from C to A
    outline flag edges top, side, last
    redraw body as back
    with point B right of A by 3 cm
    without R
    """
    assert not drafted.problems
    # C stays below B: a triangle with legs of 3 and 4 cm.
    assert drafted.lines["back_flag.last"].path.length() == pytest.approx(50)
    assert drafted.lines["flag.last"].path.length() == pytest.approx(52**0.5 * 10)


def test_an_outline_of_the_sheets_own_name_is_the_new_sheets(drafted: Draft) -> None:
    """
    line last from C to A
    outline body edges top, side, last
    redraw body as back
    with point B right of A by 3 cm
    without R
    piece back "Back" from back cut 1
    edges top seam 1 cm, side seam 1 cm, last seam 1 cm
    grain along C-B
    """
    assert not drafted.problems
    assert [edge.path.length() for edge in drafted.pieces[0].edges] == pytest.approx([50, 40, 30])


def test_what_was_cut_from_an_outline_is_cut_again(drafted: Draft) -> None:
    """
    point D below A by 4 cm
    line foot from D to C
    line middle from A to D
    point P from A towards D by 1 cm
    point Q level with P and plumb with B
    line cut from P to Q
    outline body_whole edges middle, foot, side, top
    split body_whole along body.cut into body_yoke nearer A and body_skirt
    gathers in body_skirt across foot as pocket by ratio 2
    redraw body as back
    with point P from A towards D by 3 cm
    without pocket, R
    amount front_depth = length of body_yoke.middle
    amount back_depth = length of back_yoke.middle
    """
    assert not drafted.problems
    amounts = {amount.name: amount.value for amount in drafted.amounts}
    assert amounts == pytest.approx({"front_depth": 10, "back_depth": 30})
    assert {sheet.name for sheet in drafted.sheets} >= {"pocket", "back_skirt"}
    assert "back_pocket" not in {sheet.name for sheet in drafted.sheets}


def test_an_outline_goes_with_the_line_that_is_left_out(drafted: Draft) -> None:
    """
    line last from C to A
    outline flag edges top, side, last
    gathers in flag across top as full by ratio 2
    redraw body as back
    without last
    """
    assert not drafted.problems
    assert {sheet.name for sheet in drafted.sheets} == {"other", "body", "flag", "full", "back"}


def test_an_outline_can_be_changed(drafted: Draft) -> None:
    """
    line last from C to A
    outline flag edges top, side, last
    redraw body as back
    with outline flag edges A-B as upper, side, last
    """
    assert not drafted.problems
    assert "back_flag.upper" in drafted.lines
    assert "flag.upper" not in drafted.lines


def test_a_name_of_the_sheets_own_is_one_of_the_new_sheets(drafted: Draft) -> None:
    """
    point S below A by length of body.top
    redraw body as back
    with point B right of A by 7 cm
    """
    assert not drafted.problems
    assert drafted.points["back.S"].at.y == pytest.approx(-70)


def test_a_sheet_redrawn_from_a_redrawn_one(drafted: Draft) -> None:
    """
    redraw body as back
    with point B right of A by 7 cm
    redraw back as lining
    with point C below B by 1 cm
    amount around = length of lining.rim
    """
    assert drafted.amounts[-1].value == pytest.approx(80)


def test_a_step_that_was_refused_is_told_once(drafted: Draft) -> None:
    """
    point Q below Z by 1 cm
    point P below Q by 1 cm
    redraw body as back
    redraw body as lining
    with point Q below C by 1 cm
    """
    (problem,) = drafted.problems
    assert problem.code == "name-not-known"
    assert {"back.C", "lining.Q"} <= set(drafted.points)
    assert "back.Q" not in drafted.points
