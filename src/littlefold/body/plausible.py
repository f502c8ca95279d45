"""Readings that look wrong: which, what the likely mistake is, and when a second reading is needed.

All stories of `slips` are weighed against the plain one (`odds`); where they outweigh it, the likeliest is named, and
where two stand close, both are (`verdict`).  What is left is looked at one by one (`unusual`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements, Origin
from littlefold.body.model import BodyModel, body_model
from littlefold.body.odds import Card, Suspicion
from littlefold.body.register import REGISTER
from littlefold.body.slips import SLIPS
from littlefold.body.tape import ONE_MM, say_length
from littlefold.body.unusual import IMPOSSIBLE, Units, strange_reading
from littlefold.body.verdict import Verdict, verdicts
from littlefold.problem import Number, Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

_LEAST: Final = 1.0  # mm; what is less is no reading
_MOST_TOLD: Final = 3  # readings whose numbers a message repeats


def examine(
    measurements: Measurements, units: Units = "cm", model: BodyModel | None = None
) -> tuple[Problem, ...]:
    """Everything that looks wrong among the readings that were taken with a tape.

    A slip is a warning, or an error where the reading is impossible; a doubt, and what is merely unusual, is a note.

    Args:
        measurements: The child; only readings of origin 'given' and of 1 mm or more are judged.
        units: Of the messages.
        model: Another model than the one that is shipped.
    """
    model = model or body_model()
    given = _judged(measurements, model)
    found = tuple(verdicts(Card(given.lengths(), given.age_months, given.sex), model))
    words = [_Words(verdict, given, units, model) for verdict in found]
    named = {name for verdict in found for name in verdict.names}
    accused = {name for verdict in found if verdict.is_sure for name in verdict.names}
    return (
        *(each.problem() for each in words),
        *_strange(given.without(*accused), named, units, model),
    )


def _judged(measurements: Measurements, model: BodyModel) -> Measurements:
    pairs = tuple(
        (name, reading)
        for name, reading in measurements.readings
        if reading.origin is Origin.GIVEN
        and reading.mm >= _LEAST
        and (name == "stature" or model.knows(name))
    )
    return replace(measurements, readings=pairs)


def _strange(believed: Measurements, named: set[str], units: Units, model: BodyModel) -> Iterator[Problem]:
    """The readings that are strange at the stature, but for those that are named already."""
    stature = complete(believed, model)[0].get("stature")
    if stature is None:
        return
    for name in believed:
        if name == "stature" or name in named:
            continue
        problem = strange_reading(model.curves[name], believed.mm(name), stature.mm, units)
        if problem is not None:
            yield problem


@dataclass(frozen=True, slots=True)
class _Words:
    """A verdict in words."""

    verdict: Verdict
    given: Measurements
    units: Units
    model: BodyModel

    def problem(self) -> Problem:
        """The problem, with the numbers as written and as they would go with the others."""
        names, usual = self.verdict.names, self._usual()
        numbers = [Number(name, self.given.mm(name)) for name in names]
        numbers += [Number(f"usual {name}", usual.mm(name)) for name in names if name in usual]
        return Problem(
            self._code(),
            f"{self._written()}{self._beside(usual)}. {self._likely()}{self._or_age()}",
            self._severity(usual),
            numbers=tuple(numbers),
            cure=f"Measure again: {', '.join(map(_title, names))}.",
        )

    def _usual(self) -> Measurements:
        """What the other readings say of these."""
        return complete(self.given.without(*self.verdict.names), self.model)[0]

    def _code(self) -> str:
        if not self.verdict.is_sure:
            return "reading-doubtful"
        return self.verdict.suspicions[0].code if self.verdict.is_decided else "measure-again"

    def _written(self) -> str:
        each = [
            f"{_title(name)} is {say_length(self.given.mm(name), self.units)}" for name in self.verdict.names
        ]
        said = " and ".join(each)
        if len(each) > _MOST_TOLD:
            said = f"{each[0]}, and {len(each) - 1} other readings look wrong in the same way"
        return said[0].upper() + said[1:]

    def _beside(self, usual: Measurements) -> str:
        known = [name for name in self.verdict.names if name in usual]
        if not known or len(self.verdict.names) > _MOST_TOLD:
            return ""
        fitting = " and ".join(say_length(usual.mm(name), self.units, ONE_MM) for name in known)
        return f"; about {fitting} would go with the other readings"

    def _likely(self) -> str:
        if not self.verdict.is_sure:
            return "That may be so; take it once more to be sure."
        if not self.verdict.is_decided:
            return "One of them is wrong, and one reading cannot tell which: measure again."
        guesses = "; or ".join(map(self._guess, self.verdict.suspicions))
        return f"{guesses[0].upper()}{guesses[1:]}. Correct it, or measure again."

    def _guess(self, suspicion: Suspicion) -> str:
        mm, truth = self.given.mm(suspicion.names[0]), suspicion.truth[0]
        return SLIPS[suspicion.code].words.format(
            cm=f"{mm / 10:.4g}", inches=f"{mm / 25.4:.4g}", truth=say_length(truth, self.units, ONE_MM)
        )

    def _or_age(self) -> str:
        is_aged = "stature" in self.verdict.names and self.given.age_months
        return " Or the birth date is wrong." if is_aged and self.verdict.is_sure else ""

    def _severity(self, usual: Measurements) -> Severity:
        """An error where a reading is impossible beside the stature of the others."""
        stature, names = usual.get("stature"), self.verdict.names
        if not self.verdict.is_sure:
            return Severity.NOTE
        if stature is None or "stature" in names:
            return Severity.WARNING
        scores = [self.model.curves[name].score(stature.mm, self.given.mm(name)) for name in names]
        return Severity.ERROR if max(map(abs, scores)) > IMPOSSIBLE else Severity.WARNING


def _title(name: str) -> str:
    title = REGISTER[name].title
    return title[0].lower() + title[1:]
