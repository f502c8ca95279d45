"""Room to grow: nobody shrinks, medians stay medians, ranges widen, and published figures agree."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.body.by_age import cdc_stature_at
from littlefold.body.girths_by_age import head_curve
from littlefold.body.growth import FitsUntil, Forecast, fits_until, forecast
from littlefold.body.measurements import Measurements, Sex
from littlefold.body.register import NAMES
from littlefold.body.stature import stature_at
from littlefold.problem import Problem

SEXES = st.sampled_from(["girl", "boy", None])


def child(age: float, sex: Sex | None, z: float = 0.0, **lengths: float) -> Measurements:
    return Measurements.of({"stature": stature_at(age, sex).value(z), **lengths}, age_months=age, sex=sex)


def later(card: Measurements, age: float) -> Forecast:
    found = forecast(card, age)
    assert isinstance(found, Forecast)
    return found


# WHO 2006 medians [cm], standards.md 1.3: what a child in the middle gains.  From 6 to 12 months a girl grows by
# 8.25 cm and a boy by 8.10, from 12 to 18 months by 6.7 and 6.5, from 4 to 5 years by 6.7 and 6.6.
@pytest.mark.parametrize(
    ("sex", "age", "at", "gain"),
    [("girl", 6, 12, 82.5), ("boy", 6, 12, 81.0), ("girl", 12, 18, 67.1), ("boy", 12, 18, 65.2),
     ("girl", 48, 60, 66.9), ("boy", 48, 60, 66.3)],
)  # fmt: skip
def test_the_middle_child_grows_as_who_says(sex: Sex, age: float, at: float, gain: float) -> None:
    card = child(age, sex)
    assert later(card, at).body.mm("stature") - card.mm("stature") == pytest.approx(gain, abs=2.0)


# WHO 2009, Growth velocity based on weight, length and head circumference: two-month increments of length, M [cm] and S,
# from the age on, as the package pygrowthstandards 0.1.3 (MIT) holds them.
INCREMENTS = {
    ("girl", 3): (4.288, 0.2109), ("girl", 6): (3.000, 0.2760), ("girl", 9): (2.628, 0.2975), ("girl", 12): (2.362, 0.3283),
    ("girl", 18): (1.982, 0.4036), ("girl", 22): (1.775, 0.4503), ("boy", 3): (4.494, 0.2093), ("boy", 6): (2.966, 0.2848),
    ("boy", 9): (2.579, 0.3139), ("boy", 12): (2.298, 0.3491), ("boy", 18): (1.897, 0.4266), ("boy", 22): (1.713, 0.4813),
}  # fmt: skip


@pytest.mark.parametrize(("sex", "age"), INCREMENTS)
def test_two_months_ahead_agree_with_the_velocities_of_who(sex: Sex, age: float) -> None:
    median, variation = INCREMENTS[sex, age]
    card = child(age, sex)
    found = later(card, age + 2.0)
    assert found.body.mm("stature") - card.mm("stature") == pytest.approx(median * 10, abs=1.5)
    spread = (found.range("stature")[1] - found.body.mm("stature")) / 1.6449
    assert spread == pytest.approx(median * 10 * variation, rel=0.15)


# WHO 2006, medians of length and head [cm] from WHO's own files (standards.md 1.3 and section 7, items 1 and 2).
@pytest.mark.parametrize(
    ("sex", "age", "length", "head", "at", "later_head"),
    [("girl", 0, 49.15, 33.88, 6, 42.21), ("girl", 0, 49.15, 33.88, 12, 44.89), ("girl", 6, 65.75, 42.21, 12, 44.89),
     ("girl", 12, 74.00, 44.89, 48, 49.33), ("boy", 0, 49.88, 34.46, 6, 43.34), ("boy", 0, 49.88, 34.46, 12, 46.06),
     ("boy", 6, 67.64, 43.34, 12, 46.06), ("boy", 12, 75.74, 46.06, 48, 50.21)],
)  # fmt: skip
def test_the_middle_head_grows_as_who_says(  # noqa: PLR0917 - one row of the table
    sex: Sex, age: float, length: float, head: float, at: float, later_head: float
) -> None:
    card = Measurements.of({"stature": length * 10, "head": head * 10}, age_months=age, sex=sex)
    assert later(card, at).body.mm("head") == pytest.approx(later_head * 10, abs=1.0)


# P97 at 4 years is 52.00 and 52.96 cm, where the medians are 49.33 and 50.21 (WHO 2006, standards.md 1.3).
@pytest.mark.parametrize(("sex", "wide"), [("girl", 520.0), ("boy", 529.6)])
def test_a_wide_head_stays_wide_whatever_the_height(sex: Sex, wide: float) -> None:
    p97 = head_curve(12.0, sex).value(1.8808)
    for height in (-1.5, 0.0, 1.5):
        card = child(12.0, sex, height, head=p97)
        assert later(card, 48.0).body.mm("head") == pytest.approx(wide, abs=1.5)


@given(
    SEXES, st.floats(0.0, 59.0), st.lists(st.floats(0.0, 160.0), min_size=2, max_size=4), st.floats(-2.5, 2.5)
)
@settings(max_examples=40, deadline=None)
def test_no_head_shrinks_and_its_range_widens(sex: Sex, age: float, ahead: list[float], z: float) -> None:
    card = child(age, sex, 0.0, head=head_curve(age, sex).value(z))
    found = [later(card, age + months) for months in sorted(ahead)]
    heads = [card.mm("head"), *(one.body.mm("head") for one in found)]
    assert all(one <= next_one + 1e-6 for one, next_one in pairwise(heads))
    assert all(one.range("head")[0] >= card.mm("head") for one in found)
    widths = [one.range("head")[1] - one.body.mm("head") for one in found]
    assert all(one <= next_one + 0.5 for one, next_one in pairwise(widths))


def test_the_head_goes_on_without_a_step_on_the_fifth_birthday() -> None:
    card = child(40.0, "girl", 0.3, head=505.0)
    before, after = (later(card, age) for age in (59.99, 60.01))
    assert after.body.mm("head") == pytest.approx(before.body.mm("head"), abs=0.2)
    assert after.range("head")[1] == pytest.approx(before.range("head")[1], abs=1.0)


# CDC 2000 medians: American children followed from 3, 4 and 6 years on, by their own place on WHO's curves.
@pytest.mark.parametrize("sex", ["girl", "boy"])
@pytest.mark.parametrize(("age", "at"), [(36, 48), (48, 60), (72, 84), (84, 108)])
def test_the_middle_american_child_grows_as_cdc_says(sex: Sex, age: float, at: float) -> None:
    card = Measurements.of({"stature": cdc_stature_at(age, sex).median}, age_months=age, sex=sex)
    found = later(card, at)
    low, high = found.range("stature")
    assert low < cdc_stature_at(at, sex).median < high
    assert found.body.mm("stature") == pytest.approx(cdc_stature_at(at, sex).median, abs=12.0)


@given(
    SEXES,
    st.floats(0.5, 170),
    st.floats(-2.5, 2.5),
    st.floats(0.8, 1.25),
    st.lists(st.floats(0, 40), max_size=4),
)
@settings(max_examples=40, deadline=None)
def test_nobody_shrinks(sex: Sex | None, age: float, z: float, stout: float, steps: list[float]) -> None:
    """standards.md section 7, item 4: not at two years either, where WHO steps from length to height."""
    card = child(age, sex, z)
    card = Measurements.of(
        {**card.lengths(), "chest": 0.55 * card.mm("stature") * stout}, age_months=age, sex=sex
    )
    ages = sorted(age + step for step in (0.0, *steps))
    found = [later(card, at) for at in ages]
    for name in NAMES:
        values = [each.body.mm(name) for each in found]
        assert values[0] >= found[0].floor.mm(name) - 1e-9
        assert all(high >= low - 0.5 for low, high in pairwise(values)), name


def test_over_the_second_birthday() -> None:
    heights = [later(child(23.9, "boy"), 23.9 + week / 4).body.mm("stature") for week in range(16)]
    assert heights == sorted(heights)
    assert (
        heights[-1] - heights[0] < 40
    )  # 3.75 months: WHO's boys gain about 4 cm, less the 0.7 of standing up


@given(SEXES, st.floats(2, 150), st.floats(-2, 2))
@settings(max_examples=25, deadline=None)
def test_the_further_ahead_the_wider_the_range(sex: Sex | None, age: float, z: float) -> None:
    card = child(age, sex, z, chest=0.55 * stature_at(age, sex).value(z))
    for name in ("stature", "chest"):
        widths = [
            high - low for low, high in (later(card, age + ahead).range(name) for ahead in (0, 3, 9, 18))
        ]
        assert widths == sorted(widths)
        assert widths[0] == pytest.approx(0.0, abs=1e-6)


# Bailey 1994 (Ann Hum Biol 21:1-11): heights a year apart go together by more than 0.9 and, the older the child, by
# nearly 1.  A range that holds 90 of 100 is then less than 2 x 1.645 x sqrt(1 - 0.81) spreads wide.
@pytest.mark.parametrize("age", [36, 60, 96])
def test_the_range_of_a_year_agrees_with_how_heights_keep_their_place(age: float) -> None:
    low, high = later(child(age, "girl"), age + 12).range("stature")
    curve = stature_at(age + 12.0, "girl")
    widest = 2 * 1.645 * 0.436 * curve.median * curve.spread
    assert 0.2 * widest < high - low < widest


def test_fits_until_is_when_the_forecast_passes_the_limit() -> None:
    card = child(48.0, "girl", chest=540.0)
    found = fits_until(card, "chest", 560.0)
    assert isinstance(found, FitsUntil)
    assert found.expected is not None
    assert found.earliest is not None
    assert found.latest is not None
    assert 48 < found.earliest < found.expected < found.latest
    assert later(card, found.expected).body.mm("chest") == pytest.approx(560.0, abs=0.6)
    assert fits_until(card, "chest", 539.0) == FitsUntil(48.0, 48.0, 48.0)
    assert fits_until(card, "chest", 5000.0) == FitsUntil(None, None, None)


@pytest.mark.parametrize(
    ("found", "code"),
    [
        (forecast(Measurements.of({"chest": 500}), 60), "age-unknown"),
        (forecast(child(48, "girl"), 47), "forecast-backwards"),
        (forecast(Measurements.of({"stature": 1700}, age_months=240.0), 252), "grown-up"),
        (fits_until(child(48, "girl"), "nose", 47), "measurement-unknown"),
        (fits_until(Measurements.of({"chest": 500}), "chest", 520), "age-unknown"),
    ],
)
def test_what_cannot_be_forecast_is_said(found: object, code: str) -> None:
    assert isinstance(found, Problem)
    assert found.code == code
