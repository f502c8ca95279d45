"""The plain baselines that `plausible` is measured against: straight-line regression, and a band round the stature's median.

Straight lines: the logarithm of each reading from those of all other readings on the card, of the age, and from the sex,
by least squares over the children of the other four fifths who have all of these readings.  The number of a card is its
furthest residual in standard deviations.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from littlefold.body.measurements import Measurements
    from littlefold.body.model import BodyModel

    Floats = NDArray[np.float64]
    Lines = tuple[tuple[Floats, float], ...]

FEWEST = 100  # children a regression is fitted to; cards of rarer kinds are not judged by it


@dataclass
class StraightLines:
    """The regressions of some children, fitted when they are asked for."""

    survey: dict[str, Floats]
    fitted: dict[tuple[str, ...], Lines | None] = field(default_factory=dict)

    def number(self, card: Measurements) -> float:
        """The furthest residual of a card [standard deviations]."""
        names = tuple(card)
        if names not in self.fitted:
            self.fitted[names] = self._fit(names)
        lines = self.fitted[names]
        if lines is None or card.age_months is None:
            return 0.0
        logs = np.log([card.mm(name) for name in names])
        rest = np.array([1.0, np.log(card.age_months), 1.0 if card.sex == "girl" else -1.0])
        return max(
            abs(logs[place] - np.concatenate([rest, np.delete(logs, place)]) @ line) / spread
            for place, (line, spread) in enumerate(lines)
        )

    def _fit(self, names: tuple[str, ...]) -> Lines | None:
        columns = np.column_stack([self.survey[name] for name in names])
        whole = np.isfinite(columns).all(axis=1)
        if whole.sum() < FEWEST:
            return None
        logs = np.log(columns[whole])
        rest = np.column_stack(
            [np.ones(len(logs)), np.log(self.survey["age"][whole]), self.survey["sex"][whole]]
        )
        return tuple(
            _line(np.column_stack([rest, np.delete(logs, place, axis=1)]), logs[:, place])
            for place in range(len(names))
        )


def _line(known: Floats, sought: Floats) -> tuple[Floats, float]:
    line = np.linalg.lstsq(known, sought, rcond=None)[0]
    return line, float((sought - known @ line).std())


def furthest_from_median(card: Measurements, model: BodyModel) -> float:
    """The band's number: the furthest reading from the median at the stature [standard deviations]."""
    if "stature" not in card:
        return 0.0
    stature = card.mm("stature")
    scores = [model.curves[name].score(stature, card.mm(name)) for name in card if name != "stature"]
    return max(map(abs, scores), default=0.0)
