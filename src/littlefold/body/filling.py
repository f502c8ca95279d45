"""Filling in what was not measured, from what was: each estimate with its spread, and marked as estimated.

The stature comes first: from the tape, else from the age (WHO) and from how well each stature would explain
the readings there are.  The others follow from the readings by the conditional distribution of
`model`.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, Final

import numpy as np

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.model import BodyModel, Expected, body_model
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.stature import stature_at
from littlefold.problem import Problem, Severity

if TYPE_CHECKING:
    from numpy.typing import NDArray

_STATURES: Final = np.arange(460.0, 1960.0, 10.0)  # where an unknown stature is sought [mm]


def complete(
    measurements: Measurements, model: BodyModel | None = None
) -> tuple[Measurements, tuple[Problem, ...]]:
    """The child with every measurement of the register; what was missing is estimated.

    Readings that are there stay as they are, measurements of a recipe's own as well.  The problems say what
    was estimated (a note), or that nothing at all is known (an error; then the child comes back unchanged).

    Args:
        measurements: What is known.
        model: Another model than the one that is shipped; for tests on children it has not seen.
    """
    model = model or body_model()
    missing = tuple(name for name in NAMES if name not in measurements)
    if not missing:
        return measurements, ()
    stature = _stature(measurements, model)
    if stature is None:
        return measurements, (_nothing_known(),)
    whole = measurements.with_reading("stature", stature)
    others = tuple(name for name in missing if name != "stature")
    estimates = _estimates(measurements, stature, others, model)
    return _in_register_order((*whole.readings, *estimates.items()), whole), (_estimated(missing),)


def _stature(measurements: Measurements, model: BodyModel) -> Reading | None:
    given = measurements.get("stature")
    if given is not None:
        return given
    if measurements.age_months is None and not any(model.knows(name) for name in measurements):
        return None
    weights = _likely_statures(measurements, model)
    mean = float(weights @ _STATURES)
    spread = float(weights @ (_STATURES - mean) ** 2) ** 0.5
    return Reading(round(mean, 1), Origin.ESTIMATED, round(spread, 1))


def _likely_statures(measurements: Measurements, model: BodyModel) -> NDArray[np.float64]:
    """How likely each of `_STATURES` is, as shares of 1: by the age (WHO), and by the readings."""
    logs = np.zeros(len(_STATURES))
    if measurements.age_months is not None:
        growth = stature_at(measurements.age_months, measurements.sex)
        logs -= np.array([growth.score(stature) for stature in _STATURES]) ** 2 / 2
    known = tuple(name for name in measurements if model.knows(name) and measurements.mm(name) > 0)
    if known:
        lengths = np.tile([measurements.mm(name) for name in known], (len(_STATURES), 1))
        logs += model.log_density(known, lengths, _STATURES, measurements.sex)
    weights = np.exp(logs - logs.max())
    return np.asarray(weights / weights.sum(), dtype=np.float64)


def _estimates(
    measurements: Measurements, stature: Reading, missing: tuple[str, ...], model: BodyModel
) -> dict[str, Reading]:
    known = model.deviations(measurements, stature.mm, with_age=stature.origin is Origin.GIVEN)
    expected = model.expect(known, missing, stature.mm)
    return {name: _estimate(model, name, stature, found) for name, found in expected.items()}


def _estimate(model: BodyModel, name: str, stature: Reading, found: Expected) -> Reading:
    """The reading, its spread widened by what is not known of the stature."""
    spread = found.spread_mm
    if stature.spread_mm:
        curve = model.curves[name]
        low, high = (curve.median(stature.mm + side * stature.spread_mm) for side in (-1, 1))
        spread = math.hypot(spread, (high - low) / 2)
    return Reading(round(found.mm, 1), Origin.ESTIMATED, round(spread, 1))


def _in_register_order(readings: tuple[tuple[str, Reading], ...], child: Measurements) -> Measurements:
    """The child with these readings, in the order of the register."""
    order = {name: place for place, name in enumerate(NAMES)}
    return replace(child, readings=tuple(sorted(readings, key=lambda pair: order.get(pair[0], len(order)))))


def _nothing_known() -> Problem:
    return Problem(
        "body-unknown",
        "Nothing is known of the child's size. Give its height, or its age, or one girth.",
        cure="Give the height, the age, or one girth.",
    )


def _estimated(missing: tuple[str, ...]) -> Problem:
    titles = ", ".join(REGISTER[name].title.lower() for name in missing)
    return Problem(
        "measurements-estimated",
        f"Not measured, so estimated from the rest: {titles}. Measure what the garment hangs on.",
        Severity.NOTE,
    )
