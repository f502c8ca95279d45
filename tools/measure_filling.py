"""How well missing measurements are estimated, over the children of the 1977 survey, beside a look-up by stature.

    .venv/bin/python tools/measure_filling.py ../shared/reference/data/snyder1977_garment_mm.csv

Every child is estimated by a model of the other four fifths.  The tables go into docs/measurements.md.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from held_out import NAMES, Child, children, replace_section

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements

DOCUMENT = Path(__file__).parents[1] / "docs/measurements.md"
WIDE = 1.6449  # spreads that hold 90 of 100
CARDS = {
    "stature": ("stature",),
    "stature, chest": ("stature", "chest"),
    "stature, chest, waist, hip": ("stature", "chest", "waist", "hip"),
    "all others": NAMES,
}


@dataclass(frozen=True)
class Error:
    """One estimate against the tape [mm]: its error, the error of the look-up, and its stated spread."""

    own: float
    by_stature: float
    spread: float


def errors(everyone: list[Child], name: str, given: tuple[str, ...]) -> list[Error]:
    """For every child that has this reading: hidden, and estimated from those of the given that it has."""
    found = []
    for child in everyone:
        if name not in child.card:
            continue
        hidden = child.card.without(name, *(other for other in child.card if other not in given))
        guess = complete(hidden, child.model)[0].get(name)
        true, stature = child.card.mm(name), child.card.mm("stature")
        if guess is None:
            raise ValueError(f"{name} was not filled in")
        found.append(Error(guess.mm - true, child.model.curves[name].median(stature) - true, guess.spread_mm))
    return found


def measure(path: Path) -> list[str]:
    """The section of the document, line by line."""
    everyone = list(children(path))
    head = " | ".join(f"given {title}" for title in CARDS)
    lines = [
        "Mean error [mm] of a measurement that was hidden, by what else stood on the card; age and sex were known. In",
        "brackets, of 100 tape readings how many lie within the stated spread that should hold 90.",
        "",
        f"| hidden | n | median of the stature | {head} |",
        "|---|---|---|" + "---|" * len(CARDS),
    ]
    for name in NAMES[1:]:
        print(name, flush=True)
        columns = [errors(everyone, name, given) for given in CARDS.values()]
        plain = np.mean([abs(each.by_stature) for each in columns[0]])
        cells = " | ".join(map(_cell, columns))
        lines.append(f"| {name} | {len(columns[0])} | {plain:.1f} | {cells} |")
    return [*lines, "", _stature_line(everyone)]


def _cell(column: list[Error]) -> str:
    inside = 100 * np.mean([abs(each.own) <= WIDE * each.spread for each in column])
    return f"{np.mean([abs(each.own) for each in column]):.1f} ({inside:.0f})"


def _stature_line(everyone: list[Child]) -> str:
    """The error of a stature that was not measured, of children under 14."""
    young = [child for child in everyone if child.card.age_months < 168]
    by_age, by_all = [], []
    for child in young:
        bare = Measurements((), child.card.age_months, child.card.sex)
        true = child.card.mm("stature")
        by_age.append(abs(complete(bare, child.model)[0].mm("stature") - true))
        by_all.append(abs(complete(child.card.without("stature"), child.model)[0].mm("stature") - true))
    return (
        f"Height itself, of {len(young)} children under 14 years: from age and sex (WHO) {np.mean(by_age):.0f} mm; from "
        f"age, sex and all readings {np.mean(by_all):.0f} mm."
    )


if __name__ == "__main__":
    replace_section(DOCUMENT, "Missing measurements filled in", measure(Path(sys.argv[1])))
