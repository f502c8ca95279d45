"""Edges that are sewn together are equally long, after ease."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm
from littlefold.check.seams import run_words, seam_place
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.problem import Problem

CODE = "seam-lengths-differ"


@rule(
    code=CODE,
    title="Edges that are sewn together are equally long, after ease",
    why="The longer edge puckers or is cut off, and every seam that crosses it is then wrong as well.",
    source="trueing rule 4: one author allows 1/16 in, many 1/8 in (Threads Magazine 2020/08, 10 "
    "patternwork skills)",
)
def seam_lengths_differ(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Seams whose second run is not longer than the first by the ease that was meant."""
    for seam in pattern.seams:
        off = seam.second_length - seam.first_length - seam.ease
        if not seam.gather and abs(off) > seam.tolerance:
            yield _problem(seam, off)


def _problem(seam: Seam, off: float) -> Problem:
    first, second = run_words(seam.first), run_words(seam.second)
    ease = say(" with {ease} of ease meant", ease=cm(seam.ease)) if seam.ease else ""
    return found(
        CODE,
        say(
            "{first} is {first_length} long and {second} {second_length}{ease}: they differ by {off}, "
            "and {tolerance} is allowed.",
            first=first,
            first_length=cm(seam.first_length),
            second=second,
            second_length=cm(seam.second_length),
            ease=ease,
            off=cm(abs(off)),
            tolerance=cm(seam.tolerance),
        ),
        say(
            "Make {longer} shorter by {off}, or say that the difference is ease or gathers.",
            longer=second if off > 0 else first,
            off=cm(abs(off)),
        ),
        place=seam_place(seam),
        numbers=(
            mm("first", seam.first_length),
            mm("second", seam.second_length),
            mm("ease", seam.ease),
            mm("tolerance", seam.tolerance),
        ),
    )
