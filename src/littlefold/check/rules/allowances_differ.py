"""The two sides of a seam have the same allowance."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm
from littlefold.check.seams import run_words, seam_place
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import EdgeRef
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.problem import Problem

CODE = "allowances-differ"
SAME: Final = 0.05  # mm: allowances are written in whole millimetres or sixteenths of an inch


@rule(
    code=CODE,
    title="The two sides of a seam have the same allowance",
    why="Seams are sewn with cut edges even; with unequal allowances one piece is sewn on the wrong line.",
    source="wrong allowance sewn, 10 mm drawn and 7 mm sewn: garment too big (DIY Wardrobe, sewing blunders)",
)
def allowances_differ(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Seams whose first and second run have different allowances."""
    for seam in pattern.seams:
        first, second = _widths(pattern, seam.first), _widths(pattern, seam.second)
        widest, narrowest = max(first | second), min(first | second)
        if widest - narrowest > SAME:
            yield _problem(seam, narrowest, widest)


def _widths(pattern: Pattern, run: tuple[EdgeRef, ...]) -> set[float]:
    return {pattern.piece(ref.piece).edge(ref.edge).allowance for ref in run}


def _problem(seam: Seam, narrowest: float, widest: float) -> Problem:
    return found(
        CODE,
        say(
            "In the seam of {first} to {second} the allowances are {narrowest} and {widest}.",
            first=run_words(seam.first),
            second=run_words(seam.second),
            narrowest=cm(narrowest),
            widest=cm(widest),
        ),
        say("Give both sides the same allowance, or mark the stitch line on both pieces and sew on it."),
        place=seam_place(seam),
        numbers=(mm("narrowest", narrowest), mm("widest", widest)),
        severity=Severity.WARNING,
    )
