"""A corner of a cutting line: how it goes from the allowance of one edge to that of the next."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.geometry import Path
    from littlefold.pattern.margin import Margin


class Rule(StrEnum):
    """How a corner is cut."""

    PLAIN = "plain"
    """Neither edge has an allowance, or both cutting lines end in the same point."""
    TO_FOLD = "to fold"
    """The allowance runs straight on to the line of the fold."""
    MITRED = "mitred"
    """Both cutting lines are carried on until they meet."""
    SQUARED = "squared"
    """The allowance of one seam ends square to it, where the mitre would be a long spike."""
    BLUNT = "blunt"
    """A very sharp corner is cut across."""
    STEPPED = "stepped"
    """One straight run changes its width."""
    MIRRORED = "mirrored"
    """Beyond a fold that is turned, the cutting line of the neighbour is reflected in it."""


@dataclass(frozen=True, slots=True)
class Corner:
    """The way from the cutting line of one margin to that of another, both setting out from the corner.

    Attributes:
        rule: How it is cut.
        first: The place on the first cutting line at which it is left [mm]; negative beyond its end.
        second: The place on the second cutting line at which that is joined.
        between: Lines from the one to the other, in order; empty where they meet.
        short: Whether the neighbour is shorter than the depth of the hem that is turned over it.
    """

    rule: Rule
    first: float
    second: float
    between: tuple[Path, ...] = ()
    short: bool = False

    def swapped(self) -> Corner:
        """The same corner seen from the second margin."""
        between = tuple(path.reversed() for path in reversed(self.between))
        return Corner(self.rule, self.second, self.first, between, self.short)


def reach(first: Margin, second: Margin) -> float:
    """How far beyond its edge a cutting line may be carried to make a corner [mm]."""
    return 8 * max(first.width, second.width)
