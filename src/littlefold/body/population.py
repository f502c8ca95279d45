"""Made-up bodies to draft for: as tall, as stout and as various as real children.

Statures are drawn evenly between two ends.  At each stature the scores of all measurements are one draw from
the correlations of the 1977 survey (`relations`), and each score gives a value by its curve (`proportions`);
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
    root = _root(relations().correlation)
    for number in range(count):
        stature = float(dice.uniform(smallest, largest))
        scores = np.clip(root @ dice.standard_normal(len(root)), -_FURTHEST, _FURTHEST)
        yield _body(number, stature, dict(zip(relations().names, scores.tolist(), strict=True)))


def _root(correlation: NDArray[np.float64]) -> NDArray[np.float64]:
    values, vectors = np.linalg.eigh(correlation)
    return np.asarray(vectors * np.sqrt(np.maximum(values, 0.0)), dtype=np.float64)


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
