"""The page about the language says everything, says it of today's language, and its examples work."""

import re
from pathlib import Path

import pytest

from littlefold.body import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.draft.register import CONSTRUCTIONS
from littlefold.draft.shapes import SHAPE_ACTS
from littlefold.draft.strips import STRIP_ACTS
from littlefold.problem import Severity
from littlefold.recipe.analyse import analyse
from littlefold.recipe.format import format_recipe
from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import parse, read_statement
from littlefold.recipe.reference import _GROUPS, entries
from littlefold.recipe.tree import LayPart, Name, TraceLines
from littlefold.recipe.walk import every
from tools.language_reference import page, said

PAGE = Path(__file__).parents[2].joinpath("docs", "language.md").read_text("utf-8")
ENTRIES = [entry for group in _GROUPS for entry in entries(group)]
RECIPE = re.search(r"```\n(recipe .*?)```", PAGE, re.DOTALL)[1]
# Statements that draw; a traced piece, its edges, and all that is only worked out or sewn have no step of their own.
DRAWN = (*CONSTRUCTIONS, *SHAPE_ACTS, *STRIP_ACTS, TraceLines, LayPart)


def draws(entry):
    return entry.kind in DRAWN


# Words that a form shows in capitals, besides the ends of a corner.
BLANKS = {"NAME", "VALUE", "LINE", "WORDS", "RECIPE", "NUMBER", "CONDITION", "ENDING", "SOURCE", "SIDE"}


def test_the_page_is_current():
    assert page() == PAGE, "run tools/language_reference.py"


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.rule)
def test_a_statement_has_form_meaning_and_example(entry):
    assert entry.kind.__doc__
    assert len(entry.kind.__doc__.split()) > 3
    assert entry.examples
    blanks = set(re.findall(r"[A-Z]{3,}", entry.form))
    assert blanks <= BLANKS | {"DIRECTION", "BEND", "KIND"}
    for example in entry.examples:
        assert isinstance(read_statement(example), entry.kind)
        assert f"- `{example}`" in PAGE


def test_every_form_belongs_to_one_statement():
    shown = [example for entry in ENTRIES for example in entry.examples]
    assert sorted(shown) == sorted(form for forms in FORMS.values() for form in forms)


@pytest.mark.parametrize("form", [example for entry in ENTRIES if draws(entry) for example in entry.examples])
def test_an_act_of_the_pencil_has_its_sentence(form):
    made = {name.text.replace("_", " ") for name in every(Name, read_statement(form))}
    words = said(form)
    assert words.endswith(".")
    assert any(re.search(rf"\b{name}\b", words) for name in made)
    assert f"- `{form}`  \n  *{words}*" in PAGE


def test_every_construction_stands_on_the_page():
    shown = {entry.kind for entry in ENTRIES}
    assert set(CONSTRUCTIONS) <= shown


def test_the_recipe_on_the_page_is_right_and_canonical():
    recipe = parse(RECIPE, "bib")
    assert recipe.problems == ()
    assert analyse(recipe, ("neck",)) == ()
    assert format_recipe(RECIPE) == RECIPE
    draft = evaluate(recipe, Measurements.of({"neck": 260.0}))
    assert [problem for problem in draft.problems if problem.severity is Severity.ERROR] == []
    assert draft.points["bib.B"].at.x == pytest.approx((260 + 20) / 4)


def test_the_parts_of_a_statement_are_found_in_order():
    numbers = [
        node.text
        for node in every(
            type(read_statement("amount x = 1").value.numeral),
            read_statement("choice ease = 14 cm, 8 cm .. (20 + 8) * 1 cm"),
        )
    ]
    assert numbers == ["14", "8", "20", "8", "1"]
