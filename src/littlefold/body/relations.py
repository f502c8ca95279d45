"""How the measurements of one child go together: who is stout in the chest is stout in the waist.

Every measurement is first turned into its score z at the child's stature (`proportions`).  The scores of one
child are one draw from a normal distribution with the correlations of `tables/correlation.csv`, derived from
the 1977 survey by `tools/derive_body_tables.py`.  Given some scores, the others have a conditional mean and
spread.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final

import numpy as np

from littlefold.body.proportions import proportions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from numpy.typing import NDArray

    from littlefold.body.measurements import Measurements

SEX_SCORES: Final = {"girl": 1.0, "boy": -1.0}
_FURTHEST: Final = 4.0  # a score beyond this tells no more about the others than this one does


@dataclass(frozen=True, slots=True)
class Relations:
    """The correlations; `names` are short names of measurements, then 'age' and 'sex'."""

    names: tuple[str, ...]
    correlation: NDArray[np.float64]

    def rows(self, names: Sequence[str]) -> list[int]:
        """Where the names stand in the correlation."""
        return [self.names.index(name) for name in names]


@dataclass(frozen=True, slots=True)
class Expectation:
    """What known scores say of unknown ones: mean = gain . known scores, with these spreads."""

    gain: NDArray[np.float64]
    spreads: NDArray[np.float64]


@lru_cache(maxsize=1)
def relations() -> Relations:
    """The correlations, read once."""
    lines = files(__package__).joinpath("tables/correlation.csv").read_text("utf-8").splitlines()
    head, *rows = [line.split(",") for line in lines if line and not line.startswith("#")]
    lower = np.zeros((len(rows), len(rows)))
    for index, row in enumerate(rows):
        lower[index, : index + 1] = [float(cell) for cell in row[1:]]
    return Relations(tuple(head[1:]), lower + lower.T - np.eye(len(rows)))


@lru_cache(maxsize=256)
def expectation(known: tuple[str, ...], unknown: tuple[str, ...]) -> Expectation:
    """The conditional normal distribution of the unknown scores, given the known ones."""
    found = relations()
    given, sought = found.rows(known), found.rows(unknown)
    among = found.correlation[np.ix_(given, given)]
    across = found.correlation[np.ix_(sought, given)]
    gain = across @ np.linalg.inv(among)
    left = 1.0 - np.einsum("ij,ij->i", gain, across)
    return Expectation(gain, np.sqrt(np.maximum(left, 0.0)))


def scores(measurements: Measurements, stature: float) -> Mapping[str, float]:
    """The scores of all that is known of this child, its age and sex with them, at this stature [mm]."""
    curves = proportions()
    found = {
        name: _tempered(curves[name].score(stature, reading.mm))
        for name, reading in measurements.readings
        if name in curves and reading.mm > 0
    }
    if measurements.age_months:
        found["age"] = _tempered(curves["age"].score(stature, measurements.age_months))
    if measurements.sex:
        found["sex"] = SEX_SCORES[measurements.sex]
    return found


def _tempered(z: float) -> float:
    return min(max(z, -_FURTHEST), _FURTHEST)
