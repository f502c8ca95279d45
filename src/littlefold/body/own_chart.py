"""A size chart of the maker's own, read from CSV, and what is odd about it.

    size, stature (cm), chest (cm), waist (cm)
    98,   98,           55,         53
    104,  104,          57,         54

The first column names the sizes, one of the others is the stature; a unit stands once in the heading, or behind every
number.  A chart that does not grow, grows in jumps, grows unlike children do, or lies outside of what children
measure, is reported, never changed.
"""

from __future__ import annotations

import csv
import io
import re
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from littlefold.body.child import unknown_measurement
from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.proportions import proportions
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.tape import ONE_MM, Unit, read_length, read_unit, say_length
from littlefold.body.unusual import UNSURVEYED
from littlefold.problem import Number, Place, Problem, Severity

_MOST_ROWS: Final = 100
_LEAST_PACE, _MOST_PACE = (
    0.5,
    1.6,
)  # of the survey's growth with stature; a printed chart uses 0.5 to 1.6 of it
_JUMP: Final = 2.5  # times the step that the middle pace of the column gives
_SMALLEST_STEP: Final = 0.1  # mm
_SMALL: Final = 3.0  # mm per size: steps that differ by less are the rounding of the chart
_P95: Final = 1.6449  # standard deviations

_HEADING: Final = re.compile(r"\s*(?P<name>[^()]*?)\s*(?:\((?P<unit>[^()]*)\))?\s*")


@dataclass(frozen=True, slots=True)
class OwnChart:
    """Sizes in rising order of stature; every body holds at least the stature."""

    labels: tuple[str, ...]
    bodies: tuple[Measurements, ...]

    def column(self, name: str) -> tuple[float, ...]:
        """One measurement of all sizes [mm]; empty where a size lacks it."""
        readings = [body.get(name) for body in self.bodies]
        found = tuple(reading.mm for reading in readings if reading is not None)
        return found if len(found) == len(readings) else ()


def read_own_chart(
    text: str, default_unit: Unit | None = None
) -> tuple[OwnChart | None, tuple[Problem, ...]]:
    """The chart in a CSV text, and everything in it that is not understood or odd.

    No chart comes back unless every cell is understood.

    Args:
        text: The CSV, with commas, semicolons or tabs.
        default_unit: Of numbers and headings without one.
    """
    rows = [
        row for row in csv.reader(io.StringIO(text), delimiter=_delimiter(text)) if any(map(str.strip, row))
    ]
    if len(rows) < 2 or len(rows) > _MOST_ROWS:  # noqa: PLR2004  # a heading and a size
        return None, (_problem("chart-empty", f"A chart has a heading and 1 to {_MOST_ROWS} sizes."),)
    columns, problems = _columns(rows[0], default_unit)
    if problems:
        return None, problems
    found = [_row(number, row, columns) for number, row in enumerate(rows[1:], start=2)]
    refused = tuple(problem for _, _, faults in found for problem in faults)
    if refused:
        return None, refused
    ordered = sorted(((label, body) for label, body, _ in found), key=lambda pair: pair[1].mm("stature"))
    chart = OwnChart(tuple(label for label, _ in ordered), tuple(body for _, body in ordered))
    return chart, odd_about(chart)


def odd_about(chart: OwnChart) -> tuple[Problem, ...]:
    """What a maker should know of the chart: warnings, in the order of the register."""
    names = [name for name in NAMES if chart.column(name)]
    return tuple(problem for name in names for problem in (*_unsteady(chart, name), *_outside(chart, name)))


def _delimiter(text: str) -> str:
    heading = text.lstrip().split("\n", 1)[0]
    return max(",;\t", key=heading.count)


def _columns(
    heading: list[str], default_unit: Unit | None
) -> tuple[list[tuple[str, Unit | None]], tuple[Problem, ...]]:
    columns: list[tuple[str, Unit | None]] = []
    problems: list[Problem] = []
    for cell in heading[1:]:
        found = _HEADING.fullmatch(cell)
        name = (found["name"] if found else cell).strip().lower().replace(" ", "_")
        written = found["unit"] if found else None
        unit = read_unit(written) if written else default_unit
        if name not in NAMES:
            problems.append(unknown_measurement(name))
        elif written and unit is None:
            text = f"“{cell.strip()}”: the unit is not known. Use mm, cm, m or in."
            problems.append(_problem("unit-unknown", text))
        else:
            columns.append((name, unit))
    names = [name for name, _ in columns]
    if "stature" not in names and not problems:
        problems.append(
            _problem("chart-without-stature", "The chart has no column “stature”. Sizes go by stature.")
        )
    problems += [
        _problem("chart-column-twice", f"The column “{name}” stands twice.")
        for name in dict.fromkeys(names)
        if names.count(name) > 1
    ]
    return columns, tuple(problems)


