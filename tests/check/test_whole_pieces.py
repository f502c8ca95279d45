"""Every kind of piece, edge and inside line that a recipe can state is drafted, traced, checked and labelled."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.drawing import Label
from littlefold.pattern.block import Labelling, label_lines
from littlefold.pattern.picture import draw_piece
from littlefold.pipeline import Outcome, Wish, fulfil
from littlefold.problem import Severity
from littlefold.recipe.parse import parse

RECIPE = """recipe pocket-panel
title "Panel"
suits stature 80 cm to 120 cm
source common practice
garment block
cloth knit stretching 0.4 "Single jersey"
drawing panel
point A at the start
point B right of A by 30 cm
point C below B by 40 cm
point D below A by 40 cm
point S right of A by 15 cm
point T below S by 10 cm
point U below A by 20 cm and right by 8 cm
point V right of U by 14 cm
point L right of D by 12 cm
point M right of L by 3 cm
point N above L by 12 cm and right by 1.5 cm
point R right of A by 25 cm
point Q below R by 9 cm
piece panel "Panel" from panel cut 1 for the wearer's left
edges A-D as left selvedge, D-C as hem raw, C-B as right seam 1.5 cm included, B-A as top faced
grain along A-D
notch right at 1/2 double
inside slit S-T as vent on top
inside placket R-Q as closing on top
inside opening U-V as pocket
inside dart L-N-M as dart on hem
inside buttonholes 3 along U-V long 1.5 cm
mark "pocket" at U
piece stay "Stay" rectangle 4 cm by 12 cm cut 2 as a pair cloth interfacing
"""


@pytest.fixture(scope="module")
def outcome() -> Outcome:
    wish = Wish(parse(RECIPE, "panel"), Measurements.of({"stature": 1040.0}), Circumstances())
    return fulfil(wish)


def test_it_is_drafted_without_a_problem(outcome: Outcome) -> None:
    assert [one.message for one in outcome.problems if one.severity is not Severity.NOTE] == []


def test_the_piece_is_for_one_side_and_labelled_so(outcome: Outcome) -> None:
    panel, stay = outcome.pattern.pieces
    assert (panel.cutting.count, panel.cutting.side) == (1, "left")
    assert "wearer's left" in " ".join(label_lines(panel, outcome.pattern, Labelling())).replace(
        "\u2019", "'"
    )
    said = " ".join(label_lines(stay, outcome.pattern, Labelling()))
    assert "interfacing" in said
    assert "pair" in said


def test_selvedge_and_raw_edges_have_no_allowance_and_the_included_one_lies_inside(outcome: Outcome) -> None:
    panel = outcome.pattern.pieces[0]
    cut, stitch = panel.outline.cut.bounds(), panel.outline.stitch.bounds()
    assert cut.width == pytest.approx(300)  # left 0; right as drawn, its stitch line 15 mm inside
    assert stitch.width == pytest.approx(285)
    assert cut.height == pytest.approx(406)  # the raw hem has none, the faced top 6 mm


def test_every_inside_line_is_drawn_and_named(outcome: Outcome) -> None:
    panel = outcome.pattern.pieces[0]
    kinds = [inside.kind for inside in panel.inside]
    assert kinds == ["slit", "placket", "opening", "dart", "buttonhole", "buttonhole", "buttonhole"]
    words = " ".join(
        mark.text for mark in draw_piece(panel, outcome.pattern).marks if isinstance(mark, Label)
    )
    for name in ("slit", "placket", "opening", "dart", "buttonhole", "pocket"):
        assert name in words


def test_the_knit_and_its_stretch_reach_the_checks(outcome: Outcome) -> None:
    assert outcome.draft.stretch == pytest.approx(0.4)
