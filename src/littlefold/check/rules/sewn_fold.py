"""A fold or a hem is not sewn to another edge."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm
from littlefold.check.seams import run_words, seam_place
from littlefold.draft.model import EdgeKind
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge, EdgeRef
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.problem import Problem

CODE = "sewn-fold"
_WEIGHT: Final[Mapping[EdgeKind, Severity]] = {
    EdgeKind.FOLD: Severity.ERROR,
    EdgeKind.HEM: Severity.WARNING,
}


@rule(
    code=CODE,
    title="No fold and no hem is sewn into a seam",
    why="At a fold the cloth goes on, and a hem is turned up: neither has an edge that a seam could take.",
    source=COMMON_PRACTICE,
)
def sewn_fold(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Edges of kind fold (error) or hem (warning) that stand in a seam."""
    for seam in pattern.seams:
        for ref in (*seam.first, *seam.second):
            edge = pattern.piece(ref.piece).edge(ref.edge)
            if edge.kind in _WEIGHT:
                yield _problem(seam, ref, edge)


def _problem(seam: Seam, ref: EdgeRef, edge: DraftEdge) -> Problem:
    return found(
        CODE,
        say(
            "{piece}.{edge} is a {kind} with {allowance} of allowance, but it stands in the seam of "
            "{first} ({first_length}) to {second} ({second_length}).",
            piece=ref.piece,
            edge=ref.edge,
            kind=say(edge.kind.value),
            allowance=cm(edge.allowance),
            first=run_words(seam.first),
            first_length=cm(seam.first_length),
            second=run_words(seam.second),
            second_length=cm(seam.second_length),
        ),
        say("Sew another edge, or call this one a seam."),
        place=seam_place(seam),
        numbers=(mm("first", seam.first_length), mm("second", seam.second_length)),
        severity=_WEIGHT[edge.kind],
    )
