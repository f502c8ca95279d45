"""Smooth curves over stature, fitted to medians, skews and spreads in bands of the survey."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from body_sources import BABY_NODES
from scipy.optimize import lsq_linear

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

STEP = 60.0  # [mm] of stature between two nodes
STATURES = np.arange(500.0, 1941.0, STEP)
SURVEY_BEGINS = 840.0
JOINT = 860.0  # babies below, survey above [mm]
UPPER_THIGH = 1.09  # babies' thighs were taken at the middle; at the joint the upper thigh is this much more
LENGTH_SPREAD = 0.034  # of a baby's length at one age (WHO 2006)


def on_curve(curve: Floats, stature: Floats) -> Floats:
    """The curve at these statures."""
    return np.interp(stature, STATURES, curve)


def smooth_curve(points: Floats, stiffness: float, least_slope: float) -> Floats:
    """The curve over STATURES nearest to the points that bends little and never climbs less than `least_slope`.

    Args:
        points: Rows of stature, value and weight.
        stiffness: What a bend costs.
        least_slope: Per mm of stature.
    """
    x, y, weight = points.T
    count = len(STATURES)
    place = np.clip((x - STATURES[0]) / STEP, 0, count - 1 - 1e-9)
    low, share = place.astype(int), place % 1.0
    rows = np.zeros((len(x), count))
    rows[np.arange(len(x)), low] = 1 - share
    rows[np.arange(len(x)), low + 1] = share
    bend = stiffness * np.diff(np.eye(count), 2, axis=0)
    from_steps = np.tril(np.ones((count, count)))  # a value is the sum of the steps up to it
    least = np.full(count, least_slope * STEP)
    least[0] = -np.inf
    goal = np.concatenate([y * weight, np.zeros(count - 2)])
    design = np.vstack([rows * weight[:, None], bend]) @ from_steps
    return from_steps @ lsq_linear(design, goal, (least, np.full(count, np.inf)), tol=1e-12).x


def bands(
    stature: Floats, value: Floats, width: float, step: float, fewest: int
) -> list[tuple[Floats, Floats]]:
    """Statures and values of the children in every band that holds enough of them."""
    found = []
    for low in np.arange(SURVEY_BEGINS, STATURES[-1], step):
        inside = (stature >= low) & (stature < low + width) & np.isfinite(value)
        if inside.sum() >= fewest:
            found.append((stature[inside], value[inside]))
    return found


def _points(found: list[tuple[Floats, Floats]], of) -> Floats:  # noqa: ANN001
    return np.array([(np.median(x), of(y), np.sqrt(len(y))) for x, y in found])


def median_curve(name: str, stature: Floats, value: Floats) -> Floats:
    """M: babies' figures below, medians of 30 mm bands of the survey above."""
    survey = _points(bands(stature, value, width=30.0, step=30.0, fewest=8), np.median)
    factor = UPPER_THIGH if name == "thigh" else 1.0
    baby = [(s, v * factor, 4.0) for s, v in BABY_NODES.get(name, ())]
    points = np.array([*baby, *map(tuple, survey)])
    scale = np.median(points[:, 1])
    points[:, 1] /= scale
    return scale * smooth_curve(points, stiffness=12.0, least_slope=2e-5)


def transform(ratio: Floats, power: Floats | float) -> Floats:
    """The Box-Cox transform of value over median."""
    power = np.where(np.abs(power) < 1e-3, 1e-3, power)  # the logarithm, near enough
    return (ratio**power - 1) / power


def power_curve(stature: Floats, ratio: Floats) -> Floats:
    """L: what makes the outer quantiles lie even about the median, in bands of 240 mm."""
    points = _points(bands(stature, ratio, width=240.0, step=120.0, fewest=60), _evening_power)
    points[:, 2] /= points[:, 2].mean()
    curve = smooth_curve(points, stiffness=8.0, least_slope=-1.0)
    return on_curve(curve, np.clip(STATURES, points[0, 0], points[-1, 0])).round(2)


def _evening_power(ratio: Floats) -> float:
    def lean(power: float) -> float:
        outer, low, mid, high, far = np.quantile(transform(ratio, power), (0.02, 0.10, 0.5, 0.90, 0.98))
        return float(abs(low + high - 2 * mid) + abs(outer + far - 2 * mid))

    return float(min(np.arange(-6.0, 3.01, 0.1), key=lean))


def spread_curve(stature: Floats, shift: Floats) -> Floats:
    """S: the standard deviation that P10 and P90 of the transformed ratio tell, in bands of 60 mm."""

    def spread(values: Floats) -> float:
        low, high = np.quantile(values, (0.1, 0.9))
        return float(high - low) / 2.5631

    points = _points(bands(stature, shift, width=60.0, step=60.0, fewest=20), spread)
    scale = points[:, 1].mean()
    points[:, 1] /= scale
    curve = scale * smooth_curve(points, stiffness=60.0, least_slope=-1.0)
    return on_curve(np.maximum(curve, scale / 2), np.maximum(STATURES, points[0, 0]))


def age_curves(stature: Floats, age: Floats) -> tuple[Floats, Floats, Floats]:
    """L, M and S of age [months]; it is taken as its logarithm.

    A baby's spread of age is the spread of its length over its growth in a month.
    """
    points = _points(bands(stature, age, width=30.0, step=30.0, fewest=8), np.median)
    points[:, 1] /= STEP
    above = smooth_curve(points, stiffness=12.0, least_slope=2e-5) * STEP
    median = np.where(STATURES < JOINT, np.interp(STATURES, *np.array(BABY_NODES["age"]).T), above)
    spread = spread_curve(stature, np.log(age / on_curve(median, stature)))
    growth = np.gradient(np.log(median), STATURES)
    power = np.zeros(len(STATURES))
    return power, median, np.where(STATURES < JOINT, LENGTH_SPREAD * STATURES * growth, spread)
