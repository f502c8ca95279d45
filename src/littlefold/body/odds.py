"""Weighing the stories about a card against the plain one, that every reading is true.

The odds of a story are its prior times the density of the readings as they would really be, over the density of
the readings as they stand (Bayes).  The priors are shared out among the readings, so that a long card is not
accused more often than a short one.  Where no stature is given, every stature is tried, by its likelihood at the
age.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from littlefold.body.slips import SLIPS, Story
from littlefold.body.stature import stature_at

if TYPE_CHECKING:
    from collections.abc import Mapping

    from numpy.typing import NDArray

    from littlefold.body.measurements import Sex
    from littlefold.body.model import BodyModel

    Floats = NDArray[np.float64]

_GROWING: Final = 168.0  # months; beyond 14 years the age tells little of the stature
SHORTEST, TALLEST = 450.0, 2000.0  # [mm]; a child outside is less and less likely
_FADING: Final = 0.05  # of the stature, over which it gets less likely beyond the ends
_STATURES: Final = np.arange(500.0, 1900.0, 40.0)  # tried where none is given [mm]


@dataclass(frozen=True, slots=True)
class Card:
    """The readings that are judged together.

    Attributes:
        readings: Short name to length [mm]; 'stature' among them where it was measured.
        age_months: Where known.
        sex: Where known.
    """

    readings: Mapping[str, float]
    age_months: float | None = None
    sex: Sex | None = None

    def without(self, names: tuple[str, ...]) -> Card:
        """The card without these readings."""
        kept = {name: mm for name, mm in self.readings.items() if name not in names}
        return Card(kept, self.age_months, self.sex)


@dataclass(frozen=True, slots=True)
class Suspicion:
    """A slip that one or two readings may show.

    Attributes:
        code: The kind of slip.
        names: The readings concerned.
        truth: What they would really be, in the likeliest story of this kind [mm].
        log_odds: Against the plain story; all stories of this kind about these readings taken together.
    """

    code: str
    names: tuple[str, ...]
    truth: tuple[float, ...]
    log_odds: float


def suspicions(card: Card, model: BodyModel) -> tuple[Suspicion, ...]:
    """Every slip about every reading, the likeliest first."""
    told = [(code, story) for code, slip in SLIPS.items() for story in slip.tell(card.readings)]
    if not told:
        return ()
    densities = _densities(card, [story for _, story in told], model)
    shares = np.log([story.prior / len(card.readings) for _, story in told])
    odds = densities[1:] - densities[0] + shares
    grouped: dict[tuple[str, tuple[str, ...]], list[tuple[float, Story]]] = {}
    for (code, story), log in zip(told, odds.tolist(), strict=True):
        grouped.setdefault((code, story.names), []).append((log, story))
    found = [_suspicion(code, names, stories) for (code, names), stories in grouped.items()]
    return tuple(sorted(found, key=lambda each: -each.log_odds))


def _suspicion(code: str, names: tuple[str, ...], stories: list[tuple[float, Story]]) -> Suspicion:
    best = max(stories, key=lambda pair: pair[0])[1]
    together = float(np.logaddexp.reduce([log for log, _ in stories]))
    return Suspicion(code, names, tuple(mm for _, mm in best.truth), together)


def _densities(card: Card, stories: list[Story], model: BodyModel) -> Floats:
    """The log density of the card as it stands, then of each story."""
    names = tuple(card.readings)
    rows = np.tile(np.array(list(card.readings.values())), (len(stories) + 1, 1))
    for number, story in enumerate(stories, start=1):
        for name, mm in story.truth:
            rows[number, names.index(name)] = mm
    if "stature" in names:
        place = names.index("stature")
        others = names[:place] + names[place + 1 :]
        return _at_stature(card, others, np.delete(rows, place, axis=1), rows[:, place], model)
    return _at_any_stature(card, names, rows, model)


def _at_stature(
    card: Card, names: tuple[str, ...], rows: Floats, statures: Floats, model: BodyModel
) -> Floats:
    if card.age_months and card.age_months <= _GROWING:
        names, rows = (*names, "age"), np.column_stack([rows, np.full(len(rows), card.age_months)])
    beyond = np.log(statures / np.clip(statures, SHORTEST, TALLEST)) / _FADING
    return model.log_density(names, rows, statures, card.sex) - beyond**2 / 2


def _at_any_stature(card: Card, names: tuple[str, ...], rows: Floats, model: BodyModel) -> Floats:
    """Summed over the statures, each by its likelihood at the age."""
    logs = np.array(
        [
            _log_likelihood(card, stature)
            + model.log_density(names, rows, np.full(len(rows), stature), card.sex)
            for stature in _STATURES.tolist()
        ]
    )
    return np.asarray(np.logaddexp.reduce(logs, axis=0), dtype=np.float64)


def _log_likelihood(card: Card, stature: float) -> float:
    if card.age_months is None:
        return 0.0
    return -(stature_at(card.age_months, card.sex).score(stature) ** 2) / 2


def total_log_odds(found: tuple[Suspicion, ...]) -> float:
    """The log odds of any slip at all against none."""
    return float(np.logaddexp.reduce([each.log_odds for each in found])) if found else -np.inf
