"""One reading against the stature: impossible, or unusual.

*Impossible* is what lies further than 6 standard deviations from the median of children of that stature, as WHO's
growth programs set aside a height for age beyond 6 (from memory): an error.  *Unusual* is what lies outside P1 to
P99: a note, for of 100 children two are so in any one reading.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from littlefold.body.register import REGISTER
from littlefold.body.tape import ONE_MM, say_length
from littlefold.problem import Number, Problem, Severity

if TYPE_CHECKING:
    from littlefold.body.proportions import Proportion

Units = Literal["cm", "in"]

IMPOSSIBLE: Final = 6.0  # standard deviations
P99: Final = 2.3263

UNSURVEYED: Final = frozenset(
    {"back_waist", "front_waist", "across_back", "shoulder", "scye_depth", "knee", "body_rise", "outside_leg"}
)  # no survey tells what is unusual here


@dataclass(frozen=True, slots=True)
class _Words:
    code: str
    severity: Severity
    score: float
    sentence: str


_IMPOSSIBLE_WORDS: Final = _Words(
    "reading-impossible",
    Severity.ERROR,
    IMPOSSIBLE,
    "No child of height {height} has less than {low} or more than {high}. Measure again.",
)
_UNUSUAL_WORDS: Final = _Words(
    "reading-unusual",
    Severity.NOTE,
    P99,
    "Of 100 children of height {height}, one has less than {low} and one more than {high}. "
    "It may be so; measure again if in doubt.",
)


def strange_reading(curve: Proportion, mm: float, stature: float, units: Units) -> Problem | None:
    """The problem of a reading that is impossible or unusual at this stature [mm]; None where it is neither."""
    score = abs(curve.score(stature, mm))
    if score > IMPOSSIBLE:
        return _outside(_IMPOSSIBLE_WORDS, curve, mm, stature, units)
    if score > P99 and curve.name not in UNSURVEYED:
        return _outside(_UNUSUAL_WORDS, curve, mm, stature, units)
    return None


def _outside(words: _Words, curve: Proportion, mm: float, stature: float, units: Units) -> Problem:
    low, high = curve.value(stature, -words.score), curve.value(stature, words.score)
    said = {
        key: say_length(value, units, ONE_MM)
        for key, value in (("height", stature), ("low", low), ("high", high))
    }
    title = REGISTER[curve.name].title
    return Problem(
        words.code,
        f"{title} is {say_length(mm, units)}. {words.sentence.format(**said)}",
        words.severity,
        numbers=(Number(curve.name, mm), Number("least", low), Number("greatest", high)),
        cure=f"Measure again: {title.lower()}.",
    )
