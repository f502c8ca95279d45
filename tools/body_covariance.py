"""How the measurements of one child go together, found from rows with gaps."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

FREEDOM = 8.0  # of the t weights: a child four sigma off counts a third
NODES = (900.0, 1200.0, 1500.0, 1800.0)  # statures at which the covariance is found [mm]
REACH = 120.0  # sigma of the weight of a child away from a node [mm]
RIDGE = 2.0  # children's worth of no correlation that is mixed in
ROUNDS = 40


def local_covariances(stature: Floats, rows: Floats) -> list[Floats]:
    """The covariance of the columns at each of NODES, from the children near it."""
    return [covariance_with_gaps(rows, np.exp(-(((stature - node) / REACH) ** 2) / 2)) for node in NODES]


def covariance_with_gaps(rows: Floats, nearness: Floats) -> Floats:
    """Expectation and maximisation: what is missing is expected, then the covariance is taken, again and again.

    Rows count by their nearness, and by the weights of a t distribution, so that odd ones bend it little.
    """
    mean = np.zeros(rows.shape[1])
    cov = np.diag(np.nanvar(rows, axis=0))
    patterns, which = np.unique(np.isfinite(rows), axis=0, return_inverse=True)
    groups = [
        (known, rows[which == k], nearness[which == k]) for k, known in enumerate(patterns) if known.any()
    ]
    for _ in range(ROUNDS):
        mean, cov = _round(groups, mean, cov)
    return cov


def _round(groups: list, mean: Floats, cov: Floats) -> tuple[Floats, Floats]:
    total, weights, children = np.zeros(len(mean)), 0.0, 0.0
    cross = RIDGE * np.diag(np.diag(cov))
    expected = []
    for known, rows, near in groups:
        filled, unsure, weight = _expected(known, rows, mean, cov)
        total += (weight * near) @ filled
        weights += float(weight @ near)
        children += float(near.sum())
        cross += near.sum() * unsure
        expected.append((filled, weight * near))
    mean = total / weights
    for filled, weight in expected:
        apart = filled - mean
        cross += (apart * weight[:, None]).T @ apart
    return mean, cross / (children + RIDGE)


def _expected(
    known: NDArray[np.bool_], rows: Floats, mean: Floats, cov: Floats
) -> tuple[Floats, Floats, Floats]:
    """The rows without gaps, the covariance of what was filled in, and the weight of each row."""
    inverse = np.linalg.inv(cov[np.ix_(known, known)])
    gain = cov[:, known] @ inverse
    apart = rows[:, known] - mean[known]
    distance = np.einsum("ij,jk,ik->i", apart, inverse, apart)
    weight = (FREEDOM + known.sum()) / (FREEDOM + distance)
    return mean + apart @ gain.T, cov - gain @ cov[known], weight
