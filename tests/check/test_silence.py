"""Where rules hold their tongue: nothing to compare, told already, or another order of the same."""

from __future__ import annotations

from dataclasses import replace

import pytest

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances, check
from littlefold.check.rules.cap_ease import cap_ease
from littlefold.check.rules.inside_line_outside import inside_line_outside
from littlefold.check.rules.outline_crosses_itself import outline_crosses_itself
from littlefold.check.rules.paper_needed import paper_needed
from littlefold.check.rules.recipe_check_fails import recipe_check_fails
from littlefold.check.rules.seam_without_partner import seam_without_partner
from littlefold.draft.evaluate import evaluate
from littlefold.draft.model import Cutting, DraftPoint, DraftSheet, EdgeKind, Inside, Notion
from littlefold.geometry import Point
from littlefold.pattern.trace import trace
from littlefold.problem import Place, Problem
from littlefold.recipe.parse import parse
from tests.check.examples import PLAIN, bow_tie, compared
from tests.check.garments import (
    BINDING,
    TOP_SEAMS,
    block,
    body,
    draft,
    half_top,
    leg,
    line,
    redrawn,
    sew,
    sleeve,
    spoiled,
    top,
    top_with,
    trousers,
)

ASKED = Circumstances()


def codes(pattern) -> set[str]:
    return {problem.code for problem in check(pattern)}


@pytest.mark.parametrize("where", ["hem", "wrist", "waist"])
def test_an_elastic_at_an_edge_that_nothing_passes_or_that_is_not_there_is_not_judged(where):
    sewn = top_with(Notion("elastic", 100.0, where=where))
    assert codes(sewn) & {"elastic-reach", "elastic-too-tight"} == set()


@pytest.mark.parametrize("missing", ["neck", "head"])
def test_a_girth_that_is_not_known_is_not_compared(missing):
    found = codes(top_with(Notion("elastic", 100.0, where="neck"), measurements=body().without(missing)))
    assert ("elastic-too-tight" in found) is (missing != "neck")
    assert ("elastic-reach" in found) is (missing != "head")


def test_a_cap_may_stand_first_in_its_seam():
    """The ease of the cap is the same, whichever run the recipe names first."""
    parts = tuple(
        spoiled(half_top(n), "armhole", kind=EdgeKind.SEAM, allowance=10.0) for n in ("front", "back")
    )
    seam = sew("sleeve.cap_front+sleeve.cap_back", "front.armhole+back.armhole", ease=-24.33)
    [found] = cap_ease(trace(draft((*parts, sleeve(cap=290.0)), (*TOP_SEAMS, seam))), ASKED)
    assert {n.name: n.value for n in found.numbers}["ease"] == pytest.approx(24.33, abs=0.01)


def test_only_the_inside_line_that_lies_outside_is_reported():
    good = Inside("good", "buttonhole", line((50, 50), (50, 60)))
    bad = Inside("bad", "buttonhole", line((50, 50), (250, 50)))
    [found] = inside_line_outside(top(half_top("front", slit=(bad, good))), ASKED)
    assert '"bad"' in found.message


def test_a_flat_drawing_needs_no_fold_and_an_empty_one_no_paper():
    points = {
        "flat.A": DraftPoint("flat.A", Point(0, 0), 1),
        "flat.B": DraftPoint("flat.B", Point(210, 297), 2),
    }
    sheets = (DraftSheet("flat", ""), DraftSheet("empty", ""))
    [note] = paper_needed(top(sheets=sheets, points=points), ASKED)
    assert "at least 21 cm by 29.7 cm" in note.message


def test_a_row_of_points_needs_no_paper():
    """It is what is left of a draft whose measurements are missing."""
    points = {name: DraftPoint(name, Point(0, y), 1) for name, y in (("row.A", 0), ("row.B", -20))}
    assert list(paper_needed(top(sheets=(DraftSheet("row", ""),), points=points), ASKED)) == []


