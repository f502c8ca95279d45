"""What a cloth loses in the wash, and the two ways to meet it, of which only one may be taken.

The pieces are cut larger by 1 / (1 - s), or the cloth is washed before it is cut.  Doing both makes the garment
too big.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from littlefold.problem import Number, Problem, Severity

# Above this a cloth is refused by industry as it comes (a consultant's blog on shrinkage, see docs/lay.md).
MUCH = 0.03

# More than this is a slip of the ruler, not a cloth.
BEYOND_BELIEF = 0.3


class Treatment(StrEnum):
    """What is done about the wash."""

    WASH = "wash"
    """The cloth is washed before it is cut."""
    ENLARGE = "enlarge"
    """The pieces are cut larger, and the cloth is not washed first."""


@dataclass(frozen=True, slots=True)
class Shrinkage:
    """The share of length that the wash takes, along and across the cloth, and how that is known."""

    along: float
    across: float
    origin: str

    def cut_length(self, finished: float) -> float:
        """What to cut along the cloth so that a length [mm] is left: finished / (1 - s)."""
        return finished / (1 - self.along)

    def cut_width(self, finished: float) -> float:
        """What to cut across the cloth so that a width [mm] is left."""
        return finished / (1 - self.across)


NONE = Shrinkage(0.0, 0.0, "taken as none")

_MEMORY = "cautious default from memory of the trade, upper end of the usual range; wash a test square"

BY_FIBRE: dict[str, Shrinkage] = {
    "woven cotton": Shrinkage(0.03, 0.03, _MEMORY),
    "flannel": Shrinkage(0.05, 0.05, _MEMORY),
    "denim": Shrinkage(0.05, 0.05, _MEMORY),
    "cotton knit": Shrinkage(0.08, 0.08, _MEMORY),
}
"""Cautious values where no test square was washed.

Usual ranges, from memory: woven cotton 2-3 %, flannel and denim 3-5 %, cotton knit 5-8 %.
"""


def from_test_square(before: tuple[float, float], after: tuple[float, float]) -> Shrinkage | Problem:
    """The shrinkage of a square measured (along, across) [mm] before and after a wash hotter than usual.

    A square of 20 cm is usual (designandmake.net, glossary).
    """
    if min(*before, *after) <= 0:
        return _refused("A test square needs four lengths above zero.", before, after)
    along, across = (1 - washed / new for new, washed in zip(before, after, strict=True))
    if max(along, across) > BEYOND_BELIEF:
        return _refused(
            "The test square lost more than 30 %. Measure it again, dry and ironed.", before, after
        )
    if min(along, across) < -BEYOND_BELIEF:
        return _refused("The test square grew by more than 30 %. Measure it again.", before, after)
    size = f"{before[0] / 10:g} x {before[1] / 10:g} cm"
    return Shrinkage(along, across, f"measured on a washed square of {size}")


def advice(shrinkage: Shrinkage, treatment: Treatment) -> tuple[Problem, ...]:
    """What to tell the maker about the wash; nothing where nothing shrinks."""
    worst = max(shrinkage.along, shrinkage.across)
    if worst <= 0:
        return ()
    parts = f"{shrinkage.along:.1%} along and {shrinkage.across:.1%} across ({shrinkage.origin})"
    if treatment is Treatment.ENLARGE:
        words = f"The pieces are enlarged for {parts}. Do not wash the cloth before cutting."
    else:
        words = f"The cloth shrinks by {parts}. Wash, dry and iron it before cutting; the pieces are not enlarged."
    severity = Severity.WARNING if worst > MUCH else Severity.NOTE
    numbers = (Number("along", shrinkage.along, "ratio"), Number("across", shrinkage.across, "ratio"))
    return (Problem("cloth-shrinks", words, severity, numbers=numbers),)


def _refused(words: str, before: tuple[float, float], after: tuple[float, float]) -> Problem:
    names = ("along before", "across before", "along after", "across after")
    numbers = tuple(Number(name, value) for name, value in zip(names, (*before, *after), strict=True))
    return Problem("test-square-unbelievable", words, numbers=numbers)
