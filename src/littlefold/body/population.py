"""Made-up bodies to draft for: as tall, as stout and as various as real children.

Statures are drawn evenly between two ends.  At each stature the measurements are one draw that goes together
as in the 1977 survey (`relations`), and each has the median, spread and skew of its curve (`proportions`);
below 86 cm the curves stand on the figures for babies.  Shape facts of the survey stay true: in some small
children the waist is as large as the hip, and often the hip is smaller than the chest.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from littlefold.body.measurements import Measurements
from littlefold.body.proportions import proportions
from littlefold.body.register import NAMES
from littlefold.body.relations import relations

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

SMALLEST: Final = 560.0  # [mm]
LARGEST: Final = 1520.0
_FURTHEST: Final = 3.0  # scores beyond this are drawn again as this


def bodies(
    count: int, seed: int, smallest: float = SMALLEST, largest: float = LARGEST
) -> Iterator[Measurements]:
    """So many bodies with every measurement of the register; the same seed gives the same bodies.

    Args:
        count: How many.
        seed: Of the random numbers.
        smallest: Least stature [mm].
        largest: Greatest stature [mm].
    """
    dice = np.random.default_rng(seed)
    for number in range(count):
        stature = float(dice.uniform(smallest, largest))
        scores = np.clip(_draw(relations().at(stature), dice), -_FURTHEST, _FURTHEST)
        yield _body(number, stature, dict(zip(relations().names, scores.tolist(), strict=True)))


def _draw(covariance: NDArray[np.float64], dice: np.random.Generator) -> NDArray[np.float64]:
    """Standard normal numbers that go together as the covariance says."""
    spreads = np.sqrt(np.diag(covariance))
    return np.asarray(np.linalg.cholesky(covariance) @ dice.standard_normal(len(spreads)) / spreads)


def _body(number: int, stature: float, scores: dict[str, float]) -> Measurements:
    curves = proportions()
    lengths = {
        name: round(stature if name == "stature" else curves[name].value(stature, scores[name]))
        for name in NAMES
    }
    return Measurements.of(
        lengths,
        age_months=max(curves["age"].value(stature, scores["age"]), 0.0),
        sex="girl" if scores["sex"] > 0 else "boy",
        nickname=f"body {number + 1}",
    )