def test_a_drawing_with_its_fold_below_is_doubled_upward():
    """T1, the bib (../shared/reference/drafting.md section 7): 15 by 5 1/2 in of drawing, folded along its length."""
    kinds = {"middle": ("fold", 0.0), "side": ("hem", 0.0), "top": ("hem", 0.0), "bottom": ("hem", 0.0)}
    bib = block("bib", 381.0, 139.7, kinds, Cutting(on_fold=True))
    [note] = paper_needed(
        trace(draft((bib,), sheets=(DraftSheet("body", ""),))), Circumstances(fold_margin=0.0)
    )
    measured = {n.name: n.value for n in note.numbers}
    assert (measured["width"], measured["height"]) == pytest.approx((11 * 25.4, 15 * 25.4))


def test_pieces_that_could_not_be_traced_need_no_paper():
    whole = top(sheets=(DraftSheet("body", ""),))
    without = replace(whole, pieces=())
    assert list(paper_needed(without, ASKED)) == []


def test_a_check_line_that_the_draft_has_reported_is_not_told_twice():
    failing = compared(passes=False)
    told = replace(failing, draft=replace(failing.draft, problems=(Problem("recipe-check-fails", "told"),)))
    assert list(recipe_check_fails(told, ASKED)) == []


def test_a_crossing_that_tracing_has_reported_is_not_told_twice():
    crossing = Problem("stitch-line-crosses", "told", place=Place(piece="front"))
    assert list(outline_crosses_itself(replace(bow_tie(), problems=(crossing,)), ASKED)) == []


@pytest.mark.parametrize(("made_as", "found"), [("bias", 0), ("facing", 0), ("traced", 3)])
def test_strips_and_facings_are_laid_on_without_a_seam(made_as, found):
    strip = replace(block("edging", 480.0, 35.0, PLAIN, Cutting()), made_as=made_as)
    sewn = trace(draft((half_top("front"), half_top("back"), strip), TOP_SEAMS, notions=(BINDING,)))
    assert len(list(seam_without_partner(sewn, ASKED))) == found


def test_a_waistband_is_folded_over_where_it_is_not_sewn():
    band = block("waistband", 320.0, 70.0, PLAIN, Cutting(on_fold=False))
    other = replace(block("skirt", 320.0, 300.0, PLAIN, Cutting()), name="skirt")
    sewn = trace(draft((band, other), (sew("waistband.long", "skirt.long"),)))
    assert {p.place.piece for p in seam_without_partner(sewn, ASKED)} == {"skirt"}


def test_an_elastic_that_may_belong_to_two_casings_is_not_judged():
    """Waist and leg are both casings, and the elastic does not say where it goes."""
    halves = tuple(spoiled(leg(n), "hem", kind=EdgeKind.CASING, allowance=20.0) for n in ("front", "back"))
    found = codes(trousers(*halves, notions=(Notion("elastic", 100.0),)))
    assert found & {"elastic-length", "elastic-reach", "elastic-too-tight"} == set()


def test_inside_lines_of_a_piece_that_crosses_itself_wait_until_it_does_not():
    stray = Inside("stray", "buttonhole", line((900, 50), (950, 50)))
    sound = top(half_top("front", slit=(stray,)))
    crossing = line((0, 0), (160, 0), (0, 300), (160, 300), (0, 0))
    spoilt = redrawn(sound, "front", outline=replace(sound.piece("front").outline, cut=crossing))
    assert len(list(inside_line_outside(sound, ASKED))) == 1
    assert list(inside_line_outside(spoilt, ASKED)) == []


def test_strips_and_outlines_on_the_way_need_no_sheet_of_their_own():
    text = (
        'title "Skirt"\ndrawing plan\npoint A at the start\npoint B right of A by 20 cm\npoint C below B by 30 cm\n'
        "point D below A by 30 cm\noutline half edges A-D as middle, D-C as hem, C-B as side, B-A as waist\n"
        "gathers in half across waist as full by ratio 2\n"
        "piece skirt from full cut 1 on fold\nedges middle fold, hem hem, side seam, waist seam\n"
        "piece band band along skirt.waist by 4 cm cut 1\n"
    )
    pattern = trace(evaluate(parse(text), Measurements()))
    notes = list(paper_needed(pattern, ASKED))
    assert [note.message.split('"')[1] for note in notes] == ["plan", "full"]
