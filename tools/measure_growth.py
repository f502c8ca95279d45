"""How near the forecast comes to published medians: CDC's statures, and the girths of the 1977 survey by age.

    .venv/bin/python tools/measure_growth.py ../shared/reference/data/snyder1977_garment_mm.csv

Under two years the range is measured against WHO's two-month increments of 882 children.  Beyond, no open source that was
found follows the same children over the years, so the ranges cannot be measured; what is measured is whether the middle
child stays in the middle.  The tables go into docs/measurements.md.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from derive_body_tables import read_survey
from held_out import replace_section

from littlefold.body.by_age import cdc_stature_at
from littlefold.body.growth import Forecast, forecast
from littlefold.body.measurements import Measurements
from littlefold.body.stature import stature_at

if TYPE_CHECKING:
    from numpy.typing import NDArray

DOCUMENT = Path(__file__).parents[1] / "docs/measurements.md"
STEPS = ((24, 36), (36, 48), (48, 60), (60, 72), (72, 96), (96, 120), (120, 144))
GIRTHS = ("chest", "waist", "hip", "upper_arm", "thigh", "foot")
HALF_YEAR = 6.0
WIDE = 1.6449  # standard deviations to either side of a range of 90 of 100

# WHO 2009, Growth velocity based on weight, length and head circumference: increments of length over two months, median M
# [cm] and coefficient of variation S, girl and boy, by the age at their beginning [months]; as the package
# pygrowthstandards 0.1.3 (MIT) holds them.
INCREMENTS = {
    3: ((4.288, 0.2109), (4.494, 0.2093)), 6: ((3.000, 0.2760), (2.966, 0.2848)), 9: ((2.628, 0.2975), (2.579, 0.3139)),
    12: ((2.362, 0.3283), (2.298, 0.3491)), 18: ((1.982, 0.4036), (1.897, 0.4266)), 22: ((1.775, 0.4503), (1.713, 0.4813)),
}  # fmt: skip


def forecast_of(card: Measurements, age: float) -> Forecast:
    """The forecast, which these cards all have."""
    found = forecast(card, age)
    if not isinstance(found, Forecast):
        raise TypeError(found.message)
    return found


def increments() -> list[str]:
    """The middle child of WHO, two months on: gain and standard deviation, WHO's beside them."""
    lines = ["| from | girl: gain, spread, WHO | boy: gain, spread, WHO |", "|---|---|---|"]
    for age, published in INCREMENTS.items():
        cells = []
        for sex, (median, variation) in zip(("girl", "boy"), published, strict=True):
            card = Measurements.of({"stature": stature_at(age, sex).median}, age_months=age, sex=sex)
            found = forecast_of(card, age + 2.0)
            gain, most = (
                mm - card.mm("stature") for mm in (found.body.mm("stature"), found.range("stature")[1])
            )
            who = f"{median * 10:.1f}, {median * variation * 10:.1f}"
            cells.append(f"{gain:.1f}, {(most - gain) / WIDE:.1f}, **{who}**")
        lines.append(f"| {age} months | {cells[0]} | {cells[1]} |")
    return lines


def statures() -> list[str]:
    """Girls and boys in CDC's middle, followed by their place on WHO's curves."""
    lines = ["| from | to | girl: forecast, range, CDC | boy: forecast, range, CDC |", "|---|---|---|---|"]
    for age, later in STEPS:
        cells = []
        for sex in ("girl", "boy"):
            card = Measurements.of({"stature": cdc_stature_at(age, sex).median}, age_months=age, sex=sex)
            found, true = forecast_of(card, later), cdc_stature_at(later, sex).median
            low, high = found.range("stature")
            cells.append(f"{found.body.mm('stature'):.0f}, {low:.0f} to {high:.0f}, **{true:.0f}**")
        lines.append(f"| {age / 12:.0f} y | {later / 12:.0f} y | {cells[0]} | {cells[1]} |")
    return lines


def median_at(survey: dict[str, NDArray[np.float64]], name: str, age: float) -> float:
    """The survey's median within half a year of the age."""
    near = np.abs(survey["age"] - age) < HALF_YEAR
    return float(np.nanmedian(survey[name][near]))


def girths(survey: dict[str, NDArray[np.float64]]) -> list[str]:
    """The survey's middle child of an age, forecast, beside the survey's middle child of the later age."""
    lines = ["| from | to | " + " | ".join(GIRTHS) + " |", "|---|---|" + "---|" * len(GIRTHS)]
    for age, later in STEPS[1:]:
        names = ("stature", *GIRTHS)
        card = Measurements.of({name: median_at(survey, name, age) for name in names}, age_months=age)
        found = forecast_of(card, later)
        cells = [f"{found.body.mm(name):.0f} ({median_at(survey, name, later):.0f})" for name in GIRTHS]
        lines.append(f"| {age / 12:.0f} y | {later / 12:.0f} y | " + " | ".join(cells) + " |")
    return lines


if __name__ == "__main__":
    section = [
        "Length [mm] of a child in the middle of WHO's curves, two months ahead: what it gains, and the standard deviation of",
        "that; in bold WHO's increments (WHO 2009, 882 children measured every other month).",
        "",
        *increments(),
        "",
        "Height [mm] of a child in the middle of the CDC 2000 charts, forecast along WHO's curves; the range holds 90 of",
        "100 such children by our own judgement of how heights keep their place, and the CDC median of the later age",
        "stands in bold.",
        "",
        *statures(),
        "",
        "Girths [mm] of the middle child of the 1977 survey, forecast; in brackets the survey's median at the later age.",
        "",
        *girths(read_survey(Path(sys.argv[1]))),
    ]
    replace_section(DOCUMENT, "Growth ahead", section)
