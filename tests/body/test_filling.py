"""Missing measurements, estimated: what stays, what is marked, and how near the estimates come."""

from __future__ import annotations

import statistics

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.body.chart import SIZES, chart_row
from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.population import bodies
from littlefold.body.proportions import proportions
from littlefold.body.register import NAMES
from littlefold.problem import Severity
from tests.body.survey import survey_children


def test_readings_stay_and_estimates_are_marked_with_their_spread() -> None:
    whole, problems = complete(Measurements.of({"hip": 560, "stature": 1040, "own_length": 333}))
    assert tuple(whole) == (*NAMES, "own_length")
    assert whole.get("hip") == Reading(560.0)
    assert whole.get("own_length") == Reading(333.0)
    for name in set(NAMES) - {"hip", "stature"}:
        reading = whole.get(name)
        assert reading is not None
        assert reading.origin is Origin.ESTIMATED
        assert 0 < reading.spread_mm < 0.2 * reading.mm
    assert [problem.severity for problem in problems] == [Severity.NOTE]
    assert "chest girth" in problems[0].message
    assert "hip girth" not in problems[0].message


def test_a_whole_card_needs_nothing() -> None:
    card = chart_row(104)
    assert complete(card) == (card, ())


@pytest.mark.parametrize("size", SIZES)
def test_stature_alone_gives_the_chart(size: int) -> None:
    whole, _ = complete(Measurements.of({"stature": size * 10}))
    for name in NAMES:
        assert whole.mm(name) == pytest.approx(chart_row(size).mm(name), abs=0.06)


# standards.md section 7, items 1 to 3: WHO medians [cm].
@pytest.mark.parametrize(
    ("months", "sex", "cm"),
    [
        (48, "girl", 102.7312),
        (48, "boy", 103.3273),
        (12, "girl", 74.0049),
        (6, "boy", 67.6435),
        (120, "girl", 138.6363),
    ],
)
def test_age_and_sex_alone_give_the_median_stature_of_who(months: int, sex: str, cm: float) -> None:
    whole, _ = complete(Measurements((), months, sex))  # type: ignore[arg-type]
    assert whole.mm("stature") == pytest.approx(cm * 10, abs=2.0)
    reading = whole.get("stature")
    assert reading is not None
    assert 0.030 < reading.spread_mm / reading.mm < 0.048  # WHO's S runs from 3.1 % in babies to 4.7 % at ten


def test_nothing_at_all_is_a_problem_in_words() -> None:
    for nothing in (Measurements(), Measurements((), None, "girl"), Measurements.of({"own_length": 333})):
        card, problems = complete(nothing)
        assert card == nothing
        assert [problem.code for problem in problems] == ["body-unknown"]


@pytest.mark.parametrize("name", NAMES)
def test_one_measurement_is_enough(name: str) -> None:
    row = chart_row(116)
    whole, _ = complete(Measurements.of({name: row.mm(name)}))
    assert set(whole) == set(NAMES)
    assert whole.mm("stature") == pytest.approx(1160, rel=0.12)


@given(
    st.dictionaries(st.sampled_from(NAMES), st.floats(1, 4000), max_size=6),
    st.none() | st.floats(0, 240),
    st.sampled_from(["girl", "boy", None]),
)
@settings(max_examples=60, deadline=None)
def test_any_card_is_filled_with_lengths_or_refused(
    lengths: dict[str, float], age: float | None, sex: str | None
) -> None:
    whole, problems = complete(Measurements.of(lengths, age_months=age, sex=sex))  # type: ignore[arg-type]
    assert set(whole) == set(NAMES) or problems[0].code == "body-unknown"
    assert all(reading.mm > 0 and reading.spread_mm >= 0 for _, reading in whole.readings)


@given(st.floats(560, 1520), st.floats(0.9, 1.15))
@settings(max_examples=30, deadline=None)
def test_a_stouter_chest_makes_a_stouter_waist(stature: float, factor: float) -> None:
    chest = proportions()["chest"].median(stature)
    slim, _ = complete(Measurements.of({"stature": stature, "chest": chest * factor}))
    stout, _ = complete(Measurements.of({"stature": stature, "chest": chest * factor * 1.02}))
    for name in ("waist", "hip", "upper_arm", "neck"):
        assert stout.mm(name) > slim.mm(name)


# Real children that the lookup by stature gets wrong: here every seventh of the survey.  The tables were fitted to
# these children too; children never seen are judged by tools/measure_filling.py, whose table is in docs/measurements.md.
@pytest.mark.parametrize(
    ("name", "gain"),
    [("waist", 0.75), ("hip", 0.55), ("upper_arm", 0.75), ("thigh", 0.55), ("neck", 0.9), ("head", 0.98)],
)
def test_estimates_beat_the_lookup_by_stature(name: str, gain: float) -> None:
    own, lookup = [], []
    for card in survey_children()[::7]:
        if name not in card or "chest" not in card:
            continue
        whole, _ = complete(card.without(name))
        own.append(abs(whole.mm(name) - card.mm(name)))
        lookup.append(abs(proportions()[name].median(card.mm("stature")) - card.mm(name)))
    assert len(own) > 100
    assert statistics.mean(own) < gain * statistics.mean(lookup)


def test_every_child_of_the_survey_can_be_completed() -> None:
    for card in survey_children()[::5]:
        whole, _ = complete(card)
        assert set(whole) == set(NAMES)
        assert whole.mm("inside_leg") < whole.mm("outside_leg") < whole.mm("stature")


# standards.md 2.1, shape facts of the survey: waist as large as the hip in 6.5 % of children of stature 92, 3.1 % at
# 104; hip less chest at 104 from -3.1 (P5) to +4.3 cm (P95), at 140 from -2.4 to +8.7.
def test_made_up_bodies_have_the_shapes_of_real_ones() -> None:
    small = list(bodies(1500, 11, 890, 950))
    assert 0.03 < statistics.mean(body.mm("waist") >= body.mm("hip") for body in small) < 0.11
    for low, high, p5, p95 in ((1010, 1070, -31, 43), (1370, 1430, -24, 87)):
        gaps = sorted(body.mm("hip") - body.mm("chest") for body in bodies(1500, 12, low, high))
        assert gaps[75] == pytest.approx(p5, abs=10)
        assert gaps[-76] == pytest.approx(p95, abs=14)


def test_made_up_bodies_repeat_and_are_whole() -> None:
    first, again, other = (list(bodies(20, seed)) for seed in (3, 3, 4))
    assert first == again
    assert first != other
    for body in first:
        assert tuple(body) == NAMES
        assert body.mm("inside_leg") < body.mm("outside_leg") < body.mm("stature")
        assert body.mm("fist") > body.mm("wrist") > 0
        assert body.sex in {"girl", "boy"}


def test_made_up_babies_are_as_long_and_as_wide_as_real_ones() -> None:
    # standards.md 2.2: at 6 to 8 months (length about 68) head 43.9 (1.3), upper arm 14.0 (1.0), foot 10.0 [cm].
    babies = list(bodies(600, 5, 670, 700))
    for name, mean, spread in (("head", 439, 13), ("upper_arm", 140, 10), ("foot", 100, 6)):
        values = [baby.mm(name) for baby in babies]
        assert statistics.mean(values) == pytest.approx(mean, rel=0.03)
        assert statistics.stdev(values) == pytest.approx(spread, rel=0.4)
