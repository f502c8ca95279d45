"""Measurements that nobody took are named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.register import REGISTER
from littlefold.body.tape import ONE_MM, round_to_mark
from littlefold.check.register import rule
from littlefold.check.report import estimate, found, mm, own_words, together
from littlefold.problem import Saying, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "measurements-estimated"


@rule(
    code=CODE,
    title="Measurements that were not taken on this child are named",
    why="A pattern is as good as its measurements; an estimate is the first thing to measure when it "
    "does not fit.",
    source="not measured: they turned out huge (Groovy Bears World 2009/04)",
)
def measurements_estimated(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """A note with the measurements used that are estimates or come from a size chart, to the millimetre of a tape."""
    body = pattern.draft.measurements
    readings = [(name, body.get(name)) for name in pattern.draft.used]
    guessed = [(name, r) for name, r in readings if r is not None and str(r.origin) != "given"]
    if guessed:
        listed = together(
            [
                say(
                    "{name} {length} ({origin})",
                    name=_title(name),
                    length=estimate(r.mm),
                    origin=say(r.origin.value),
                )
                for name, r in guessed
            ]
        )
        yield found(
            CODE,
            _counted(len(guessed), len(readings), listed),
            say("Measure them before cutting good cloth."),
            numbers=tuple(mm(name, round_to_mark(r.mm, ONE_MM)) for name, r in guessed),
            severity=Severity.NOTE,
        )


def _counted(guessed: int, used: int, listed: Saying) -> Saying:
    """How many of the measurements that are used nobody took."""
    if used == 1:
        return say("The one measurement that is used was not taken on this child: {listed}.", listed=listed)
    if guessed == 1:
        return say("1 of {all} measurements was not taken on this child: {listed}.", all=used, listed=listed)
    return say(
        "{count} of {all} measurements were not taken on this child: {listed}.",
        count=guessed,
        all=used,
        listed=listed,
    )


def _title(name: str) -> Saying:
    """What a measurement is called: a word of ours where it is of the register, the recipe's own where not."""
    words = name.replace("_", " ")
    return say(words) if name in REGISTER else own_words(words)
