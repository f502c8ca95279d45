"""Thread from the length of seams, by ISO 4915 stitch class.

The rule is a ratio of thread to seam.  Ratios: 301 from two textile engineering pages, 401 from a measured seam
(apparelscience.com); all others from memory of the trade and marked so.  The pages print formulas too, which ask for
the thickness of the seam; nobody at a table knows it, so they only stand beside the ratios, in the tests.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Iterable

WASTE = 0.15
"""What is lost at the ends of seams and in threading; 10-15 % is usual (apparelscience.com)."""

_MEMORY = "from memory of the trade"


@dataclass(frozen=True, slots=True)
class StitchClass:
    """A stitch of ISO 4915: its name, thread for one length of seam, and where that is from."""

    number: str
    name: str
    ratio: float
    origin: str


_STITCHES = (
    StitchClass("101", "single thread chain", 4.0, _MEMORY),
    StitchClass("301", "lockstitch", 2.5, "textile engineering pages"),
    StitchClass("304", "zigzag", 7.0, _MEMORY),
    StitchClass("401", "two-thread chain", 5.4, "measured, apparelscience.com"),
    StitchClass("406", "cover stitch", 18.0, _MEMORY),
    StitchClass("503", "two-thread overedge", 12.0, _MEMORY),
    StitchClass("504", "three-thread overedge", 14.0, _MEMORY),
    StitchClass("512", "mock safety", 18.0, _MEMORY),
    StitchClass("516", "safety stitch", 20.0, _MEMORY),
    StitchClass("602", "four-thread cover", 25.0, _MEMORY),
    StitchClass("605", "five-thread cover", 28.0, _MEMORY),
)

STITCHES: dict[str, StitchClass] = {stitch.number: stitch for stitch in _STITCHES}


@dataclass(frozen=True, slots=True)
class SewnLength:
    """So much seam [mm] sewn in one class."""

    stitch: str
    length: float


def thread_length(sewn: Iterable[SewnLength], waste: float = WASTE) -> float | Problem:
    """The thread for some seams [mm], with waste."""
    total = 0.0
    for seam in sewn:
        stitch = STITCHES.get(seam.stitch)
        if stitch is None:
            return no_such_stitch(seam.stitch)
        total += seam.length * stitch.ratio
    return total * (1 + waste)


def no_such_stitch(number: str) -> Problem:
    """That a class is none that we know, with those that are."""
    known = ", ".join(f"{one.number} {one.name}" for one in STITCHES.values())
    return Problem(
        "stitch-unknown",
        f'There is no stitch class "{number}". Write that of the seams and that of their cut edges, 301+504, or that of the '
        f"seams alone. Known: {known}.",
    )
