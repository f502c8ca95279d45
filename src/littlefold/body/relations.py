"""How the measurements of one child go together: who is stout in the chest is stout in the waist.

Every measurement is turned into its deviation at the child's stature, log(value / M) / S (`proportions`).
The deviations of one child have the covariance of `tables/relations.csv`, derived from the 1977 survey by
`tools/derive_body_tables.py`; it is given at four statures, and taken between them in proportion.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

SEX_DEVIATION: Final = {"girl": 1.0, "boy": -1.0}


@dataclass(frozen=True, slots=True, eq=False)
class Relations:
    """The covariances.

    Attributes:
        names: Short names of measurements, then 'age' and 'sex' among them.
        statures: Where a covariance is given [mm].
        covariances: One a stature, rows and columns in the order of `names`.
    """

    names: tuple[str, ...]
    statures: tuple[float, ...]
    covariances: tuple[Floats, ...]

    def at(self, stature: float) -> Floats:
        """The covariance at this stature; beyond the ends, that of the end."""
        place = float(np.interp(stature, self.statures, range(len(self.statures))))
        low = min(int(place), len(self.statures) - 2)
        return self.covariances[low] * (1 - place + low) + self.covariances[low + 1] * (place - low)


@lru_cache(maxsize=1)
def relations() -> Relations:
    """The covariances that are shipped, read once."""
    lines = files(__package__).joinpath("tables/relations.csv").read_text("utf-8").splitlines()
    head, *rows = [line.split(",") for line in lines if line and not line.startswith("#")]
    names = tuple(head[2:])
    blocks: dict[float, list[list[float]]] = {}
    for row in rows:
        blocks.setdefault(float(row[0]), []).append([float(cell) for cell in row[2:]])
    return Relations(names, tuple(blocks), tuple(_from_lower_half(block) for block in blocks.values()))


def _from_lower_half(rows: list[list[float]]) -> Floats:
    lower = np.zeros((len(rows), len(rows)))
    for index, row in enumerate(rows):
        lower[index, : index + 1] = row
    return lower + np.tril(lower, -1).T
