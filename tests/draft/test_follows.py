"""What follows from a mistake that was told is not told again."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.draft.evaluate import evaluate
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.problem import Severity
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names


@pytest.mark.parametrize("name", shipped_names())
def test_a_recipe_without_a_body_says_what_is_missing_and_nothing_else(name: str) -> None:
    recipe = on_the_shelf(name)
    assert recipe is not None
    problems = fulfil(Wish(recipe, Measurements(), Circumstances())).problems
    codes = {problem.code for problem in problems if problem.severity is Severity.ERROR}
    assert codes <= {"body-unknown", "measurement-missing"}


def codes_of(text: str) -> list[str]:
    draft = evaluate(parse(text, "test"), Measurements.of({"chest": 560.0}), {})
    return [problem.code for problem in draft.problems]


TOP = """recipe top
measure chest
drawing body
  point A at the fold
  point B below A by {length}
  point C right of A by 10 cm
  point D level with B and plumb with C
piece front from body cut 1 on fold
  edges A-B as middle fold, B-D as hem raw, D-C as side raw, C-A as neck raw
"""


def test_the_opening_of_a_piece_that_failed_follows_from_it() -> None:
    opening = "opening neck = round of neck\nrun neckline = front.neck then front.side\nsew neckline to front.side\n"
    assert codes_of(TOP.format(length="drop") + opening) == ["name-not-known"]


def test_an_edge_that_no_piece_has_is_told_where_the_pieces_stand() -> None:
    assert codes_of(TOP.format(length="20 cm") + "opening neck = round of collar\n") == ["edge-not-known"]


def test_a_search_whose_goal_failed_before_it_follows() -> None:
    lost = "recipe top\nmeasure chest\namount goal = lost\nfind x between 1 cm and 9 cm so that x = goal\n"
    assert codes_of(lost) == ["name-not-known"]


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("point B below A", "point B under A"),
        ("cut 1 on fold", "cut 1 on bold"),
        ("drawing body", "drawing body of it"),
        ("B-D as hem raw, ", ""),
        ("amount drop = 20 cm", "amount drop = (20 cm"),
    ],
)
def test_what_a_line_that_cannot_be_read_would_have_made_is_not_missed(right: str, wrong: str) -> None:
    text = "recipe top\namount drop = 20 cm" + TOP.removeprefix("recipe top").format(length="drop")
    text += "piece band rectangle 20 cm by 5 cm cut 1\nopening neck = round of neck\nsew front.side to front.side\n"
    assert codes_of(text) == []
    recipe = parse(text.replace(right, wrong), "test")
    draft = evaluate(recipe, Measurements.of({"chest": 560.0}), {})
    assert [problem.place.line for problem in draft.problems] == [_line_of(right, text)]


def _line_of(words: str, text: str) -> int:
    return next(number for number, line in enumerate(text.splitlines(), start=1) if words in line)
