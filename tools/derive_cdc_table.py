"""Derive the small table of CDC statures from the CDC 2000 growth charts (US public domain).

    .venv/bin/python tools/derive_cdc_table.py ../shared/reference/data/cdc2000_lms.csv

writes src/littlefold/body/tables/cdc_stature.csv: L, M and S of length to 24 months and of stature from 24 months
to 14 years, at the ages in AGES; between them the curves are straight to less than 2 mm.  The charts give half
months (24.5 stands for the 24th month); the two beside each age are averaged.
"""

from __future__ import annotations

import csv
import sys
from pathlib import Path

import numpy as np

OUT = Path(__file__).parents[1] / "src/littlefold/body/tables/cdc_stature.csv"
LYING_AGES = (0, 1, 2, 3, 4, 6, 8, 10, 12, 15, 18, 21, 24)
STANDING_AGES = (24, 30, 36, 42, 48, 54, 60, *range(72, 169, 6))


def read(path: Path, measure: str, sex: str) -> np.ndarray:
    """Rows of age in months, L, M [cm] and S."""
    with path.open() as lines:
        rows = [row for row in csv.DictReader(lines) if row["measure"] == measure and row["sex"] == sex]
    return np.array([[float(row[key]) for key in ("age_months", "L", "M", "S")] for row in rows])


def main(path: Path) -> None:
    """Write the table."""
    lines = [
        "# Derived by tools/derive_cdc_table.py from the CDC 2000 growth charts (US public domain): length to 24",
        "# months, stature from there.  M in mm.",
        "sex,posture,age_months,L,M,S",
    ]
    for sex, letter in (("girl", "F"), ("boy", "M")):
        for posture, measure, ages in (
            ("lying", "length_cm", LYING_AGES),
            ("standing", "stature_cm", STANDING_AGES),
        ):
            table = read(path, measure, letter)
            for age in ages:
                power, median, spread = (np.interp(age, table[:, 0], table[:, k]) for k in (1, 2, 3))
                lines.append(f"{sex},{posture},{age},{power:.4f},{median * 10:.2f},{spread:.5f}")
    OUT.write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
