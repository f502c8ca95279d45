"""Measurements that nobody took are named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm
from littlefold.problem import Severity

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
    """A note with the measurements used that are estimates or come from a size chart."""
    body = pattern.draft.measurements
    readings = [(name, body.get(name)) for name in pattern.draft.used]
    guessed = [(name, r) for name, r in readings if r is not None and str(r.origin) != "given"]
    if guessed:
        listed = ", ".join(f"{name.replace('_', ' ')} {cm(r.mm)} ({r.origin})" for name, r in guessed)
        yield found(
            CODE,
            f"{len(guessed)} of {len(readings)} measurements were not taken on this child: {listed}.",
            "Measure them before cutting good cloth.",
            numbers=tuple(mm(name, r.mm) for name, r in guessed),
            severity=Severity.NOTE,
        )
