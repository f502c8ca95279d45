"""Angles at corners, and at the joins that a seam makes."""

from __future__ import annotations

from math import atan2, degrees, pi, radians, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.check import Circumstances
from littlefold.check.corners import corner_at_end, corners
from littlefold.check.joins import joins, smooth_joins
from littlefold.check.rules.corner_at_fold import corner_at_fold
from littlefold.check.rules.edges_bend_at_seam import edges_bend_at_seam
from littlefold.draft.model import Cutting, EdgeKind
from littlefold.pattern.trace import trace
from littlefold.problem import Severity
from tests.check.garments import (
    TOP_SEAMS,
    curve,
    draft,
    edge,
    half_top,
    line,
    piece,
    sew,
    sleeve,
    sleeved_top,
    spoiled,
    top,
    trousers,
)

ASKED = Circumstances()


def skirt_half(name: str, lean: float):
    """Half a skirt 16 by 30 cm whose side leans out by an angle; the hem is straight across."""
    out = 300.0 * tan(lean)
    edges = (
        edge("hem", "hem", line((0, 0), (160 + out, 0)), 20.0),
        edge("side", "seam", line((160 + out, 0), (160, 300)), 10.0),
        edge("waist", "bound", line((160, 300), (0, 300))),
        edge("middle", "fold", line((0, 300), (0, 0))),
    )
    return piece(name, edges, Cutting(on_fold=True))


def skirt(front: float, back: float):
    return trace(
        draft(
            (skirt_half("front", front), skirt_half("back", back)),
            (sew("front.side", "back.side", tolerance=50.0),),
        )
    )


def test_the_corners_of_a_rectangle_are_square():
    square = trace(draft((skirt_half("front", 0.0),))).piece("front")
    assert [degrees(c.angle) for c in corners(square)] == pytest.approx([90.0] * 4)


def test_the_angles_of_a_quadrilateral_add_up_to_two_half_turns():
    slanted = trace(draft((skirt_half("front", radians(7)),))).piece("front")
    assert sum(c.angle for c in corners(slanted)) == pytest.approx(2 * pi)
    assert degrees(corner_at_end(slanted, "hem").angle) == pytest.approx(83.0)


@settings(max_examples=40)
@given(st.floats(0.0, 0.3), st.floats(0.0, 0.3))
def test_the_bend_of_a_straight_hem_is_the_lean_of_both_sides(front: float, back: float):
    """Two flared halves with straight hems make a point at the side of exactly both leans together."""
    hems = [join for join in smooth_joins(skirt(front, back)) if join.first_edge.name == "hem"]
    assert [join.bend for join in hems] == pytest.approx([front + back])


def test_a_hem_within_four_degrees_is_one_line_and_more_is_a_warning():
    assert list(edges_bend_at_seam(skirt(radians(2), radians(1.9)), ASKED)) == []
    [*_, seen] = edges_bend_at_seam(skirt(radians(3), radians(3)), ASKED)
    assert seen.severity is Severity.WARNING
    spoilt = list(edges_bend_at_seam(skirt(radians(11), radians(11)), ASKED))
    assert {problem.severity for problem in spoilt} == {Severity.WARNING}
    measured = {number.name: number.value for number in spoilt[0].numbers}
    assert measured["angle"] == pytest.approx(158.0)
    assert "158.0 degrees" in spoilt[0].message


def test_neck_and_armhole_across_the_shoulder_and_hem_and_armhole_across_the_side_are_looked_at():
    """Trueing rule 2 (../shared/reference/drafting.md section 3): armhole and neck at the shoulder."""
    asked = {(j.seam.first[0].edge, j.first_edge.name) for j in smooth_joins(top())}
    assert asked == {("side", "hem"), ("side", "armhole"), ("shoulder", "armhole"), ("shoulder", "neck")}


def test_an_armhole_that_takes_a_sleeve_is_still_asked_to_be_smooth():
    asked = {(j.seam.first[0].edge, j.first_edge.name) for j in smooth_joins(sleeved_top())}
    assert {("side", "armhole"), ("shoulder", "armhole")} <= asked
    assert all(join.first_edge.name != "side" for join in smooth_joins(sleeved_top()))


def test_crotch_curves_run_on_across_the_inside_leg():
    asked = {(j.seam.first[0].edge, j.first_edge.name) for j in smooth_joins(trousers())}
    assert ("inside", "crotch") in asked
    assert ("crotch", "inside") not in asked


def test_a_gathered_seam_is_not_asked_to_be_smooth():
    gathered = (sew("front.side", "back.side", gather=True), sew("front.shoulder", "back.shoulder"))
    assert {j.seam.first[0].edge for j in smooth_joins(top(seams=gathered))} == {"shoulder"}
    assert any(j.seam.gather for j in joins(top(seams=gathered)))


def test_every_edge_at_the_fold_is_measured_and_a_v_neck_is_a_warning():
    neck = half_top("front").edges[4].path
    vee = spoiled(half_top("front"), "neck", path=line((112.0, 370.0), (neck.end.x, neck.end.y)))
    [found] = corner_at_fold(top(vee), ASKED)
    assert (found.place.piece, found.place.edge, found.severity) == ("front", "neck", Severity.WARNING)
    measured = {number.name: number.value for number in found.numbers}
    assert measured["angle"] == pytest.approx(90.0 + degrees(atan2(370.0 - neck.end.y, 112.0)))


@pytest.mark.parametrize(("lean", "severity"), [(10.0, Severity.WARNING), (25.0, Severity.ERROR)])
def test_an_armhole_with_a_point_that_takes_a_sleeve_is_an_error(lean, severity):
    """The front armhole arrives at the shoulder slanted by an angle: the sleeve stands off there."""
    hole = half_top("front").edges[2].path
    way = hole.end_tangent.turned(radians(lean))
    bent = curve((hole.start.x, hole.start.y), hole.start_tangent, way, (hole.end.x, hole.end.y))
    sleeved = tuple(
        spoiled(
            half_top(n),
            "armhole",
            kind=EdgeKind.SEAM,
            allowance=10.0,
            **({"path": bent} if n == "front" else {}),
        )
        for n in ("front", "back")
    )
    seams = (
        *TOP_SEAMS,
        sew("front.armhole+back.armhole", "sleeve.cap_front+sleeve.cap_back", tolerance=50.0),
    )
    found = list(edges_bend_at_seam(trace(draft((*sleeved, sleeve()), seams)), ASKED))
    assert [problem.severity for problem in found if problem.place.edge == "armhole"] == [severity]
