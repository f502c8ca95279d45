"""One canonical layout: reading it gives the same statements, and a second formatting changes nothing."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.recipe.format import format_recipe
from littlefold.recipe.forms import FORMS
from littlefold.recipe.lines import MOST_CHARACTERS
from littlefold.recipe.parse import parse, read_statement
from littlefold.recipe.phrase import WIDEST, phrase
from littlefold.recipe.shelf import shipped_names, shipped_text
from tests.recipe.sentences import recipes, untidy

LOOSE = """\
recipe   casing-top
drawing body "The fold on your left" # folded
point A   at the fold
point B below A by back_waist+below_waist
when closing is elastic
point C   right of A by width


# where the neck ends
point G right of A by - 3 cm
otherwise
point C right of A by (width+1 cm)/2
end
amount half = length of A-B/2
curve armhole   from C going down to E, square to A-B, passing 1.5 cm from corner K
amount after = 3 cm
piece front  "Front"   cut 1 on the   fold
edges A-B fold, hem_line hem hem_depth turned   twice, # first
  side seam 1.25 cm, armhole bound, neckline casing 2 cm
piece band rectangle 3 cm by 4 cm cut 1
nonsense   here,
     and there
sew front.side   to back.side
"""
TIDY = """\
recipe casing-top

drawing body "The fold on your left"  # folded
  point A at the fold
  point B below A by back_waist + below_waist
  when closing is elastic
    point C right of A by width

    # where the neck ends
    point G right of A by -3 cm
  otherwise
    point C right of A by (width + 1 cm) / 2
  end
  amount half = length of A-B / 2
  curve armhole from C going down, to E square to A-B, passing 1.5 cm from corner K

amount after = 3 cm

piece front "Front" cut 1 on fold
  edges A-B fold, hem_line hem hem_depth turned twice, side seam 1.25 cm, armhole bound,
        neckline casing 2 cm  # first

piece band rectangle 3 cm by 4 cm cut 1

nonsense   here,
     and there
sew front.side to back.side
"""
EDGES = ("A-B fold", "hem_line hem 2 cm turned twice", "front.side as side seam (chest + 1 cm) / 40 lap 1 cm")


def said(text):
    return [written.statement for written in parse(text).written]


def test_the_canonical_layout():
    assert format_recipe(LOOSE.replace("to E, square", "to E square")) == TIDY


@pytest.mark.parametrize("form", [form for forms in FORMS.values() for form in forms])
def test_the_forms_are_canonical(form):
    assert phrase(form) == form


@settings(max_examples=120, deadline=None)
@given(untidy())
def test_every_statement_is_read_again_as_the_same(text):
    tidy = phrase(text)
    assert tidy is not None
    assert read_statement(tidy) == read_statement(text)
    assert phrase(tidy) == tidy


@settings(max_examples=100, deadline=None)
@given(recipes())
def test_parse_format_parse_is_the_identity(text):
    tidy = format_recipe(text)
    assert said(tidy) == said(text)
    assert len(parse(tidy).problems) == len(parse(text).problems)
    assert format_recipe(tidy) == tidy


@settings(max_examples=100, deadline=None)
@given(st.text(alphabet='ab\n\r,# "\\\t.=3point\u2028\ufeff', max_size=60))
def test_any_text_at_all_is_laid_out_once_and_for_all(text):
    tidy = format_recipe(text)
    assert said(tidy) == said(text)
    assert format_recipe(tidy) == tidy


@settings(max_examples=60, deadline=None)
@given(st.lists(st.sampled_from(EDGES), min_size=1, max_size=20), st.integers(0, 8))
def test_what_is_too_wide_is_broken_after_commas(edges, indent):
    text = phrase("edges " + ", ".join(edges), indent)
    for line in text.split("\n"):
        assert len(line) <= WIDEST
        assert line.startswith((" " * indent + "edges ", " " * (indent + 6)))
    assert all(line.endswith(",") for line in text.split("\n")[:-1])


@pytest.mark.parametrize("name", shipped_names())
def test_a_shipped_recipe_formatted_says_the_same(name):
    text = shipped_text(name)
    tidy = format_recipe(text)
    assert said(tidy) == said(text)
    assert format_recipe(tidy) == tidy


def test_a_text_too_large_is_refused_in_words():
    outcome = format_recipe("#" * (MOST_CHARACTERS + 1))
    assert [problem.code for problem in outcome] == ["recipe-too-large"]


def test_nothing_stays_nothing():
    assert format_recipe("") == ""
    assert format_recipe("\n \n") == ""
