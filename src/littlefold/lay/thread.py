"""Thread from the length of seams, by ISO 4915 stitch class.

Two rules: a ratio of thread to seam, and a formula for an inch of seam from stitches per inch, thickness and width.
Formulas: two textile engineering pages that mostly agree.  Ratios: 301 from the same pages, 401 from a
measured seam (apparelscience.com); all others from memory of the trade and marked so.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Iterable

WASTE = 0.15
"""What is lost at the ends of seams and in threading; 10-15 % is usual (apparelscience.com)."""

_MEMORY = "from memory of the trade"

Formula = Callable[[float, float, float], float]
"""Inches of thread for an inch of seam, from stitches per inch, thickness [in] and seam width [in]."""


@dataclass(frozen=True, slots=True)
class StitchClass:
    """A stitch of ISO 4915: its name, thread for one length of seam, and where that is from."""

    number: str
    name: str
    ratio: float
    origin: str
    formula: Formula | None = None


_STITCHES = (
    StitchClass("101", "single thread chain", 4.0, _MEMORY, lambda s, t, _: 3 + 2 * t * s),
    StitchClass("301", "lockstitch", 2.5, "textile engineering pages", lambda s, t, _: 2 + 2 * t * s),
    StitchClass("304", "zigzag", 7.0, _MEMORY),
    StitchClass(
        "401", "two-thread chain", 5.4, "measured, apparelscience.com", lambda s, t, _: 4 + 2 * t * s
    ),
    StitchClass("406", "cover stitch", 18.0, _MEMORY, lambda s, t, w: 7 + 2 * s * (t + w)),
    StitchClass("503", "two-thread overedge", 12.0, _MEMORY),
    StitchClass("504", "three-thread overedge", 14.0, _MEMORY, lambda s, t, w: 5 + 4 * s * (w + t)),
    StitchClass("512", "mock safety", 18.0, _MEMORY),
    StitchClass("516", "safety stitch", 20.0, _MEMORY, lambda s, t, w: 9 + 2 * s * (2 * w + 3 * t)),
    StitchClass("602", "four-thread cover", 25.0, _MEMORY, lambda s, t, w: 8 + s * (5 * w + 4 * t)),
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
            known = ", ".join(STITCHES)
            return Problem("stitch-unknown", f'There is no stitch class "{seam.stitch}". Known: {known}.')
        total += seam.length * stitch.ratio
    return total * (1 + waste)


def thread_per_inch(stitch: str, stitches: float, thickness: float, width: float = 0.0) -> float | Problem:
    """Inches of thread in an inch of seam, by the formula of its class; thickness and seam width in inches."""
    known = STITCHES.get(stitch)
    if known is None or known.formula is None:
        return Problem("stitch-without-formula", f'There is no formula for stitch class "{stitch}".')
    return known.formula(stitches, thickness, width)
