"""The built-in size chart: one body for every 6 cm of stature.

Children's sizes go by stature in steps of 6 cm (EN 13402, ISO 8559-2, as retail tables use them); a label
covers the stature from 3 cm below it to 3 cm above.  The numbers are the medians of `proportions`; where each
comes from says `source_of`.
"""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from littlefold.body.measurements import Measurements, Origin
from littlefold.body.proportions import proportions
from littlefold.body.register import NAMES
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Mapping

SMALLEST: Final = 56
LARGEST: Final = 152
STEP: Final = 6

SIZES: Final[tuple[int, ...]] = tuple(range(SMALLEST, LARGEST + 1, STEP))


@dataclass(frozen=True, slots=True)
class SizeSystem:
    """Labels by stature at equal steps [cm]; a label covers half a step to either side, not the upper end."""

    name: str
    smallest: int
    largest: int
    step: int

    def label(self, stature: float) -> int:
        """The size for a stature [mm]; the smallest or largest one beyond the ends."""
        steps = (stature / 10 - self.smallest + self.step / 2) // self.step
        return min(max(self.smallest + self.step * int(steps), self.smallest), self.largest)


SIX_CM: Final = SizeSystem("6 cm steps (EN 13402)", SMALLEST, LARGEST, STEP)
JIS: Final = SizeSystem("10 cm steps (JIS L 4001 to 4003)", 50, 150, 10)


# JIS L 4002 and 4003: a child of figure A has the girth of its size, the others have so much more or less [mm].
JIS_FIGURES: Final[Mapping[str, float]] = MappingProxyType({"Y": -60.0, "A": 0.0, "B": 60.0, "E": 120.0})


def jis_figure(girth: float, girth_of_a: float) -> str:
    """The JIS figure type nearest to a girth, given that of figure A at the same stature [mm]."""
    return min(JIS_FIGURES, key=lambda figure: abs(girth - girth_of_a - JIS_FIGURES[figure]))


def size_for(stature: float) -> int:
    """The size of the built-in chart for a stature [mm]: 104 from 1010 up to 1070."""
    return SIX_CM.label(stature)


@lru_cache(maxsize=len(SIZES))
def chart_row(size: int) -> Measurements:
    """The body of one size; every measurement of the register, marked as from the chart.

    Raises:
        KeyError: If it is no size of the chart; `read_size` refuses it in words.
    """
    if size not in SIZES:
        raise KeyError(size)
    stature = size * 10.0
    curves = proportions()
    lengths = {name: stature if name == "stature" else curves[name].median(stature) for name in NAMES}
    age = curves["age"].median(stature)
    return Measurements.of(lengths, origin=Origin.CHART, age_months=age, nickname=f"size {size}")


def source_of(name: str, size: int) -> str:
    """Where a number of the chart comes from, in words.

    Raises:
        KeyError: If the register does not hold the name, or the chart not the size.
    """
    found = [source for first, last, source in _sources()[name] if first <= size <= last]
    if size not in SIZES:
        raise KeyError(size)
    return "; joined to ".join(found)


@lru_cache(maxsize=1)
def _sources() -> Mapping[str, tuple[tuple[int, int, str], ...]]:
    lines = files(__package__).joinpath("tables/sources.csv").read_text("utf-8").splitlines()
    rows = [row for row in csv.reader(line for line in lines if not line.startswith("#")) if row]
    return {
        name: tuple((int(first), int(last), source) for each, first, last, source in rows if each == name)
        for name in NAMES
    }


def read_size(text: str) -> int | Problem:
    """The size a person named, such as `104`."""
    found = re.fullmatch(r"\s*(\d{2,3})\s*", text)
    if found and int(found[1]) in SIZES:
        return int(found[1])
    listed = ", ".join(str(size) for size in SIZES)
    return Problem("size-unknown", f"“{text}” is not a size of the chart. The sizes are {listed}.")


def read_sizes(text: str) -> tuple[int, ...] | Problem:
    """The sizes of a run, such as `92..116`, or `98` alone; other ways to write one are answered with ours."""
    other_way = re.fullmatch(r"\s*(\d{2,3})\s*(?:[^\w.]+|\.{3}|to)\s*(\d{2,3})\s*", text)
    if other_way:
        return Problem(
            "size-unknown", f"“{text}” is not a run of sizes. Write {other_way[1]}..{other_way[2]}."
        )
    ends = [read_size(part) for part in text.split("..", 1)]
    for end in ends:
        if isinstance(end, Problem):
            return end
    low, high = ends[0], ends[-1]
    if low > high:  # type: ignore[operator]  # both are sizes here
        return Problem("sizes-backwards", f"“{text}” runs backwards. Write {high}..{low}.")
    return tuple(size for size in SIZES if low <= size <= high)  # type: ignore[operator]
