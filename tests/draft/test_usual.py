from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.draft.desk import DEFAULT_ALLOWANCES
from littlefold.draft.evaluate import evaluate
from littlefold.draft.usual import own_allowances, usual_allowances
from littlefold.recipe.parse import parse

TEXT = """recipe pouch
title "Pouch"
source common practice
{rule}
drawing body
  point A at the fold
  point B below A by 30 cm
  point C right of A by 20 cm
  point D right of B by 20 cm
  line top from A to C
  line side from C to D
  line hemline from B to D
piece front "Front" from body cut 1 on fold
  edges A-B as middle fold, hemline hem, side seam, top seam 2 cm
  grain along A-B
"""
OWN = own_allowances({"seam": 15.0, "hem": 30.0})


def added(choices: dict[str, float], rule: str = "") -> dict[str, float]:
    draft = evaluate(parse(TEXT.format(rule=rule), "pouch"), Measurements(), choices)
    assert not draft.problems
    return {edge.name: edge.allowance for edge in draft.pieces[0].edges}


def test_where_nothing_is_said_the_makers_own_stand_for_the_common_ones() -> None:
    assert added({}) == {"middle": 0.0, "hemline": 20.0, "side": 10.0, "top": 20.0}
    assert added(OWN) == {"middle": 0.0, "hemline": 30.0, "side": 15.0, "top": 20.0}


def test_what_the_recipe_says_stands() -> None:
    assert added(OWN, "allowances seam 1 cm")["side"] == 10.0
    assert added(OWN, "allowances seam 1 cm")["hemline"] == 30.0
    assert added(OWN)["top"] == 20.0


def test_the_common_ones_are_no_choice() -> None:
    assert own_allowances({"seam": DEFAULT_ALLOWANCES["seam"], "hem": 30.0}) == {"allowance-hem": 30.0}


@pytest.mark.parametrize("choices", [{"allowance-none": 3.0}, {"allowance-seam": "wide"}, {"seam": 3.0}])
def test_what_is_no_allowance_changes_none(choices: dict[str, float | str]) -> None:
    assert usual_allowances(choices) == DEFAULT_ALLOWANCES
