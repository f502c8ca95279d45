"""Edges that cross a seam run on smoothly."""

from __future__ import annotations

from math import pi, radians
from typing import TYPE_CHECKING

from littlefold.check.joins import Join, smooth_joins
from littlefold.check.register import rule
from littlefold.check.report import angle_words, found, on_piece, turn
from littlefold.check.seams import run_words
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "edges-bend-at-seam"
# Common practice, no source: under the first the eye sees one curve, over the second the sleeve or collar that is
# sewn to it is spoilt; an edge that ends free can still be trimmed.
SEEN, SPOILT = radians(4), radians(20)


@rule(
    code=CODE,
    title="Joined edges run on smoothly across a seam",
    why="Armhole and neck across the shoulder, hem and armhole across the side: a point makes the sleeve "
    "stand off, a hollow lifts it, and a hem shows a step.",
    source="trueing rule 2: Conover, A Complete Course in Dressmaking vol. 9, 1922; the angles are "
    "common practice, no source",
)
def edges_bend_at_seam(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Joins at which two edges make a point or a hollow; outlines that cross are left to another rule."""
    for join in smooth_joins(pattern):
        if SEEN < abs(join.bend) < pi:
            yield _problem(join)


def _problem(join: Join) -> Problem:
    first = f"{join.first.piece.name}.{join.first_edge.name}"
    second = f"{join.second.piece.name}.{join.second_edge.name}"
    seam = f"{run_words(join.seam.first)} to {run_words(join.seam.second)}"
    point = join.first.before.end or join.first.after.start
    return found(
        CODE,
        say(
            "When {seam} is sewn, {first} and {second} meet at {angle}, {shape}; a smooth line has 180 "
            "degrees, within {allowed}.",
            seam=seam,
            first=first,
            second=second,
            angle=angle_words(join.angle),
            shape=say("a point") if join.bend > 0 else say("a hollow"),
            allowed=angle_words(SEEN),
        ),
        say("Lay the two pieces together at the seam and draw one line across it."),
        place=on_piece(join.first.piece, join.first_edge.name, point),
        numbers=(turn("angle", join.angle), turn("smooth", join.angle + join.bend), turn("tolerance", SEEN)),
        severity=Severity.ERROR if abs(join.bend) > SPOILT and join.takes_piece else Severity.WARNING,
    )
