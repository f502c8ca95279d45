"""Weighing the stories about a card against the plain one, that every reading is true.

The odds of a story are its prior times the density of the readings as they would really be, over the density of
the readings as they stand (Bayes).  The priors are shared out among the readings, so that a long card is not
accused more often than a short one.  Where no stature is given, every stature is tried, by its likelihood at the
age.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
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

SHORTEST, TALLEST = 450.0, 2000.0  # [mm]; a child outside is less and less likely
_FADING: Final = 0.05  # of the stature, over which it gets less likely beyond the ends
_GROWING: Final = 168.0  # months; beyond 14 years the age tells little of the stature
_STATURES: Final = np.arange(500.0, 1900.0, 40.0)  # tried where none is given [mm]
_NAMED: Final = 12  # suspicions that are handed back


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
    """A slip that some readings may show.

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


@dataclass(frozen=True, slots=True)
class Weighed:
    """What speaks against a card: the log odds of any slip at all, and the likeliest suspicions, likeliest first."""

    log_odds: float
    suspicions: tuple[Suspicion, ...]


@dataclass(frozen=True, slots=True, eq=False)
class _Told:
    """All stories about cards with the same readings, those of one suspicion behind each other.

    Attributes:
        names: The readings on the card.
        codes: The kind of slip of each suspicion.
        stories: One for each row of the arrays.
        starts: The first story of each suspicion.
        takes: For each story and reading, the column whose number it would really have.
        factors: What that number is to be multiplied with.
        log_priors: Of each story.
    """

    names: tuple[str, ...]
    codes: tuple[str, ...]
    stories: tuple[Story, ...]
    starts: NDArray[np.intp]
    takes: NDArray[np.intp]
    factors: Floats
    log_priors: Floats


def weigh(card: Card, model: BodyModel) -> Weighed:
    """Every slip about every reading, weighed."""
    names = tuple(card.readings)
    if not names:
        return Weighed(-np.inf, ())
    told = _told(names)
    readings = np.array(list(card.readings.values()))
    rows = np.vstack([readings, readings[told.takes] * told.factors])
    densities = _densities(card, names, rows, model)
    odds = densities[1:] - densities[0] + told.log_priors
    grouped = np.logaddexp.reduceat(odds, told.starts)
    likeliest = np.argsort(-grouped)[:_NAMED].tolist()
    found = tuple(_suspicion(told, number, odds, rows) for number in likeliest)
    return Weighed(float(np.logaddexp.reduce(grouped)), found)


@lru_cache(maxsize=512)
def _told(names: tuple[str, ...]) -> _Told:
    grouped: dict[tuple[str, tuple[str, ...]], list[Story]] = {}
    for code, slip in SLIPS.items():
        for story in slip.tell(names):
            grouped.setdefault((code, story.names), []).append(story)
    stories = tuple(story for group in grouped.values() for story in group)
    takes = np.tile(np.arange(len(names)), (len(stories), 1))
    factors = np.ones(takes.shape)
    for row, story in enumerate(stories):
        columns = [names.index(name) for name in story.names]
        takes[row, columns] = [names.index(name) for name in story.takes]
        factors[row, columns] = story.factors
    starts = np.cumsum([0, *(len(group) for group in grouped.values())])[:-1]
    priors = np.log([story.prior / len(names) for story in stories])
    return _Told(names, tuple(code for code, _ in grouped), stories, starts, takes, factors, priors)


def _suspicion(told: _Told, number: int, odds: Floats, rows: Floats) -> Suspicion:
    start = int(told.starts[number])
    end = int(told.starts[number + 1]) if number + 1 < len(told.starts) else len(odds)
    best = start + int(np.argmax(odds[start:end]))
    story = told.stories[best]
    truth = tuple(float(rows[best + 1, told.names.index(name)]) for name in story.names)
    return Suspicion(told.codes[number], story.names, truth, float(np.logaddexp.reduce(odds[start:end])))


def _densities(card: Card, names: tuple[str, ...], rows: Floats, model: BodyModel) -> Floats:
    """The log density of each row of readings."""
    if "stature" not in names:
        return _at_any_stature(card, names, rows, model)
    place = names.index("stature")
    others = names[:place] + names[place + 1 :]
    return _at_stature(card, others, np.delete(rows, place, axis=1), rows[:, place], model)


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
