"""From weighed stories to a verdict: which slip is named, when two are, and when a second reading is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.body.odds import Card, Suspicion, weigh

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.body.model import BodyModel

_ALARM, _ALARM_EACH, _ALARM_LEAST = 1.68, 0.142, 2.45  # see `alarm`
DOUBT: Final = 1.3  # log odds under the alarm, from which a second reading is asked for
_CLEAR: Final = 1.5  # log odds by which one suspicion must lead the next, to be named alone
_MOST_SLIPS: Final = 3  # on one card; beyond that, measure all again


@dataclass(frozen=True, slots=True)
class Verdict:
    """What is held of some readings.

    Attributes:
        suspicions: The likeliest one, and the next beside it where the two stand close.
        is_sure: Whether the readings are not believed; else a second reading is asked for, no more.
    """

    suspicions: tuple[Suspicion, ...]
    is_sure: bool

    @property
    def names(self) -> tuple[str, ...]:
        """The readings concerned, each once."""
        return tuple(dict.fromkeys(name for each in self.suspicions for name in each.names))

    @property
    def is_decided(self) -> bool:
        """Whether it is clear which readings went wrong."""
        return all(each.names == self.suspicions[0].names for each in self.suspicions)


def alarm(count: int) -> float:
    """The log odds of any slip against none from which a card of so many readings is not believed.

    Set so that at most 2 of 100 true children are accused, on long cards and short ones alike; the numbers are
    found by tools/measure_plausibility.py and stand in docs/measurements.md.
    """
    return max(_ALARM + _ALARM_EACH * count, _ALARM_LEAST)


def verdicts(card: Card, model: BodyModel) -> Iterator[Verdict]:
    """One slip after another, each judged without the readings of those before it; at last, perhaps, a doubt."""
    for _ in range(_MOST_SLIPS):
        weighed = weigh(card, model)
        over = weighed.log_odds - alarm(len(card.readings))
        if over <= -DOUBT:
            return
        verdict = Verdict(_close(weighed.suspicions), is_sure=over > 0)
        yield verdict
        if not verdict.is_sure:
            return
        card = card.without(verdict.names)


def _close(found: tuple[Suspicion, ...]) -> tuple[Suspicion, ...]:
    """The likeliest suspicion, and the next where it stands close: of other readings, or of another slip."""
    first = found[0]
    rivals = (each for each in found[1:] if each.code != "reading-unlikely" or each.names != first.names)
    rival = next((each for each in rivals if _is_apart(each, first)), None)
    if rival is None or first.log_odds - rival.log_odds > _CLEAR:
        return (first,)
    return (first, rival)


def _is_apart(one: Suspicion, other: Suspicion) -> bool:
    """Whether they are about the same readings, or about none in common."""
    return one.names == other.names or not set(one.names) & set(other.names)
