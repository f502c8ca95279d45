"""Numbers, dimensions, tables, conditions, choices, fallbacks."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements, Origin
from littlefold.check import Circumstances
from littlefold.draft.choices import read_choices
from littlefold.draft.evaluate import evaluate
from littlefold.pipeline import Wish, fulfil
from littlefold.recipe.parse import parse

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = 'title "Values"'


def value(draft: Draft, name: str = "x") -> float | str:
    assert not draft.problems, draft.problems[0].message
    return next(one.value for one in draft.amounts if one.name == name)


def only_message(draft: Draft) -> str:
    (problem,) = draft.problems
    assert problem.place.line is not None
    return problem.message


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("2 cm + 3 * 4 mm", 32),
        ("(2 cm + 3 mm) * 4", 92),
        ("3 1/4 in", 82.55),
        ("1/4 of (10 cm)", 25),
        ("10 cm / 4 - 1 mm", 24),
        ("larger of 1 cm and 2 cm - 5 mm", 15),
        ("smaller of 1 cm and 2 cm", 10),
        ("3 cm at least 4 cm", 40),
        ("3 cm at most 2 cm", 20),
        ("round up 31 mm to 0.5 cm", 35),
        ("round up 30 mm to 0.5 cm", 30),
        ("square root of (4 cm * 9 cm)", 60),
        ("-(1 cm) + 2 cm", 10),
        ("1 yd", 914.4),
        ("2 * pi * 1 cm", 62.83185),
    ],
)
def test_arithmetic(text: str, mm: float) -> None:
    draft = evaluate(parse(f"amount x = {text}"), Measurements())
    assert value(draft) == pytest.approx(mm)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2 cm + 1", "1 what? Write 1 cm or 1 in."),
        ("2 cm + 3 months", "cannot be put together"),
        ("2 cm / 0", "divided by 0"),
        ("2 cm * 3 cm * 4 cm", "no meaning"),
        ("square root of (0 - 4)", "no square root"),
        ("square root of 4 cm", "no meaning"),
        ("1 elbow", 'no unit "elbow"'),
        ("y", "there is no amount"),
        ("1000000000 cm * 1000000000", "no number to draw with"),
        ("round up 3 cm to 0 cm", "larger than 0"),
    ],
)
def test_what_has_no_value_is_said_in_words(text: str, said: str) -> None:
    draft = evaluate(parse(f"amount x = {text}"), Measurements())
    assert said in only_message(draft)


def test_a_declared_unit(drafted: Draft) -> None:
    """
    unit nail = 2 1/4 in
    amount x = 2 nail
    """
    assert value(drafted) == pytest.approx(4.5 * 25.4)


def test_a_table_between_rows(drafted: Draft) -> None:
    """
    table rise by stature between 98 cm gives 18 cm, 110 cm gives 20 cm
    amount x = rise
    """
    assert value(drafted) == pytest.approx(190)  # the child of 104 cm stands half-way


def test_a_stepped_table(drafted: Draft) -> None:
    """
    table rise by size stepped 98 gives 18 cm, 104 gives 19 cm, 116 gives 20 cm
    amount x = rise
    """
    assert value(drafted) == pytest.approx(190)


def test_outside_a_table(drafted: Draft) -> None:
    """
    table rise by stature between 62 cm gives 16 cm, 98 cm gives 18 cm
    amount x = rise
    """
    assert "goes from 62 cm to 98 cm; the stature is 104 cm" in only_message(drafted)


def test_a_table_by_age_needs_an_age(drafted: Draft) -> None:
    """
    table rise by age between 1 y gives 16 cm, 8 y gives 20 cm
    amount x = rise
    """
    assert "birth date" in only_message(drafted)


def test_branches(drafted: Draft) -> None:
    """
    choice closing = elastic | cord | studs
    when closing is cord
    amount x = 1 cm
    otherwise when closing is elastic
    amount x = 2 cm
    otherwise
    amount x = 3 cm
    end
    """
    assert value(drafted) == 20


def test_branches_within_branches(drafted: Draft) -> None:
    """
    choice a = one | two
    choice b = one | two
    when a is two
    when b is one
    amount x = 1 cm
    otherwise
    amount x = 2 cm
    end
    otherwise
    amount x = 3 cm
    end
    """
    assert value(drafted) == 30


def test_a_condition_at_the_end(drafted: Draft) -> None:
    """
    choice a = one | two
    amount x = 1 cm when a is two or 3 cm > 4 cm
    amount x = 2 cm when not (a is two) and a is not two
    """
    assert value(drafted) == 20


def test_a_name_of_the_branch_not_taken(drafted: Draft) -> None:
    """
    choice a = one | two
    amount y = 1 cm when a is two
    amount x = y
    """
    assert "there is no amount" in only_message(drafted)


def test_unknown_option_and_choice(drafted: Draft) -> None:
    """
    choice closing = elastic | cord
    amount x = 1 cm when closing is elastik
    amount y = 1 cm when colsing is elastic
    """
    assert [p.code for p in drafted.problems] == ["unknown-option", "unknown-choice"]


def test_one_name_one_meaning(drafted: Draft) -> None:
    """
    amount x = 1 cm
    amount x = 2 cm
    """
    assert "has a meaning already" in only_message(drafted)


def test_choices_as_written() -> None:
    recipe = parse("choice ease = 5 cm, 2 cm .. 8 cm\nchoice part = 1, 0.25 .. 1\nchoice way = left | right")
    values, problems = read_choices((recipe,), {"ease": "2 1/2 in", "part": "0.5", "way": "right"})
    assert not problems
    assert values == {"ease": pytest.approx(63.5), "part": 0.5, "way": "right"}


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("ease", "5", "of what?"),
        ("way", "rigth", 'Did you mean "right"'),
        ("eas", "5 cm", 'Did you mean "ease"'),
        ("part", "half", "no number"),
    ],
)
def test_choices_not_understood(name: str, text: str, said: str) -> None:
    recipe = parse("choice ease = 5 cm, 2 cm .. 8 cm\nchoice part = 1, 0.25 .. 1\nchoice way = left | right")
    _, (problem,) = read_choices((recipe,), {name: text})
    assert said in problem.message


def test_a_choice_out_of_bounds_has_both_bounds() -> None:
    draft = evaluate(parse("choice ease = 5 cm, 2 cm .. 8 cm"), Measurements(), {"ease": 90.0})
    (problem,) = draft.problems
    assert problem.code == "choice-out-of-bounds"
    assert [number.value for number in problem.numbers] == [90.0, 20.0, 80.0]
    assert draft.choices["ease"] == 90.0


@pytest.mark.parametrize(
    ("line", "code", "column", "said"),
    [
        ("choice e = 4 cm, 6 cm .. 30 mm", "bounds-leave-no-choice", 18, "6 cm .. 30 mm"),
        ("choice e = 1 in, 3 cm .. 6 cm", "default-out-of-bounds", 12, "2.54 cm when nobody chooses"),
        ("choice e = 95 degrees, 10 degrees .. 80 degrees", "default-out-of-bounds", 12, "95 degrees"),
        ("choice e = 2, 0.5 .. 1.5", "default-out-of-bounds", 12, "2 when nobody"),
    ],
)
def test_a_choice_that_contradicts_itself_is_told_once(line: str, code: str, column: int, said: str) -> None:
    problems = fulfil(Wish(parse(line, "r"), Measurements(), Circumstances())).problems
    (problem,) = [one for one in problems if one.place.column and one.place.line == 1 and one.code == code]
    assert said in problem.message
    assert problem.place.column == column
    assert not [one for one in problems if one.code == "choice-out-of-bounds"]


def test_an_angle_is_compared_in_degrees() -> None:
    draft = evaluate(
        parse("choice lean = 15 degrees, 10 degrees .. 20 degrees"), Measurements(), {"lean": 1.0}
    )
    (problem,) = draft.problems
    assert [(round(number.value, 3), number.unit) for number in problem.numbers] == [
        (57.296, "degrees"),
        (10, "degrees"),
        (20, "degrees"),
    ]
    assert "57.3 degrees" in problem.message


def test_a_fallback_stands_in_for_an_estimate() -> None:
    recipe = parse("measure head, neck or else head / 2\namount x = neck")
    body, _ = complete(Measurements.of({"stature": 1040, "head": 510}))
    draft = evaluate(recipe, body)
    assert value(draft) == pytest.approx(255)
    reading = draft.measurements.get("neck")
    assert reading is not None
    assert reading.origin is Origin.ESTIMATED


def test_a_given_measurement_goes_before_the_fallback() -> None:
    recipe = parse("measure head, neck or else head / 2\namount x = neck")
    body, _ = complete(Measurements.of({"stature": 1040, "head": 510, "neck": 248}))
    assert value(evaluate(recipe, body)) == pytest.approx(248)


def test_an_own_measure_is_asked_for_with_how_to_take_it(drafted: Draft) -> None:
    """own measure front_length "from the neck point over the chest to the waist" """
    assert "over the chest" in only_message(drafted)
