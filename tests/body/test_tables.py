"""The committed tables are what the committed scripts derive; the survey's file is the survey."""

from __future__ import annotations

import importlib
import statistics
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest

from littlefold.body.proportions import proportions
from littlefold.body.relations import relations
from tests.body.survey import REFERENCE, SURVEY, survey_children

if TYPE_CHECKING:
    from types import ModuleType

TOOLS = Path(__file__).parents[2] / "tools"


def tool(name: str, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    monkeypatch.syspath_prepend(str(TOOLS))
    return importlib.import_module(name)


def test_the_body_tables_are_derived_from_the_survey(monkeypatch: pytest.MonkeyPatch) -> None:
    if not SURVEY.exists():
        pytest.skip(f"the 1977 survey is not here: {SURVEY}")
    derive = tool("derive_body_tables", monkeypatch)
    tables = derive.derive(derive.read_survey(SURVEY))
    curves = proportions()
    assert set(tables.curves) == set(curves)
    for name, (power, median, spread) in tables.curves.items():
        assert curves[name].powers == pytest.approx(tuple(power), abs=0.011)
        assert curves[name].medians == pytest.approx(tuple(median), abs=0.11)
        assert curves[name].spreads == pytest.approx(tuple(spread), abs=0.00011)
    assert tables.names == relations().names
    for derived, shipped in zip(tables.covariances, relations().covariances, strict=True):
        assert np.abs(derived - shipped).max() < 0.0011


def test_the_cdc_table_is_derived_from_the_charts(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    charts = REFERENCE / "data/cdc2000_lms.csv"
    if not charts.exists():
        pytest.skip(f"the CDC charts are not here: {charts}")
    derive = tool("derive_cdc_table", monkeypatch)
    monkeypatch.setattr(derive, "OUT", tmp_path / "cdc.csv")
    derive.main(charts)
    shipped = files("littlefold.body").joinpath("tables/cdc_stature.csv").read_text("utf-8")
    assert (tmp_path / "cdc.csv").read_text() == shipped


def test_relations_are_those_of_a_real_population() -> None:
    for covariance in relations().covariances:
        assert np.allclose(covariance, covariance.T)
        assert np.linalg.eigvalsh(covariance).min() > 0.02
        assert np.all((np.diag(covariance) > 0.8) & (np.diag(covariance) < 1.35))


# standards.md section 7, item 8: NIST's published means and SDs for ages 2.0 to 3.5 years [cm].
@pytest.mark.parametrize(
    ("name", "mean", "spread"), [("head", 49.5, 1.7), ("calf", 20.6, 1.5), ("foot", 14.7, 1.1)]
)
def test_the_survey_is_the_survey(name: str, mean: float, spread: float) -> None:
    young = [
        card.mm(name) / 10
        for card in survey_children()
        if card.age_months is not None and 24.0 <= card.age_months < 42.0 and name in card
    ]
    assert len(young) > 200
    assert statistics.mean(young) == pytest.approx(mean, abs=0.06)
    assert statistics.stdev(young) == pytest.approx(spread, abs=0.06)


def test_the_survey_has_its_children() -> None:
    # standards.md 2.1: 3,900 rows, of six of them no stature; item 13: 1,186 children have all of the first set.
    cards = survey_children()
    assert len(cards) == 3894
    first_set = (
        "head",
        "neck",
        "chest",
        "waist",
        "hip",
        "thigh",
        "calf",
        "ankle",
        "upper_arm",
        "wrist",
        "foot",
    )
    assert 1186 <= sum(all(name in card for name in first_set) for card in cards) <= 1320
