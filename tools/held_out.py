"""Children of the 1977 survey with models that have not seen them: five parts, each judged by the other four."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[1] / "src"))

import numpy as np
from body_covariance import NODES
from body_curves import STATURES
from body_sources import AUXILIARY, SURVEYED
from derive_body_tables import Tables, derive, read_survey
from straight_lines import StraightLines

from littlefold.body.measurements import Measurements
from littlefold.body.model import BodyModel
from littlefold.body.proportions import Proportion
from littlefold.body.relations import Relations

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

PARTS = 5
SEED = 1977
NAMES = tuple(name for name in SURVEYED if name not in AUXILIARY)
FEWEST = 2  # readings on a card that can be judged


@dataclass(frozen=True)
class Child:
    """One child, and what was fitted to the other four fifths: the model, and the plain regressions beside it."""

    card: Measurements
    model: BodyModel
    lines: StraightLines


def model_of(tables: Tables) -> BodyModel:
    """The product's model from derived tables."""
    statures = tuple(STATURES.tolist())
    curves = {
        name: Proportion(name, statures, *(tuple(curve.tolist()) for curve in each))
        for name, each in tables.curves.items()
    }
    return BodyModel(curves, Relations(tables.names, NODES, tables.covariances))


def children(path: Path) -> Iterator[Child]:
    """Every child with at least two readings, in the survey's order."""
    survey = read_survey(path)
    part = np.random.default_rng(SEED).integers(0, PARTS, len(survey["stature"]))
    others = [_only(survey, part != number) for number in range(PARTS)]
    models = [model_of(derive(each)) for each in others]
    lines = [StraightLines(each) for each in others]
    for row, number in enumerate(part.tolist()):
        card = _card(survey, row)
        if len(card.readings) >= FEWEST:
            yield Child(card, models[number], lines[number])


def _only(survey: dict[str, NDArray[np.float64]], rows: NDArray[np.bool_]) -> dict[str, NDArray[np.float64]]:
    return {name: column[rows] for name, column in survey.items()}


def _card(survey: dict[str, NDArray[np.float64]], row: int) -> Measurements:
    lengths = {name: float(survey[name][row]) for name in NAMES if np.isfinite(survey[name][row])}
    return Measurements.of(
        lengths, age_months=float(survey["age"][row]), sex="girl" if survey["sex"][row] > 0 else "boy"
    )


def replace_section(document: Path, title: str, lines: list[str]) -> None:
    """Put the lines under the heading `## title`, in place of what stood there, or at the end."""
    text = (
        document.read_text()
        if document.exists()
        else "# Measurements: what was measured of our own judgement\n"
    )
    section = "\n".join([f"## {title}", "", *lines, ""])
    before, _, rest = text.partition(f"## {title}\n")
    after = rest.partition("\n## ")
    document.write_text(before.rstrip() + "\n\n" + section + ("\n## " + after[2] if after[2] else ""))
