"""Which sets count, and which days cannot be."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from littlefold.problem import Problem
from littlefold.recipe.parse import parse
from littlefold.store import Card, Measured, OwnMeasurement, birth_fault, meant_for, measuring_fault, own_of
from littlefold.store.taken import taken_of

FIRST, SECOND = date(2026, 2, 20), date(2026, 3, 1)
MORNING = Measured(FIRST, (("stature", 1000.0), ("chest", 540.0)), "Edda", "vest")
EVENING = Measured(FIRST, (("stature", 1004.0), ("chest", 540.0)), "Edda", "vest")
EARLY = Measured(date(2025, 9, 1), (("stature", 980.0),))
MINA = Card("Mina", date(2022, 8, 14), "girl", (MORNING, EARLY, EVENING))


def test_of_one_day_the_newest_set_counts() -> None:
    assert MINA.newest_first() == (EVENING, MORNING, EARLY)
    assert MINA.day_by_day() == (EARLY, EVENING)
    assert MINA.latest() == EVENING
    assert MINA.of_day(SECOND) is None
    assert [(one.day, one.body.mm("stature")) for one in taken_of(MINA)] == [
        (EARLY.day, 980.0),
        (FIRST, 1004.0),
    ]


def test_a_second_reading_keeps_the_others_of_its_day_and_what_they_mean() -> None:
    long, round_arm = (OwnMeasurement(name, "top", name) for name in ("front_length", "arm_round"))
    first = Measured(FIRST, (("stature", 1000.0), ("front_length", 280.0)), "Edda", "vest", (long,))
    again = Measured(FIRST, (("arm_round", 170.0), ("stature", 1002.0)), own=(round_arm,))
    joined = Card("Mina", measured=(first,)).on_the_same_day(again)
    assert joined == Measured(
        FIRST,
        (("stature", 1002.0), ("front_length", 280.0), ("arm_round", 170.0)),
        "Edda",
        "vest",
        (long, round_arm),
    )


@pytest.mark.parametrize(
    ("day", "code"),
    [
        (SECOND, None),
        (MINA.born, None),
        (date(2022, 8, 13), "measured-before-birth"),
        (date(2026, 3, 3), "measured-ahead"),
    ],
)
def test_nobody_is_measured_before_birth_or_tomorrow(day: date, code: str | None) -> None:
    fault = measuring_fault(MINA, day, date(2026, 3, 2))
    assert (fault.code if isinstance(fault, Problem) else None) == code


def test_nobody_is_born_after_the_first_reading_or_tomorrow() -> None:
    today = date(2026, 3, 2)
    assert birth_fault(date(2025, 9, 1), today, MINA) is None
    late, ahead = birth_fault(date(2025, 9, 2), today, MINA), birth_fault(date(2026, 3, 3), today)
    assert late is not None
    assert late.code == "measured-before-birth"
    assert ahead is not None
    assert ahead.code == "birth-date-ahead"


RECIPE = """recipe {name}
title "A top"
measure chest
own measure front_length "{how}"
drawing body
  point A at the fold
"""


def test_a_reading_is_meant_for_the_recipe_it_was_taken_for_or_for_the_same_words() -> None:
    recipe = parse(RECIPE.format(name="top", how="Over the chest"), "top")
    (own,) = own_of(recipe)
    assert own == OwnMeasurement("front_length", "top", "Over the chest")
    one = Measured(FIRST, (("chest", 540.0), ("front_length", 280.0)), own=(own,))
    assert meant_for(recipe, one) == one
    mended = parse(RECIPE.format(name="top", how="From the neck over the chest"), "top")
    copied = parse(RECIPE.format(name="mine", how="Over the chest"), "mine")
    other = parse(RECIPE.format(name="mine", how="From the shoulder down"), "mine")
    assert meant_for(mended, one) == one
    assert meant_for(copied, one) == one
    assert meant_for(other, one) == replace(one, readings=(("chest", 540.0),), own=())
