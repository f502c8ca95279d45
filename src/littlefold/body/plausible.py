"""Readings that look wrong: which, what the likely mistake is, and when a second reading is needed.

Three questions are asked of every card.

*Impossible?*  Further than 6 standard deviations from the median of children of this stature, as WHO's growth
programs set aside a height for age beyond 6 (from memory).  An error.

*A slip?*  All stories of `slips` are weighed against the plain one (`odds`).  Where they outweigh it by more
than `alarm`, the likeliest is named; where two stand close, both are.  A warning.

*Unusual?*  Outside P1 to P99 of children of this stature.  A note: of 100 children, two are so in any one reading.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements, Origin
from littlefold.body.model import BodyModel, body_model
from littlefold.body.odds import Card, Suspicion, weigh
from littlefold.body.register import REGISTER
from littlefold.body.slips import SLIPS
from littlefold.body.tape import ONE_MM, say_length
from littlefold.problem import Number, Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

_ALARM_LONG, _ALARM_SHORT = 0.7, 1.5  # see `alarm`
_CLEAR: Final = (
    1.5  # log odds by which one suspicion must lead the next about other readings, to be named alone
)
_MOST_TOLD: Final = 3  # readings whose numbers a message repeats
_MOST_SLIPS: Final = 3  # on one card; beyond that, measure all again
_IMPOSSIBLE: Final = 6.0  # standard deviations
_LEAST: Final = 1.0  # mm; what is less is no reading
_UNUSUAL: Final = 2.3263  # standard deviations: P1 and P99

UNSURVEYED: Final = frozenset(
    {"back_waist", "front_waist", "across_back", "shoulder", "scye_depth", "knee", "body_rise", "outside_leg"}
)  # no survey tells what is unusual here

Units = Literal["cm", "in"]


def examine(
    measurements: Measurements, units: Units = "cm", model: BodyModel | None = None
) -> tuple[Problem, ...]:
    """Everything that looks wrong among the readings that were taken with a tape.

    Args:
        measurements: The child; only readings of origin 'given' and of 1 mm or more are judged.
        units: Of the messages.
        model: Another model than the one that is shipped.
    """
    model = model or body_model()
    given = _judged(measurements, model)
    slips = tuple(_slips(given, model))
    accused = {name for found in slips for each in found for name in each.names}
    problems = [_slip_problem(found, given, units, model) for found in slips]
    stature = _stature(given.without(*accused), model)
    if stature is None:
        return tuple(problems)
    others = (name for name in given if name != "stature" and name not in accused)
    strange = (_strange(name, given.mm(name), stature, units, model) for name in others)
    return (*problems, *(problem for problem in strange if problem is not None))


def alarm(count: int) -> float:
    """The log odds of any slip against none from which a card of so many readings is not believed.

    Set so that at most 2 of 100 true children are accused, on long cards and short ones alike; the numbers are
    found by tools/measure_plausibility.py and stand in docs/measurements.md.
    """
    count = max(count, 1)
    return _ALARM_LONG * math.log(count) + _ALARM_SHORT / count


def _judged(measurements: Measurements, model: BodyModel) -> Measurements:
    pairs = tuple(
        (name, reading)
        for name, reading in measurements.readings
        if reading.origin is Origin.GIVEN
        and reading.mm >= _LEAST
        and (name == "stature" or model.knows(name))
    )
    return replace(measurements, readings=pairs)


def _slips(given: Measurements, model: BodyModel) -> Iterator[tuple[Suspicion, ...]]:
    """One slip after another: the suspicion, and the next one beside it where the two stand close."""
    card = Card(given.lengths(), given.age_months, given.sex)
    for _ in range(_MOST_SLIPS):
        weighed = weigh(card, model)
        if weighed.log_odds <= alarm(len(card.readings)):
            return
        close = _close(weighed.suspicions)
        yield close
        card = card.without(tuple(name for each in close for name in each.names))


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


def _stature(given: Measurements, model: BodyModel) -> float | None:
    reading = complete(given, model)[0].get("stature")
    return None if reading is None else reading.mm


def _slip_problem(
    found: tuple[Suspicion, ...], given: Measurements, units: Units, model: BodyModel
) -> Problem:
    names = tuple(dict.fromkeys(name for each in found for name in each.names))
    usual = complete(given.without(*names), model)[0]
    known = [name for name in names if name in usual]
    numbers = [Number(name, given.mm(name)) for name in names]
    numbers += [Number(f"usual {name}", usual.mm(name)) for name in known]
    fitting = " and ".join(say_length(usual.mm(name), units, ONE_MM) for name in known)
    beside = (
        f"; about {fitting} would go with the other readings" if known and len(names) <= _MOST_TOLD else ""
    )
    written = _written(names, given, units)
    return Problem(
        "measure-again" if _is_undecided(found) else found[0].code,
        f"{written[0].upper()}{written[1:]}{beside}. {_likely(found, given, units)}{_or_age(names, given)}",
        _severity(names, given, usual, model),
        numbers=tuple(numbers),
        cure=f"Measure again: {', '.join(map(_title, names))}.",
    )


def _written(names: tuple[str, ...], given: Measurements, units: Units) -> str:
    each = [f"{_title(name)} is {say_length(given.mm(name), units)}" for name in names]
    if len(each) <= _MOST_TOLD:
        return " and ".join(each)
    return f"{each[0]}, and {len(each) - 1} other readings look wrong in the same way"


def _title(name: str) -> str:
    title = REGISTER[name].title
    return title[0].lower() + title[1:]


def _is_undecided(found: tuple[Suspicion, ...]) -> bool:
    return any(each.names != found[0].names for each in found)


def _likely(found: tuple[Suspicion, ...], given: Measurements, units: Units) -> str:
    if _is_undecided(found):
        return "One of them is wrong, and one reading cannot tell which: measure again."
    guesses = "; or ".join(_guess(each, given, units) for each in found)
    return f"{guesses[0].upper()}{guesses[1:]}. Correct it, or measure again."


def _guess(suspicion: Suspicion, given: Measurements, units: Units) -> str:
    mm, truth = given.mm(suspicion.names[0]), suspicion.truth[0]
    return SLIPS[suspicion.code].words.format(
        cm=f"{mm / 10:.4g}", inches=f"{mm / 25.4:.4g}", truth=say_length(truth, units, ONE_MM)
    )


def _or_age(names: tuple[str, ...], given: Measurements) -> str:
    return " Or the birth date is wrong." if "stature" in names and given.age_months else ""


def _severity(names: tuple[str, ...], given: Measurements, usual: Measurements, model: BodyModel) -> Severity:
    """An error where a reading is impossible beside the stature of the others."""
    stature = usual.get("stature")
    if stature is None or "stature" in names:
        return Severity.WARNING
    scores = [model.curves[name].score(stature.mm, given.mm(name)) for name in names]
    return Severity.ERROR if max(map(abs, scores)) > _IMPOSSIBLE else Severity.WARNING


def _strange(name: str, mm: float, stature: float, units: Units, model: BodyModel) -> Problem | None:
    score = abs(model.curves[name].score(stature, mm))
    if score > _IMPOSSIBLE:
        return _outside(_IMPOSSIBLE_WORDS, name, mm, _bounds(name, stature, _IMPOSSIBLE, model), units)
    if score > _UNUSUAL and name not in UNSURVEYED:
        return _outside(_UNUSUAL_WORDS, name, mm, _bounds(name, stature, _UNUSUAL, model), units)
    return None


@dataclass(frozen=True, slots=True)
class _Words:
    code: str
    severity: Severity
    sentence: str


_IMPOSSIBLE_WORDS: Final = _Words(
    "reading-impossible",
    Severity.ERROR,
    "No child of height {height} has less than {low} or more than {high}. Measure again.",
)
_UNUSUAL_WORDS: Final = _Words(
    "reading-unusual",
    Severity.NOTE,
    "Of 100 children of height {height}, one has less than {low} and one more than {high}. "
    "It may be so; measure again if in doubt.",
)


def _bounds(name: str, stature: float, score: float, model: BodyModel) -> tuple[float, float, float]:
    """The stature, and the values at that many standard deviations below and above the median [mm]."""
    curve = model.curves[name]
    return stature, curve.value(stature, -score), curve.value(stature, score)


def _outside(
    words: _Words, name: str, mm: float, bounds: tuple[float, float, float], units: Units
) -> Problem:
    height, low, high = (say_length(bound, units, ONE_MM) for bound in bounds)
    return Problem(
        words.code,
        f"{REGISTER[name].title} is {say_length(mm, units)}. "
        + words.sentence.format(height=height, low=low, high=high),
        words.severity,
        numbers=(Number(name, mm), Number("least", bounds[1]), Number("greatest", bounds[2])),
        cure=f"Measure again: {_title(name)}.",
    )
