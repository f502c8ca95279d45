"""Filling in what was not measured, from what was: each estimate with its spread, and marked as estimated.

The stature comes first: from the tape, else from the age (WHO) and from how well each stature would explain
the readings there are.  The others follow from the readings by the conditional normal distribution of
`relations`.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, Final

import numpy as np

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.proportions import proportions
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.relations import expectation, relations, scores
from littlefold.body.stature import stature_at
from littlefold.problem import Problem, Severity

if TYPE_CHECKING:
    from numpy.typing import NDArray

_STATURES: Final = tuple(range(460, 1960, 10))  # where an unknown stature is sought [mm]


def complete(measurements: Measurements) -> tuple[Measurements, tuple[Problem, ...]]:
    """The child with every measurement of the register; what was missing is estimated.

    Readings that are there stay as they are, measurements of a recipe's own as well.  The problems say what
    was estimated (a note), or that nothing at all is known (an error; then the child comes back unchanged).
    """
    missing = tuple(name for name in NAMES if name not in measurements)
    if not missing:
        return measurements, ()
    stature = _stature(measurements)
    if stature is None:
        return measurements, (_nothing_known(),)
    whole = measurements.with_reading("stature", stature)
    for name, reading in _estimates(
        measurements, stature, tuple(n for n in missing if n != "stature")
    ).items():
        whole = whole.with_reading(name, reading)
    return _in_register_order(whole), (_estimated(missing),)


def _stature(measurements: Measurements) -> Reading | None:
    given = measurements.get("stature")
    if given is not None:
        return given
    known = scores(measurements, 1000.0)
    if not set(known) - {"sex"}:
        return None
    weights = _likely_statures(measurements)
    mean = float(weights @ np.array(_STATURES))
    spread = float(weights @ (np.array(_STATURES) - mean) ** 2) ** 0.5
    return Reading(round(mean, 1), Origin.ESTIMATED, round(spread, 1))


def _likely_statures(measurements: Measurements) -> NDArray[np.float64]:
    """How likely each of `_STATURES` is, as shares of 1."""
    logs = np.array([_log_likelihood(measurements, float(stature)) for stature in _STATURES])
    weights = np.exp(logs - logs.max())
    return np.asarray(weights / weights.sum(), dtype=np.float64)


def _log_likelihood(measurements: Measurements, stature: float) -> float:
    """Of the readings at this stature, and of the stature at this age, up to a constant."""
    found = dict(scores(measurements, stature))
    log = 0.0
    if measurements.age_months is not None:
        found.pop("age", None)
        growth = stature_at(measurements.age_months, measurements.sex)
        log -= growth.score(stature) ** 2 / 2
    names = tuple(name for name in found if name != "sex")
    if not names:
        return log
    rows = relations().rows(names)
    z = np.array([found[name] for name in names])
    log -= float(z @ np.linalg.solve(relations().correlation[np.ix_(rows, rows)], z)) / 2
    curves = proportions()
    widths = [curves[name].value(stature, z=0.5) - curves[name].value(stature, z=-0.5) for name in names]
    return log - sum(math.log(width) for width in widths)


def _estimates(measurements: Measurements, stature: Reading, missing: tuple[str, ...]) -> dict[str, Reading]:
    known = scores(measurements, stature.mm)
    expected = expectation(tuple(known), missing)
    means = expected.gain @ np.array(list(known.values()))
    return {
        name: _estimate(name, stature, float(z), float(spread))
        for name, z, spread in zip(missing, means, expected.spreads, strict=True)
    }


def _estimate(name: str, stature: Reading, z: float, spread: float) -> Reading:
    curve = proportions()[name]
    own = (curve.value(stature.mm, z + spread) - curve.value(stature.mm, z - spread)) / 2
    by_stature = (
        curve.median(stature.mm + stature.spread_mm) - curve.median(stature.mm - stature.spread_mm)
    ) / 2
    return Reading(
        round(curve.value(stature.mm, z), 1), Origin.ESTIMATED, round(math.hypot(own, by_stature), 1)
    )


def _in_register_order(measurements: Measurements) -> Measurements:
    order = {name: place for place, name in enumerate(NAMES)}
    pairs = sorted(measurements.readings, key=lambda pair: order.get(pair[0], len(order)))
    return replace(measurements, readings=tuple(pairs))


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
