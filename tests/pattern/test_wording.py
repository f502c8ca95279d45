"""The words on a piece in every language."""

from __future__ import annotations

import tomllib
from dataclasses import fields, replace
from importlib.resources import files
from string import Formatter
from typing import get_args

import pytest

from littlefold.draft.model import EdgeKind, InsideKind
from littlefold.drawing import Label, Meaning
from littlefold.pattern.block import Labelling
from littlefold.pattern.picture import draw_piece
from littlefold.pattern.trace import trace
from littlefold.pattern.wording import ENGLISH, Wording, piece_wording
from tests.pattern.shapes import draft, piece, polygon_edges

LANGUAGES = sorted(
    entry.name.removesuffix(".toml") for entry in files("littlefold.pattern").joinpath("words").iterdir()
)


def places(sentence):
    return {name for _, name, _, _ in Formatter().parse(sentence) if name}


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_language_says_everything_that_english_says(language):
    text = files("littlefold.pattern").joinpath("words", f"{language}.toml").read_text("utf-8")
    assert set(tomllib.loads(text)) == {field.name for field in fields(Wording)}
    words = piece_wording(language)
    for field in fields(Wording):
        english, other = getattr(ENGLISH, field.name), getattr(words, field.name)
        if isinstance(english, str):
            assert places(english) == places(other), field.name
        else:
            assert set(english) == set(other), field.name


def test_every_inside_line_has_a_word():
    assert set(ENGLISH.insides) == set(get_args(InsideKind))


def test_an_unknown_language_is_told_in_english():
    assert piece_wording("xx") == ENGLISH


def test_german_lengths_have_a_comma_and_inches_their_word():
    german = piece_wording("de")
    assert Labelling(wording=german).length(12.5) == "1,25 cm"
    assert Labelling(units="in", wording=german).length(25.4) == "1 Zoll"


@pytest.mark.parametrize(
    ("kind", "turns", "said"),
    [
        (EdgeKind.HEM, 1, ["fold"]),
        (EdgeKind.HEM, 2, ["second fold", "first fold"]),
        (EdgeKind.CASING, 1, ["casing turn"]),
    ],
)
def test_turn_lines_say_what_is_folded_first(kind, turns, said):
    edges = polygon_edges((0, 0), (150, 0), (150, 120), (0, 120))
    turned = replace(edges[0], kind=kind, allowance=20.0, turns=turns)
    pattern = trace(draft([piece("any", [turned, *edges[1:]])]))
    drawing = draw_piece(pattern.pieces[0], pattern)
    labels = [mark for mark in drawing.marks if isinstance(mark, Label) and mark.meaning is Meaning.TURN]
    assert [label.text for label in sorted(labels, key=lambda label: -label.at.y)] == said
