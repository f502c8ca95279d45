"""The shipped recipes with the choices that they start with are safe, and their cords are found."""

from __future__ import annotations

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances, check, registered
from littlefold.draft.evaluate import evaluate
from littlefold.draft.suits import stature_range
from littlefold.pattern.trace import trace
from littlefold.problem import Severity
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text

SAFETY = {rule.code for rule in registered() if rule.safety}


def shelf(name: str):
    text = shipped_text(name)
    return None if text is None else parse(text)


def findings(name: str, stature: float, circumstances: Circumstances | None = None, **choices: str):
    child = complete(Measurements.of({"stature": stature}))[0]
    return check(trace(evaluate(shelf(name), child, choices, shelf=shelf)), circumstances)


def errors(found) -> list[str]:
    return [problem.message for problem in found if problem.severity is Severity.ERROR]


@pytest.mark.parametrize("region", ["eu", "us"])
@pytest.mark.parametrize("name", shipped_names())
def test_the_closing_a_recipe_starts_with_is_safe(name, region):
    low, high = stature_range(shelf(name))
    for stature in (low, (low + high) / 2, high):
        found = [p for p in findings(name, stature, Circumstances(region=region)) if p.code in SAFETY]
        assert errors(found) == []


@pytest.mark.parametrize("stature", [620.0, 980.0, 1340.0])
def test_the_casing_top_drawn_in_with_a_cord_is_an_error_that_names_the_rule(stature):
    [found] = [p for p in findings("casing-top", stature, closing="cord") if p.code == "cord-at-neck-young"]
    assert found.severity is Severity.ERROR
    assert found.rule == "EN 14682"
    assert (found.place.piece, found.place.edge) == ("front", "neckline")


def test_in_the_united_states_its_own_rule_is_named_too():
    found = findings("casing-top", 1040.0, Circumstances(region="us", us_size="4T"), closing="cord")
    assert {p.rule for p in found if p.code.startswith("cord-at-neck")} == {
        "EN 14682",
        "16 CFR 1120.3(b), ASTM F1816",
    }


def test_the_bib_with_tapes_as_in_the_book_is_a_warning_with_the_strangling_caution():
    found = [
        p
        for p in findings("bib", 800.0, closing="tapes")
        if p.code in SAFETY and p.severity is not Severity.NOTE
    ]
    assert [(p.code, p.severity) for p in found] == [("tapes-near-neck", Severity.WARNING)]
    assert "strangle" in found[0].message