def _row(
    number: int, row: list[str], columns: list[tuple[str, Unit | None]]
) -> tuple[str, Measurements, list[Problem]]:
    if len(row) != len(columns) + 1:
        message = f"Line {number} has {len(row)} cells, the heading {len(columns) + 1}."
        return "", Measurements(), [_problem("chart-ragged", message, number)]
    readings, problems = [], []
    for (name, unit), cell in zip(columns, row[1:], strict=True):
        mm = read_length(cell, unit)
        if isinstance(mm, Problem):
            problems.append(_problem(mm.code, f"Line {number}, {name}: {mm.message}", number))
        elif mm <= 0:
            problems.append(_problem("measurement-zero", f"Line {number}: {name} is {cell.strip()}.", number))
        else:
            readings.append((name, Reading(mm, Origin.CHART)))
    return row[0].strip(), Measurements(tuple(readings), nickname=f"size {row[0].strip()}"), problems


def _unsteady(chart: OwnChart, name: str) -> list[Problem]:
    """Falls, jumps, and a pace unlike that of children."""
    steps = _steps(chart, name)
    if not steps:
        return []
    middle = sorted(step.pace for step in steps)[len(steps) // 2]
    problems = [problem for step in steps if (problem := _unsteady_step(step, name, middle)) is not None]
    return problems or _odd_pace(chart, name)


@dataclass(frozen=True, slots=True)
class _Step:
    """From one size to the next: what the chart grows by, and what children of these statures do [mm]."""

    sizes: str
    grown: float
    natural: float

    @property
    def pace(self) -> float:
        return self.grown / self.natural


def _steps(chart: OwnChart, name: str) -> list[_Step]:
    curve, statures = proportions().get(name), chart.column("stature")
    found = []
    for row, (label, following) in enumerate(pairwise(chart.labels)):
        low, high = statures[row : row + 2]
        natural = high - low if curve is None else curve.median(high) - curve.median(low)
        grown = chart.column(name)[row + 1] - chart.column(name)[row]
        found.append(_Step(f"from size {label} to {following}", grown, max(natural, _SMALLEST_STEP)))
    return found


def _unsteady_step(step: _Step, name: str, middle: float) -> Problem | None:
    title, usual = REGISTER[name].title, middle * step.natural
    if step.grown < 0:
        text = f"{title} falls by {say_length(-step.grown, 'cm', ONE_MM)} {step.sizes}."
        return _warning("chart-falls", text, (Number("step", step.grown),))
    if step.grown - usual > _SMALL and step.grown > _JUMP * usual:
        text = (
            f"{title} jumps by {say_length(step.grown, 'cm', ONE_MM)} {step.sizes}; "
            f"at the pace of the other sizes it would be {say_length(usual, 'cm', ONE_MM)}."
        )
        return _warning("chart-jumps", text, (Number("step", step.grown), Number("usual", usual)))
    return None


def _odd_pace(chart: OwnChart, name: str) -> list[Problem]:
    statures, values = chart.column("stature"), chart.column(name)
    curve = proportions().get(name)
    if curve is None or name in UNSURVEYED or statures[-1] <= statures[0]:
        return []
    natural = curve.median(statures[-1]) - curve.median(statures[0])
    grown = values[-1] - values[0]
    if _LEAST_PACE * natural - _SMALL <= grown <= _MOST_PACE * natural + _SMALL:
        return []
    text = (
        f"{REGISTER[name].title} grows by {say_length(grown)} from size {chart.labels[0]} to {chart.labels[-1]}; "
        f"children grow by about {say_length(round(natural))}."
    )
    return [_warning("chart-pace", text, (Number("chart", grown), Number("children", natural)))]


def _outside(chart: OwnChart, name: str) -> list[Problem]:
    """The sizes outside P5 to P95 of children of their stature, in one warning."""
    curve = proportions().get(name)
    if curve is None or name in UNSURVEYED or name == "stature":
        return []
    rows = zip(chart.labels, chart.column("stature"), chart.column(name), strict=True)
    bounded = [(label, mm, curve.value(tall, -_P95), curve.value(tall, _P95)) for label, tall, mm in rows]
    beyond = [row for row in bounded if not row[2] <= row[1] <= row[3]]
    if not beyond:
        return []
    label, mm, low, high = beyond[0]
    sizes = ", ".join(row[0] for row in beyond)
    text = (
        f"{REGISTER[name].title} lies outside of what 90 of 100 children have in size {sizes}: in {label} it is "
        f"{say_length(mm)}, the children {say_length(round(low))} to {say_length(round(high))}. Is ease in it?"
    )
    return [_warning("chart-outside", text, (Number(name, mm), Number("P5", low), Number("P95", high)))]


def _problem(code: str, message: str, line: int | None = None) -> Problem:
    return Problem(code, message, place=Place(line=line))


def _warning(code: str, message: str, numbers: tuple[Number, ...]) -> Problem:
    return Problem(code, message, Severity.WARNING, numbers=numbers)
