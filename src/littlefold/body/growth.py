"""Room to grow: what a child's measurements will be at a later age, and until when a garment fits.

The best guess is that a child keeps its own place among children: its height keeps its score on WHO's curves
(`stature`), its head under five years that on WHO's curve of head girth, every other measurement its deviation from the
median of the height (`proportions`).  Chance moves the
place, the more the longer: heights a year apart go together by more than 0.9, and by nearly 1 in older children
(Bailey 1994, Ann Hum Biol 21:1-11, who also finds the pull back to the middle too slight to matter for the height).
The rates here are set to agree with that.  Under two years they, with what two readings of a length differ by, give the
spread of WHO's two-month increments of 882 children (WHO 2009, Growth velocity) from 3 to 22 months.  Beyond two years
no published spread of increments was found that could be used: there the rates, and everywhere those of the other
measurements, are judged, not measured.

Nobody shrinks: where WHO steps from lying length to standing height, 0.7 cm less, the forecast stays at what it was
until growth has passed it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.body.filling import complete
from littlefold.body.girths_by_age import HEAD_UNTIL, head_curve
from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.model import BodyModel, body_model
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.stature import LAST_LYING_MONTH, OLDEST, stature_at
from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from collections.abc import Callable

_WIDE: Final = 1.6449  # spreads to either side of a range that holds 90 of 100 children
_SHAPE_LOSS: Final = 0.10  # 1/year: how stout a child is, is kept about as its BMI is (from memory)
_READING: Final = 6.0  # mm: spread between two readings of the length of a child that lies; fitted, see above
_APART: Final = 2.0  # months after which two readings have nothing in common but the child
_STEP: Final = 0.25  # months, in which `fits_until` looks

# How fast heights stop going together, from each age on [1/year].
_LOSS: Final = (
    (0.0, 0.30),
    (6.0, 0.15),
    (12.0, 0.10),
    (24.0, 0.03),
    (60.0, 0.02),
    (108.0, 0.04),
    (192.0, 0.01),
)


@dataclass(frozen=True, slots=True)
class Forecast:
    """A child at a later age.

    Attributes:
        age_months: The later age.
        body: Every measurement of the register, marked as estimated, with the spread of what is not known.
        floor: The child as it is; nothing is forecast below it.
    """

    age_months: float
    body: Measurements
    floor: Measurements

    def range(self, name: str) -> tuple[float, float]:
        """The measurement's least and greatest value, between which 90 of 100 such children lie [mm]."""
        reading = self.body.get(name)
        if reading is None:
            raise KeyError(name)
        room = _WIDE * reading.spread_mm
        return max(self.floor.mm(name), reading.mm - room), reading.mm + room


@dataclass(frozen=True, slots=True)
class FitsUntil:
    """The age at which a measurement outgrows a limit [months]; None where it never does before 19 years.

    Attributes:
        expected: Of this child.
        earliest: Of one in twenty that grows so fast.
        latest: Of one in twenty that grows so slowly.
    """

    expected: float | None
    earliest: float | None
    latest: float | None


def forecast(measurements: Measurements, at_age: float, model: BodyModel | None = None) -> Forecast | Problem:
    """The child at a later age [months], or a problem: its age is not known, past growing, or the later one is behind."""
    model = model or body_model()
    age = measurements.age_months
    if age is None:
        return Problem(
            "age-unknown", "Without a birth date nobody can say how the child will grow. Give one."
        )
    if age > OLDEST:
        return Problem(
            "grown-up",
            f"At {age / 12:.0f} years nobody grows any more; the curves end at {OLDEST / 12:.0f}. Look at the birth date.",
            numbers=(Number("age", age, "months"), Number("oldest", OLDEST, "months")),
        )
    if at_age < age:
        return Problem(
            "forecast-backwards",
            f"The child is {age:.1f} months old; {at_age:.1f} months are behind. Name a later day.",
            numbers=(Number("age", age, "months"), Number("asked", at_age, "months")),
        )
    now, problems = complete(measurements, model)
    if "stature" not in now:
        return problems[0]
    return _grown(now, age, min(at_age, OLDEST), model)


