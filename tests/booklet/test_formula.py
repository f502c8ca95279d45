"""Formulas are shown as they are read aloud, and with the child's numbers put in."""

from __future__ import annotations

from littlefold.body.measurements import Measurements
from littlefold.booklet.formula import amount_formula, spoken, step_formula
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech
from littlefold.recipe.parse import parse

# A rectangle of 12 cm by 5 cm: its diagonal is 13 cm.
RECIPE = """recipe square
measure chest
drawing body
  point A at the start
  point B right of A by 12 cm
  point C above B by 5 cm
  line slant from A to C
drawing copy
  find reach between 1 cm and 20 cm so that length of edge = length of body.slant + 2 cm
  point A at the start
  point B right of A by reach
  line edge from A to B
  point D above A by 2 * length of body.slant
"""
SPEECH = Speech("cm", None, "en")
DRAFT = evaluate(parse(RECIPE, "square"), Measurements.of({"chest": 560.0}), {})


def test_names_are_read_aloud_and_numbers_keep_their_points() -> None:
    assert (
        spoken("0.5 * length of front.neck_line - 1.25 cm")
        == "0.5 \u00d7 length of front neck line \u2212 1.25 cm"
    )


def test_the_goal_of_a_search_is_told_once_in_words_and_once_in_numbers() -> None:
    reach = next(amount for amount in DRAFT.amounts if amount.name == "copy.reach")
    told = amount_formula(reach, DRAFT, SPEECH)
    assert told == "length of edge = length of body slant + 2 cm = 15 cm = 13 cm + 2 cm"


def test_the_length_of_a_line_is_put_into_the_formula_of_a_step() -> None:
    step = next(step for step in DRAFT.steps if step.name == "copy.D")
    assert step_formula(step, SPEECH, "") == "2 \u00d7 length of body slant = 2 \u00d7 13 cm = 26 cm"
