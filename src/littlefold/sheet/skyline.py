"""Packing boxes into a strip, each as far up and to the left as it goes: a skyline that grows downwards.

The method is the bottom-left skyline of the packing literature (J. Jylanki, A Thousand Ways to Pack the Bin,
2010, section 2.5, from memory), hung from the top because pages are read from there.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

# Boxes may overrun the strip by rounding [mm].
ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Ledge:
    """A level stretch of the skyline: where it starts, how wide it is, how deep the strip is filled there."""

    left: float
    width: float
    depth: float


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the upper left corner of a box goes: from the left, and down from the top [mm]."""

    left: float
    depth: float


def pack(sizes: Sequence[tuple[float, float]], width: float) -> tuple[Spot, ...] | None:
    """A spot for each box (width, height) in the order given; None if one is wider than the strip [mm]."""
    skyline: tuple[Ledge, ...] = (Ledge(0.0, width, 0.0),)
    spots: list[Spot] = []
    for across, down in sizes:
        fitting = [spot for k in range(len(skyline)) if (spot := _spot(skyline, k, across)) is not None]
        if not fitting:
            return None
        best = min(fitting, key=lambda spot: (spot.depth + down, spot.left))
        spots.append(best)
        skyline = _filled(skyline, best, across, down)
    return tuple(spots)


def _spot(skyline: tuple[Ledge, ...], first: int, across: float) -> Spot | None:
    """The spot with the left edge on a ledge: as deep as the deepest ledge below the box."""
    left, depth, covered = skyline[first].left, 0.0, 0.0
    for ledge in skyline[first:]:
        depth = max(depth, ledge.depth)
        covered += ledge.width
        if covered + ROUNDING >= across:
            return Spot(left, depth)
    return None


def _filled(skyline: tuple[Ledge, ...], spot: Spot, across: float, down: float) -> tuple[Ledge, ...]:
    """The skyline with a box hung at a spot."""
    end = spot.left + across
    new: list[Ledge] = []
    for ledge in skyline:
        ledge_end = ledge.left + ledge.width
        if ledge.left < spot.left:
            new.append(Ledge(ledge.left, min(ledge_end, spot.left) - ledge.left, ledge.depth))
        if ledge_end > end + ROUNDING:
            start = max(ledge.left, end)
            new.append(Ledge(start, ledge_end - start, ledge.depth))
    new.append(Ledge(spot.left, across, spot.depth + down))
    return tuple(sorted(new, key=lambda ledge: ledge.left))
