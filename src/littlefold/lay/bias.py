"""Bias binding: the square it is cut from.

A strip of some length and width has their product as area, and so has the square that it is cut from: side =
sqrt(length x width).  Sources: a quilting question page and a sheet of formulas for continuous bias (docs/lay.md).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, sqrt
from typing import TYPE_CHECKING

from littlefold.lay.spoken import notion

if TYPE_CHECKING:
    from littlefold.lay.spoken import Units

CENTIMETRE = 10.0

# A side this much over a whole step [mm] still counts as that step.
ROUNDING = 1e-6


@dataclass(frozen=True, slots=True)
class BiasSquare:
    """The square for a bias strip: its exact side, the side to cut, and the strip that this gives [mm]."""

    exact: float
    side: float
    strip_length: float
    strip_width: float

    def steps(self, units: Units = "cm") -> tuple[str, ...]:
        """How to cut it as one strip, in sentences."""
        side, width = notion(self.side, units), notion(self.strip_width, units)
        return (
            f"Cut a square of {side} along the grain and cut it once from corner to corner.",
            "Join two straight edges of the triangles, right sides together, to a slanted shape; press the seam open.",
            f"Draw lines {width} apart, parallel to the slanted edges.",
            "Join the other straight edges to a tube, moved by one line, and cut along the line round and round.",
        )


def bias_square(length: float, width: float, step: float = CENTIMETRE) -> BiasSquare:
    """The square for a strip [mm], its side rounded up to whole steps."""
    exact = sqrt(length * width)
    side = ceil((exact - ROUNDING) / step) * step
    return BiasSquare(exact, side, strip_from_square(side, width), width)


def strip_from_square(side: float, width: float) -> float:
    """The length of strip that a square gives [mm]."""
    return side * side / width
