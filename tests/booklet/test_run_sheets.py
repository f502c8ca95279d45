"""The sheets of a size run."""

from __future__ import annotations

import csv
import io
from datetime import date

import pytest
from pypdf import PdfReader

from littlefold.booklet.run_sheets import moves_sheet, moves_table, run_cautions, run_sheets
from littlefold.check import Circumstances
from littlefold.draft.sentence import Speech
from littlefold.grading import SizeRun, grade, moves
from littlefold.pipeline import on_the_shelf
from littlefold.problem import Problem
from littlefold.sheet.paper import Paper, read_paper

DAY = date(2026, 3, 1)


@pytest.fixture(scope="module")
def run() -> SizeRun:
    recipe = on_the_shelf("bodice")
    assert recipe is not None
    return grade(recipe, (92, 98, 104), shelf=on_the_shelf)


def paper() -> Paper:
    found = read_paper("a4")
    assert not isinstance(found, Problem)
    return found


def words(pdf: bytes) -> str:
    return " ".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)


def test_the_table_holds_every_move(run: SizeRun) -> None:
    heading, *rows = csv.reader(io.StringIO(moves_table(run)))
    assert heading == ["point", "92 to 98 x mm", "92 to 98 y mm", "98 to 104 x mm", "98 to 104 y mm"]
    assert [row[0] for row in rows] == [move.point for move in moves(run)]
    for row, move in zip(rows, moves(run), strict=True):
        numbers = [number for step in move.steps for number in (step.x, step.y)]
        assert [float(cell) for cell in row[1:]] == pytest.approx(numbers, abs=0.0051)


@pytest.mark.parametrize("units", ["cm", "in"])
def test_the_printed_table_names_points_and_sizes(run: SizeRun, units: str) -> None:
    said = words(moves_sheet(run, Speech(units), paper(), DAY))  # type: ignore[arg-type]
    assert "92\N{EN DASH}98" in said
    assert "98\N{EN DASH}104" in said
    assert "back" in said
    assert ("in mm" in said) == (units == "cm")


def test_every_sheet_can_be_made_and_carries_its_sizes(run: SizeRun) -> None:
    made = {sheet.name: sheet.make() for sheet in run_sheets(run, Circumstances(), Speech(), paper(), DAY)}
    assert set(made) == {
        "all-sizes.svg",
        "all-sizes-pages.pdf",
        "all-sizes-one-sheet.pdf",
        "moves.pdf",
        "moves.csv",
    }
    for name in ("all-sizes-pages.pdf", "all-sizes-one-sheet.pdf"):
        assert "sizes 92 to 104" in words(made[name])
    for kind in ("size-1", "size-2", "size-3"):
        assert f'class="line {kind}"' in made["all-sizes.svg"].decode()


def test_stacked_sizes_carry_the_cautions_of_each_size() -> None:
    """EN 14682: no cord at the neck of young children; a press stud or cord lock matters under three years only."""
    recipe = on_the_shelf("casing-top")
    assert recipe is not None
    top = grade(recipe, (86, 98, 128), {"closing": "cord"}, shelf=on_the_shelf)
    said = run_cautions(top, Circumstances(), Speech())
    assert said[-1].startswith("These sheets are a maker's help")
    assert any("cord" in caution for caution in said)
    made = {sheet.name: sheet.make() for sheet in run_sheets(top, Circumstances(), Speech(), paper(), DAY)}
    for name in ("all-sizes-pages.pdf", "all-sizes-one-sheet.pdf"):
        printed = squeezed(words(made[name]))
        for caution in said:
            assert squeezed(caution)[:60] in printed, (name, caution)


def squeezed(text: str) -> str:
    """Without white space, which a page breaks where it likes."""
    return "".join(text.split())
