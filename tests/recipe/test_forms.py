"""Every form of the table of forms is read, and stands under the word it begins with."""

import pytest

from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import parse, read_statement

ALL = [(word, form) for word, forms in FORMS.items() for form in forms]


@pytest.mark.parametrize(("word", "form"), ALL)
def test_a_form_is_read(word, form):
    assert form.split()[0] == word
    recipe = parse(form)
    assert recipe.problems == ()
    assert [written.statement for written in recipe.written] == [read_statement(form)]
