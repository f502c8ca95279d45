"""A seam of a pleated edge is as long as the edge once its pleats are laid: from the text of a recipe to the finding.

The hand's count: a pleat or tuck of depth d lies three cloths thick and takes 2 d of the edge; a box pleat is two pleats
turned away from each other and takes 4 d, an inverted one likewise.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.check import check
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace
from littlefold.recipe.parse import parse

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

WAIST = 240.0  # mm of band, to which every skirt is sewn

SKIRT = """
recipe pleated-trial
garment skirt
drawing plan
point A at the fold
point B below A by 30 cm
point C right of A by 24 cm
point D right of B by 24 cm
point P right of A by 4 cm
point Q right of B by 4 cm
line hem from B to D
line side from D to C
line waist from C to A
line cut from P to Q
outline plain edges A-B as middle, hem, side, waist
{fold}
piece skirt "Skirt" from laid cut 1 on fold
  edges middle fold, hem hem 3 cm, side seam 1 cm, waist seam 1 cm
  grain along middle
piece band "Band" rectangle 48 cm by 6 cm cut 1 on fold
sew skirt.waist to band.bottom
"""

FOLDS = [
    ("pleats in plain along cut as laid depth 2 cm leftward", 40.0),
    ("pleats in plain along cut as laid depth 2 cm count 3 apart 5 cm rightward", 120.0),
    ("tucks in plain along cut as laid depth 1 cm count 4 apart 4 cm rightward", 80.0),
    ("pleats in plain along cut as laid depth 1.5 cm count 2 apart 12 cm boxed", 120.0),
    ("pleats in plain along cut as laid depth 1.5 cm count 2 apart 12 cm inverted", 120.0),
]


def drafted(fold: str) -> Draft:
    child, _ = complete(Measurements.of({"stature": 1040}))
    return evaluate(parse(SKIRT.format(fold=fold), "trial"), child)


def unfolded(draft: Draft) -> Draft:
    """The same draft as if nobody knew that its pleats are laid before it is sewn."""
    pieces = tuple(
        replace(piece, edges=tuple(replace(edge, folded=0.0) for edge in piece.edges))
        for piece in draft.pieces
    )
    return replace(draft, pieces=pieces)


@pytest.mark.parametrize(("fold", "taken"), FOLDS)
def test_a_pleated_edge_equals_its_partner_once_the_pleats_are_laid(fold, taken):
    pattern = trace(drafted(fold))
    seam = pattern.seams[0]
    assert pattern.piece("skirt").edge("waist").path.length() == pytest.approx(WAIST + taken)
    assert (seam.first_length, seam.second_length) == (pytest.approx(WAIST), pytest.approx(WAIST))
    assert seam.matched
    assert "seam-lengths-differ" not in {found.code for found in check(pattern)}


@pytest.mark.parametrize(("fold", "taken"), FOLDS)
def test_it_would_not_if_the_folds_were_left_out(fold, taken):
    pattern = trace(unfolded(drafted(fold)))
    assert not pattern.seams[0].matched
    (found,) = (found for found in check(pattern) if found.code == "seam-lengths-differ")
    assert {WAIST, WAIST + taken} <= {round(number.value, 6) for number in found.numbers}
