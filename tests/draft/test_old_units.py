"""A length in a unit of the recipe's own is spoken in it, with cm or in beside it."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.body.tape import EIGHTH, TapeMark, read_mark
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech, sentence
from littlefold.recipe.parse import parse

# The nail is the sixteenth part of a yard, 2 1/4 in.
FRAME = """unit nail = 2 1/4 in
measure chest
choice part = 1/2, 0 .. 1
amount deep = 2 nail + 1/4 nail
drawing s
point A at the start
"""


def said(line: str, speech: Speech = Speech(), tape: TapeMark | None = None) -> str:  # noqa: B008 - frozen
    draft = evaluate(parse(FRAME + line), Measurements.of({"chest": 560.0}), tape=tape)
    assert not draft.problems
    return sentence(draft.steps[-1], speech)


@pytest.mark.parametrize(
    ("distance", "words"),
    [
        ("2 nail", "2 nail (11.43 cm)"),
        ("1 1/2 nail", "1 1/2 nail (8.57 cm)"),
        ("deep", "2 1/4 nail (12.86 cm)"),
        ("part * deep", "1 1/8 nail (6.43 cm)"),
        ("1/3 of 2 nail", "2/3 nail (3.81 cm)"),
        ("0.7 nail", "0.70 nail (4 cm)"),
        ("chest / 4 + 2 nail", "25.43 cm"),
        ("2 nail + 1 cm", "12.43 cm"),
        ("2 in", "5.08 cm"),
    ],
)
def test_in_the_old_unit_and_the_new_one(distance: str, words: str) -> None:
    assert said(f"point B below A by {distance}") == f"From A measure {words} straight down and mark B."


def test_in_inches_beside_it() -> None:
    assert "2 nail (4 1/2 in)" in said("point B below A by 2 nail", Speech("in"))


def test_the_length_beside_it_is_that_of_the_tape() -> None:
    tape = read_mark("0.5cm")
    assert isinstance(tape, TapeMark)
    assert "2 nail (11.5 cm)" in said("point B below A by 2 nail", Speech("cm", tape), tape)
    assert "1/3 nail (3/4 in)" in said("point B below A by 1/3 nail", Speech("in", EIGHTH), EIGHTH)


def test_in_german() -> None:
    assert "0,70 nail (4 cm)" in said("point B below A by 0.7 nail", Speech(language="de"))


def test_a_length_of_what_is_drawn_is_of_no_unit() -> None:
    lines = "point B below A by 2 nail\nline side from A to B\npoint C right of A by length of side"
    assert "nail" not in said(lines)


def test_inches_and_mixed_fractions_as_the_maker_measures() -> None:
    assert "2 1/4 in " in said("point B below A by 2 1/4 in", Speech("in"))
    assert "5.71 cm" in said("point B below A by 2 1/4 in", Speech("cm"))  # 2.25 * 2.54 = 5.715
