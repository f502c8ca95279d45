"""The shipped recipes are found by name and never by path."""

import pytest

from littlefold.recipe.shelf import shipped_names, shipped_text


def test_every_shipped_name_has_a_text_that_gives_itself_that_name():
    names = shipped_names()
    assert list(names) == sorted(set(names))
    for name in names:
        text = shipped_text(name)
        assert text is not None
        assert f"recipe {name}" in " ".join(text.split())


@pytest.mark.parametrize(
    "name",
    [
        "",
        ".",
        "..",
        "../grammar",
        "../library/casing-top",
        "casing-top.recipe",
        "/etc/passwd",
        "nothing",
        "a\0b",
    ],
)
def test_a_name_is_no_path(name):
    assert shipped_text(name) is None
