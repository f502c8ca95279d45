"""4. Every number has a reason: sources, examples, printed numbers, common practice."""

from __future__ import annotations

import pytest

from littlefold.body.tape import TapeMark
from littlefold.booklet.record import draft_record
from littlefold.draft.sentence import Speech
from littlefold.pattern.trace import trace
from tests.language.drafting import FRAME, HEAD, draft_of

CHEST = FRAME.replace("drawing s", "measure chest\ndrawing s")


def test_a_formula_names_its_source() -> None:
    drawn = draft_of(CHEST + 'amount x = chest / 4 source "A book, p. 3"\npoint P below A by x source "B"')
    assert next(one.source for one in drawn.amounts if one.name == "x") == "A book, p. 3"
    assert drawn.steps[-1].source == "B"


@pytest.mark.parametrize("source", ["source common practice\n", ""])
def test_a_formula_with_no_source_is_marked_common_practice(source: str) -> None:
    text = CHEST.replace('source "own trial"\n', source)
    drawn = draft_of(text + "point P below A by chest / 4")
    record = draft_record(trace(drawn), (), Speech())
    assert record["steps"][-1]["source"] == "common practice, no source"
    assert drawn.source == "common practice, no source"


def test_a_formula_with_no_source_of_its_own_has_the_recipes() -> None:
    drawn = draft_of(CHEST + "point P below A by chest / 4")
    assert draft_record(trace(drawn), (), Speech())["steps"][-1]["source"] == "own trial"


# chest / 4 for 19 in is 4.75 in.  What is printed, and whether it agrees to half its last place.
PRINTED = [
    ("4 3/4 in", True),
    ("4.8 in", True),
    ("4.7 in", True),  # just half a place off
    ("4.6 in", False),
    ("5 in", True),
    ("4 1/2 in", True),
    ("4 1/4 in", False),
    ("12.1 cm", True),
    ("12.0 cm", False),
]


@pytest.mark.parametrize(("printed", "agrees"), PRINTED)
def test_a_printed_number_is_compared_to_its_last_place(printed: str, *, agrees: bool) -> None:
    text = f'{CHEST}amount x = chest / 4 printed {printed}\nexample "19" with chest = 19 in'
    drawn = draft_of(text, chest=19 * 2.54)
    assert not drawn.problems if agrees else drawn.problems[0].code == "printed-number-disagrees"


def test_both_numbers_are_told_and_the_recipe_still_draws() -> None:
    text = f'{CHEST}point P below A by chest / 4 printed 5 1/4 in\nexample "19" with chest = 19 in'
    drawn = draft_of(text, chest=19 * 2.54)
    (problem,) = drawn.problems
    assert [number.value for number in problem.numbers][:2] == pytest.approx([120.65, 133.35])
    assert drawn.points["s.P"].at.y == pytest.approx(-120.65)
    assert problem.place.line == CHEST.count("\n") + 1


def test_it_is_compared_only_when_its_example_is_drafted() -> None:
    text = f'{CHEST}amount x = chest / 4 printed 9 in\nexample "19" with chest = 19 in'
    assert not draft_of(text, chest=56).problems


def test_it_is_compared_before_the_tape_rounds() -> None:
    text = f'{CHEST}point P below A by chest / 4 printed 12.1 cm\nexample "19" with chest = 19 in'
    drawn = draft_of(text, tape=TapeMark("0.5cm", 5.0), chest=19 * 2.54)
    assert not drawn.problems  # 12.065 cm agrees, though 12 cm is drawn
    assert drawn.points["s.P"].at.y == -120


def test_an_example_records_choices_too() -> None:
    text = (
        f"{HEAD}measure chest\nchoice ease = 8 cm, 4 cm .. 12 cm\namount x = (chest + ease) / 4 printed 16.1 cm\n"
        'example "half" with chest = 56 cm choosing ease = 6 cm'
    )
    assert not draft_of(text, chest=56).problems  # the ease here is 8 cm: another draft
    wrong = draft_of(text.replace("= 8 cm, 4", "= 6 cm, 4"), chest=56)
    assert [problem.code for problem in wrong.problems] == ["printed-number-disagrees"]  # 15.5 is not 16.1
