"""Every sheet of every shipped recipe can be made, at both ends of its sizes."""

from __future__ import annotations

from datetime import date
from io import BytesIO

import pytest
from pypdf import PdfReader

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


@pytest.mark.parametrize(
    ("asked", "units", "copied", "read"),
    [
        ("a0", "cm", {841.0, 1189.0}, (210.0, 297.0)),
        ("roll 914mm", "in", {914.0}, (215.9, 279.4)),
        ("a3", "cm", {420.0, 594.0}, (297.0, 420.0)),  # A3 is read at the table; a copy shop's A2 holds a bib
    ],
)
def test_a_copy_shops_paper_takes_the_pattern_and_not_the_words(asked, units, copied, read):
    outcome = fulfil(Wish(on_the_shelf("bib"), Measurements.of({}), Circumstances()))
    sheets = bundle(
        outcome.pattern, outcome.problems, Speech(units=units), read_paper(asked), date(2026, 3, 1)
    )
    sizes = {sheet.name: _size(sheet.make()) for sheet in sheets if sheet.name.endswith(".pdf")}
    assert copied <= set(sizes["one-sheet.pdf"])
    assert all(sizes[f"{name}.pdf"] == read for name in ("instructions", "drawings", "steps"))


def _size(content):
    box = PdfReader(BytesIO(content)).pages[0].mediabox
    return tuple(round(float(side) * 25.4 / 72, 1) for side in (box.width, box.height))
