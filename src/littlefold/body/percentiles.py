"""Percentiles by age, where references give any: the stature, the head to five years, the upper arm from three months on."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from littlefold.body.girths_by_age import arm_at, head_at
from littlefold.body.stature import LAST_LYING_MONTH, OLDEST, Lms, stature_at

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from littlefold.body.measurements import Sex

    Curve = Callable[[float, Sex], Lms | None]
    Spans = tuple[tuple[float, float], ...]

_JUST_AFTER: Final = 0.05  # months after the last day of lying length

_SPANS: Final[Mapping[str, Spans]] = {
    "stature": ((0.0, LAST_LYING_MONTH), (LAST_LYING_MONTH + _JUST_AFTER, OLDEST)),
    "head": ((0.0, 60.0),),
    "upper_arm": ((3.0, OLDEST),),
}


def spans(name: str, young: float, old: float) -> Spans:
    """The ages between two [months] for which there are percentiles, each part without a step; none where there are none."""
    parts = ((max(start, young), min(end, old)) for start, end in _SPANS.get(name, ()))
    return tuple((start, end) for start, end in parts if start < end)


def percentile(name: str, age: float, sex: Sex | None, score: float) -> float:
    """The measurement at a score on the curve of an age within `spans` [mm]; the mean of girl and boy where sex is open."""
    if sex is None:
        return (percentile(name, age, "girl", score) + percentile(name, age, "boy", score)) / 2
    curve = {"stature": stature_at, "head": head_at, "upper_arm": _arm}[name](age, sex)
    assert curve is not None, "the age lies within the spans"  # noqa: S101 - our own mistake
    return curve.value(score)


def _arm(age: float, sex: Sex) -> Lms | None:
    """Between whole months, which is how the table of school children goes, on straight lines."""
    month = math.floor(age)
    low, high = arm_at(max(month, 3.0), sex), arm_at(min(month + 1.0, OLDEST), sex)
    if low is None or high is None:
        return low or high
    share = age - month
    pairs = ((low.power, high.power), (low.median, high.median), (low.spread, high.spread))
    return Lms(*((1 - share) * one + share * other for one, other in pairs))
