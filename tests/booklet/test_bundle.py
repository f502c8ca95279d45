"""Every sheet of every shipped recipe can be made, at both ends of its sizes."""

from __future__ import annotations

from datetime import date

import pytest

from littlefold.body.measurements import Measurements
from littlefold.booklet.bundle import bundle
from littlefold.check import Circumstances
from littlefold.draft.sentence import Speech
from littlefold.draft.suits import stature_range
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.recipe.shelf import shipped_names
from littlefold.sheet.paper import Paper, read_paper

NAMES = [
    "pattern.svg",
    "quarter.svg",
    "pages.pdf",
    "one-sheet.pdf",
    "printer-check.pdf",
    "instructions.pdf",
    "drawings.pdf",
    "steps.pdf",
]


@pytest.mark.parametrize("share", [0.0, 1.0])
@pytest.mark.parametrize("name", shipped_names())
def test_every_sheet_is_made(name: str, share: float) -> None:
    recipe = on_the_shelf(name)
    paper = read_paper("a4")
    assert recipe is not None
    assert isinstance(paper, Paper)
    low, high = stature_range(recipe)
    body = Measurements.of({"stature": low + (high - low) * share})
    outcome = fulfil(Wish(recipe, body, Circumstances()))
    sheets = list(bundle(outcome.pattern, outcome.problems, Speech(), paper, date(2026, 3, 1)))
    assert [sheet.name for sheet in sheets] == NAMES
    for sheet in sheets:
        content = sheet.make()
        assert content.startswith(b"<svg" if sheet.name.endswith("svg") else b"%PDF-"), sheet.name
        assert len(content) > 1000
