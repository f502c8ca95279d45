"""Long and curved seams have notches."""

from __future__ import annotations

from math import radians
from typing import TYPE_CHECKING, Final

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm
from littlefold.check.seams import run_words, seam_place
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import EdgeRef
    from littlefold.geometry import Path
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.problem import Problem

CODE = "notch-missing"
LONG: Final = 250.0  # mm: longer seams slip under the foot; common practice, no source
CURVED: Final = radians(30)  # the turn of an edge from end to end that makes it a curved one


@rule(
    code=CODE,
    title="Long, curved and gathered seams have notches on both sides",
    why="Without a notch a long or curved edge is stretched on to its partner, a sleeve is set in back "
    "to front, and gathers slip to one side.",
    source="sleeve front and back not told apart without notches (Mascultory, pattern specifications); "
    "gather limits marked (Text Book on Domestic Art); the lengths are common practice, no source",
)
def notch_missing(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Seams that need a notch and have none on one side."""
    for seam in pattern.seams:
        fewest = min(_notches(pattern, run) for run in (seam.first, seam.second))
        if fewest == 0 and _needs_notch(pattern, seam):
            yield _problem(seam)


def _needs_notch(pattern: Pattern, seam: Seam) -> bool:
    edges = [pattern.piece(ref.piece).edge(ref.edge) for ref in (*seam.first, *seam.second)]
    return seam.gather or seam.first_length > LONG or any(_is_curved(edge.path) for edge in edges)


def _is_curved(path: Path) -> bool:
    way_in, way_out = path.start_tangent, path.end_tangent
    return abs(way_out.turned(-way_in.angle).angle) > CURVED


def _notches(pattern: Pattern, run: tuple[EdgeRef, ...]) -> int:
    return sum(notch.edge == ref.edge for ref in run for notch in pattern.piece(ref.piece).notches)


def _problem(seam: Seam) -> Problem:
    return found(
        CODE,
        say(
            "The seam of {first} to {second} is {first_length} long and has 0 notches on one side or "
            "both; a seam that is curved, gathered or longer than {long} needs 1.",
            first=run_words(seam.first),
            second=run_words(seam.second),
            first_length=cm(seam.first_length),
            long=cm(LONG),
        ),
        say("Notch both edges, single in front and double at the back."),
        place=seam_place(seam),
        numbers=(mm("length", seam.first_length), mm("long", LONG), Number("notches", 0, "count")),
        severity=Severity.WARNING,
    )
