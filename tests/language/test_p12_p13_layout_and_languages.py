"""12. Parse, format, parse is the identity.  13. Sentences in other languages."""

from __future__ import annotations

import pytest

from littlefold.draft.sentence import Speech, full_sentence, languages, sentence, table
from littlefold.recipe.format import format_recipe
from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text
from tests.language.drafting import FRAME, draft_of

CLUMSY = """#  a recipe
recipe   x
title    "X"    de:  "Ix"   # its title
choice w=a|b   "which"


drawing   s
point A   at the  fold
     point B   below A   by  (  3cm+1/2   in )*2
when w is a
point C right of A by 1 cm
  # between
otherwise
point C right of A by 2 cm
end
curve c from A going down to B
edges A-B fold ,  B-C   seam 1cm   included,C-A raw
pont
"""


def statements(text: str) -> list[object]:
    return [written.statement for written in parse(text).written]


def tidied(text: str) -> str:
    tidy = format_recipe(text)
    assert isinstance(tidy, str)
    return tidy


@pytest.mark.parametrize("text", [CLUMSY, *(shipped_text(name) or "" for name in shipped_names())])
def test_p12_parse_format_parse_is_the_identity(text: str) -> None:
    tidy = tidied(text)
    assert statements(tidy) == statements(text)
    assert tidied(tidy) == tidy


def test_p12_comments_are_kept_where_they_stand() -> None:
    tidy = tidied(CLUMSY)
    for comment in ("# a recipe", "# its title", "# between"):
        assert comment in tidy
    assert "pont" in tidy  # what cannot be read stays as it is
    assert tidy.index("# between") < tidy.index("otherwise")


@pytest.mark.parametrize("form", [form for forms in FORMS.values() for form in forms])
def test_p12_every_form_comes_back_as_it_is_documented(form: str) -> None:
    assert statements(tidied(form)) == statements(form)


def test_p13_a_sentence_is_made_from_kind_and_values() -> None:
    drawn = draft_of(FRAME + "point P below A by 4.5 cm\ncurve c from P going right, to D going down")
    step = next(step for step in drawn.steps if step.name == "s.P")
    assert sentence(step, Speech()) == "From A measure 4.5 cm straight down and mark P."
    assert sentence(step, Speech("in")) == "From A measure 1 3/4 in straight down and mark P."
    assert sentence(step, Speech(language="de")) == "Von A 4,5 cm gerade nach unten messen: P markieren."
    curve = full_sentence(drawn.steps[-1], drawn, Speech(language="de"))
    assert "Bogen" in curve
    assert "1/4" in curve


def test_p13_every_language_has_a_sentence_for_every_kind() -> None:
    kinds = {language: set(table(language)["steps"]) for language in languages()}
    assert kinds["de"] == kinds["en"]
    words = {
        language: {group: set(said) for group, said in table(language)["words"].items()}
        for language in languages()
    }
    assert words["de"] == words["en"]
