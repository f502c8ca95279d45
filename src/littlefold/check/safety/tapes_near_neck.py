"""Tapes on bibs and bonnets can strangle."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.cords import cords
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import EN_CORDS
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "tapes-near-neck"
_WITH_CAUTION: Final = frozenset({"bib", "hat", "nappy", "nappy_cover", "apron"})


@rule(
    code=CODE,
    title="Tapes and ties on bibs, hats and nappy covers come with a caution",
    why="These are outside the cord rules, but a tape round the neck strangles just as well.",
    source="EN 14682 leaves bibs, nappies and hats out (scope page, iteh); the caution is common "
    "practice, no source",
    safety=True,
)
def tapes_near_neck(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Any cord or tape on a bib, a hat, an apron or a nappy cover."""
    if pattern.draft.garment not in _WITH_CAUTION:
        return
    for cord in cords(pattern):
        yield found(
            CODE,
            say(
                "The {cord} of {length} on a {garment} is outside {rule}, but can strangle; {nothing} of "
                "tape is safest.",
                cord=say(cord.name),
                length=cm(cord.length),
                garment=say(pattern.draft.garment.replace("_", " ")),
                rule=EN_CORDS,
                nothing=cm(0),
            ),
            say(
                "Close it with a press stud that gives way. With tapes: never in the cot, the pram or out of "
                "sight, and take it off after the meal. {law}",
                law=NOT_LEGAL_ADVICE,
            ),
            place=cord.at,
            numbers=(mm("tape", cord.length), mm("safest", 0.0)),
            rule=f"{EN_CORDS} (excluded)",
            severity=Severity.WARNING,
        )
