"""Headings and set phrases say the same in every language."""

from __future__ import annotations

from importlib.resources import files
from string import Formatter

import pytest

from littlefold.booklet.wording import DEFAULT, wording
from littlefold.draft.model import EdgeKind
from littlefold.draft.sentence import languages
from littlefold.problem import Severity


def places(pattern: str) -> set[str]:
    return {place for _, place, _, _ in Formatter().parse(pattern) if place}


@pytest.mark.parametrize("language", languages())
def test_a_language_with_sentences_has_headings_too(language: str) -> None:
    assert files("littlefold.booklet").joinpath("words", f"{language}.toml").is_file()


@pytest.mark.parametrize("language", languages())
def test_every_phrase_says_what_the_english_one_says(language: str) -> None:
    english, other = wording(DEFAULT), wording(language)
    assert {part: set(words) for part, words in other.items()} == {
        part: set(words) for part, words in english.items()
    }
    for part, words in english.items():
        for name, pattern in words.items():
            assert places(other[part][name]) == places(pattern), f"{part}.{name}"


@pytest.mark.parametrize("language", languages())
def test_every_kind_of_edge_and_every_severity_has_its_words(language: str) -> None:
    assert {kind.value for kind in EdgeKind} <= set(wording(language)["kind"])
    assert {severity.value for severity in Severity} == set(wording(language)["severity"])


def test_an_unknown_language_gets_english_headings() -> None:
    assert wording("../de") == wording(DEFAULT)
