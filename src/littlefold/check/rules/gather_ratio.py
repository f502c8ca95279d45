"""Gathers are neither a pucker nor a bulk."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, times
from littlefold.check.seams import run_words, seam_place
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.problem import Problem

CODE = "gather-ratio"
LEAST, MOST = 1.2, 3.0


@rule(
    code=CODE,
    title="A gathered edge is 1.2 to 3 times as long as the edge it is drawn up to",
    why="Less looks like a mistake, more does not fit under the presser foot; shorter cannot be gathered "
    "at all.",
    source="1 1/4 to 1 1/2 times for a ruffle (Baldt, Clothing for Women); 1.5 to 3 times (Stitch Coach "
    "2017/01); the lower limit of 1.2 is common practice, no source",
)
def gather_ratio(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Gathered seams outside the usual fullness."""
    for seam in pattern.seams:
        if seam.gather and seam.first_length > 0:
            ratio = seam.second_length / seam.first_length
            if not LEAST <= ratio <= MOST:
                yield _problem(seam, ratio)


def _problem(seam: Seam, ratio: float) -> Problem:
    wanted = LEAST if ratio < LEAST else MOST
    return found(
        CODE,
        say(
            "{second} is {second_length} long and is gathered to {first_length} of {first}: {ratio} "
            "times; {least} to {most} times is usual.",
            second=run_words(seam.second),
            second_length=cm(seam.second_length),
            first_length=cm(seam.first_length),
            first=run_words(seam.first),
            ratio=times(ratio),
            least=LEAST,
            most=MOST,
        ),
        say("Make it {right} long.", right=cm(wanted * seam.first_length)),
        place=seam_place(seam),
        numbers=(
            mm("first", seam.first_length),
            mm("second", seam.second_length),
            Number("ratio", ratio, "ratio"),
        ),
        severity=Severity.ERROR if ratio < 1 else Severity.WARNING,
    )
