"""The real children of the 1977 survey, for tests and bench only; the product never reads them.

R. G. Snyder et al., UM-HSRI-77-17, 1977, for the US Consumer Product Safety Commission.
"""

from __future__ import annotations

import csv
import os
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from littlefold.body.measurements import Measurements

if TYPE_CHECKING:
    from collections.abc import Iterator

COLUMNS = {
    "stature": ("stature",),
    "head": ("head_girth",),
    "neck": ("neck_girth",),
    "chest": ("chest_girth",),
    "waist": ("waist_girth",),
    "hip": ("hip_girth",),
    "upper_arm": ("upper_arm_girth",),
    "arm": ("acromion_radiale", "radiale_stylion"),
    "wrist": ("wrist_girth",),
    "fist": ("fist_girth",),
    "thigh": ("upper_thigh_girth",),
    "calf": ("calf_girth",),
    "ankle": ("ankle_girth",),
    "foot": ("foot_length",),
    "inside_leg": ("gluteal_furrow_height",),
}

REFERENCE = Path(os.environ.get("LITTLEFOLD_REFERENCE", Path(__file__).parents[3] / "shared/reference"))
SURVEY = REFERENCE / "data/snyder1977_garment_mm.csv"


@lru_cache(maxsize=1)
def survey_children(path: Path = SURVEY) -> tuple[Measurements, ...]:
    """Every child of the survey whose stature is known; skips the test aloud where the file is absent."""
    if not path.exists():
        pytest.skip(f"the 1977 survey is not here: {path}")
    return tuple(read_survey(path))


def read_survey(path: Path = SURVEY) -> Iterator[Measurements]:
    """The same without pytest, for bench."""
    with path.open(encoding="utf-8") as lines:
        for row in csv.DictReader(lines):
            if row["stature"]:
                yield _child(row)


def _child(row: dict[str, str]) -> Measurements:
    lengths = {
        name: sum(float(row[part]) for part in parts)
        for name, parts in COLUMNS.items()
        if all(row[part] for part in parts)
    }
    return Measurements.of(
        lengths,
        age_months=float(row["age_y"]) * 12 if row["age_y"] else None,
        sex="girl" if row["sex"] == "F" else "boy",
        nickname=row["id"],
    )