def fits_until(
    measurements: Measurements, name: str, limit: float, model: BodyModel | None = None
) -> FitsUntil | Problem:
    """Until what age a measurement of the register stays within a limit [mm]."""
    if name not in REGISTER:
        return Problem("measurement-unknown", f"There is no measurement “{name}”.")
    model = model or body_model()
    now = forecast(measurements, measurements.age_months or 0.0, model)
    if isinstance(now, Problem):
        return now

    def outgrown(value: Callable[[Forecast], float]) -> float | None:
        return _first_age(
            lambda later: value(_grown(now.floor, now.age_months, later, model)) > limit, now.age_months
        )

    return FitsUntil(
        expected=outgrown(lambda later: later.body.mm(name)),
        earliest=outgrown(lambda later: later.range(name)[1]),
        latest=outgrown(lambda later: later.range(name)[0]),
    )


def _first_age(outgrown: Callable[[float], bool], age: float) -> float | None:
    """The first age from which it holds, by halving; what grows never falls back."""
    low, high = age, OLDEST
    if outgrown(low):
        return low
    if not outgrown(high):
        return None
    while high - low > _STEP:
        middle = (low + high) / 2
        low, high = (low, middle) if outgrown(middle) else (middle, high)
    return high


def _chance(loss: float) -> float:
    """The spread, in scores, that comes in while so much is lost of what goes together."""
    return math.sqrt(1.0 - math.exp(-2 * loss))


def _height_loss(age: float, later: float) -> float:
    ends = (*(start for start, _ in _LOSS[1:]), math.inf)
    return sum(
        rate * max(0.0, min(later, end) - max(age, start)) / 12
        for (start, rate), end in zip(_LOSS, ends, strict=True)
    )


def _grown(now: Measurements, age: float, later: float, model: BodyModel) -> Forecast:
    stature = _grown_stature(now, age, later)
    readings = tuple(
        (name, stature if name == "stature" else _grown_reading(name, now, stature, later - age, model))
        for name in NAMES
    )
    body = Measurements(readings, later, now.sex, now.nickname)
    if age < HEAD_UNTIL:
        body = body.with_reading("head", _grown_head(now, age, later, stature, model))
    return Forecast(later, body, now)


def _grown_head(now: Measurements, age: float, later: float, stature: Reading, model: BodyModel) -> Reading:
    """To five years by its own place on WHO's curve; from there on as every other girth."""
    at = min(later, HEAD_UNTIL)
    reading = now.get("head") or Reading(0.0)
    curve, ahead = head_curve(age, now.sex), head_curve(at, now.sex)
    expected = max(reading.mm, ahead.value(curve.score(reading.mm)))
    unsure = reading.spread_mm / (curve.median * curve.spread)
    drift = ahead.median * ahead.spread * math.hypot(_chance(_height_loss(age, at)), unsure)
    grown = Reading(expected, Origin.ESTIMATED, drift)
    if later <= HEAD_UNTIL:
        return grown
    at_five = Measurements((("stature", _grown_stature(now, age, at)), ("head", grown)), at, now.sex)
    return _grown_reading("head", at_five, stature, later - at, model)


def _grown_stature(now: Measurements, age: float, later: float) -> Reading:
    reading = now.get("stature") or Reading(0.0)
    curve, ahead = stature_at(age, now.sex), stature_at(later, now.sex)
    score = curve.score(reading.mm)
    expected = max(reading.mm, ahead.value(score))
    if age <= LAST_LYING_MONTH < later:  # the last time it lay down it was this long
        expected = max(expected, stature_at(LAST_LYING_MONTH, now.sex).value(score))
    one_score = ahead.median * ahead.spread
    unsure = reading.spread_mm / (curve.median * curve.spread)
    drift = one_score * math.hypot(_chance(_height_loss(age, later)), unsure)
    return Reading(expected, Origin.ESTIMATED, math.hypot(drift, _misread(age, later)))


def _misread(age: float, later: float) -> float:
    """What the reading of a child that lies adds to the spread [mm]; nothing on the day itself."""
    return 0.0 if age > LAST_LYING_MONTH else _READING * math.sqrt(min(later - age, _APART) / _APART)


def _grown_reading(
    name: str, now: Measurements, stature: Reading, months: float, model: BodyModel
) -> Reading:
    curve, reading = model.curves[name], now.get(name) or Reading(0.0)
    deviation = curve.deviation(now.mm("stature"), reading.mm)
    expected = max(reading.mm, curve.deviated(stature.mm, deviation))
    low, high = (curve.deviated(stature.mm + side * stature.spread_mm, deviation) for side in (-1, 1))
    spread = math.hypot(
        (high - low) / 2,
        _chance(_SHAPE_LOSS * months / 12) * curve.spread(stature.mm) * expected,
        reading.spread_mm * expected / reading.mm,
    )
    return Reading(expected, Origin.ESTIMATED, spread)
