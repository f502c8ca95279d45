"""Every measurement as a curve over stature: its median, its spread, and how lopsided it is.

At a given stature a measurement has the value M (1 + L S z)^(1/L), where z is a standard normal number; L, M
and S stand in `tables/by_stature.csv`, derived from the 1977 survey by `tools/derive_body_tables.py`.  This
is the form in which WHO gives growth by age.  Beyond 3 the value goes on in a straight line, as WHO does for
weight.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Mapping

TALLEST_SCORE: Final = 3.0  # z beyond which a straight line goes on
_LOGARITHM: Final = 1e-3  # a power nearer to 0 is the logarithm


@dataclass(frozen=True, slots=True)
class Proportion:
    """One measurement against stature.

    Attributes:
        name: Its short name; also 'age' [months].
        statures: Where the others stand [mm].
        powers: L.
        medians: M [mm].
        spreads: S, about the coefficient of variation.
    """

    name: str
    statures: tuple[float, ...]
    powers: tuple[float, ...]
    medians: tuple[float, ...]
    spreads: tuple[float, ...]

    def median(self, stature: float) -> float:
        """The value that half of the children of this stature exceed [mm]; in proportion beyond the table."""
        inside = min(max(stature, self.statures[0]), self.statures[-1])
        return between(self.statures, self.medians, inside) * stature / inside

    def spread(self, stature: float) -> float:
        """S, about the coefficient of variation among children of this stature."""
        return between(self.statures, self.spreads, stature)

    def deviation(self, stature: float, value: float) -> float:
        """The logarithm of value over median, in units of the spread."""
        return math.log(value / self.median(stature)) / self.spread(stature)

    def deviated(self, stature: float, deviation: float) -> float:
        """The value at this deviation [mm]."""
        return self.median(stature) * math.exp(deviation * self.spread(stature))

    def value(self, stature: float, z: float) -> float:
        """The value at z standard deviations [mm]."""
        if abs(z) > TALLEST_SCORE:
            end = math.copysign(TALLEST_SCORE, z)
            last = self.value(stature, end)
            return last + (abs(z) - TALLEST_SCORE) * (last - self.value(stature, end - math.copysign(1.0, z)))
        power = between(self.statures, self.powers, stature)
        return self.median(stature) * _power_inverse(z * self.spread(stature), power)

    def score(self, stature: float, value: float) -> float:
        """How many standard deviations the value lies from the median, z."""
        power = between(self.statures, self.powers, stature)
        z = _power(value / self.median(stature), power) / self.spread(stature)
        if abs(z) <= TALLEST_SCORE:
            return z
        end = math.copysign(TALLEST_SCORE, z)
        last = self.value(stature, end)
        step = last - self.value(stature, end - math.copysign(1.0, z))
        return end + math.copysign((value - last) / step, z)


def _power(ratio: float, power: float) -> float:
    return (ratio**power - 1) / power if abs(power) > _LOGARITHM else math.log(ratio)


def _power_inverse(shift: float, power: float) -> float:
    return float((1 + power * shift) ** (1 / power)) if abs(power) > _LOGARITHM else math.exp(shift)


def between(xs: tuple[float, ...], ys: tuple[float, ...], x: float) -> float:
    """The value at x on the straight lines through the points; beyond their ends, the value at the end."""
    x = min(max(x, xs[0]), xs[-1])
    after = min(max(bisect_right(xs, x), 1), len(xs) - 1)
    share = (x - xs[after - 1]) / (xs[after] - xs[after - 1])
    return ys[after - 1] + share * (ys[after] - ys[after - 1])


@lru_cache(maxsize=1)
def proportions() -> Mapping[str, Proportion]:
    """All curves by short name, read once."""
    lines = files(__package__).joinpath("tables/by_stature.csv").read_text("utf-8").splitlines()
    head, *rows = [line.split(",") for line in lines if line and not line.startswith("#")]
    statures = tuple(float(cell) for cell in head[2:])
    numbers = {(row[0], row[1]): tuple(float(cell) for cell in row[2:]) for row in rows}
    return MappingProxyType(
        {
            name: Proportion(name, statures, *(numbers[name, each] for each in "LMS"))
            for name, quantity in numbers
            if quantity == "M"
        }
    )
