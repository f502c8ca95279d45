"""Commands for people: help that teaches, findings in words, one layout."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from pypdf import PdfReader
from typer.testing import CliRunner

from littlefold.cli.main import app
from littlefold.recipe.shelf import shipped_names, shipped_text

if TYPE_CHECKING:
    from pathlib import Path

COMMANDS = ("recipes", "check", "format", "draft")


@pytest.mark.parametrize("command", COMMANDS)
def test_help_says_what_it_does_and_shows_an_example(say, command):
    said = say(command, "--help")
    assert said.status == 0
    assert f"littlefold {command}" in said.out
    assert "Example" in said.out


def test_each_example_of_the_help_stands_on_a_line_of_its_own(say):
    lines = say("draft", "--help").out.splitlines()
    start = lines.index("  Examples:") + 1
    examples = lines[start : lines.index("", start)]
    assert len(examples) == 3
    assert all(line.startswith("    littlefold draft ") for line in examples)


def test_help_of_draft_explains_every_option(say):
    said = say("draft", "--help").out
    for option in (
        "--measure",
        "--child",
        "--size",
        "--choose",
        "--tape",
        "--units",
        "--paper",
        "--out",
        "--data",
    ):
        line = next(line for line in said.splitlines() if line.strip().startswith(option))
        assert len(line.split()) > 3


def test_recipes_lists_what_is_on_the_shelf(say):
    said = say("recipes")
    assert said.status == 0
    for name in shipped_names():
        assert name in said.out


@pytest.mark.parametrize(
    "words", [("draft",), ("draft", "bib", "--sise", "104"), ("check",), ("recipes", "x")]
)
def test_unknown_options_and_missing_words_are_exit_2(say, words):
    said = say(*words)
    assert said.status == 2
    assert said.out == ""
    assert "Usage" in said.err


@pytest.mark.parametrize("name", shipped_names())
def test_shipped_recipes_are_in_the_one_layout(say, name):
    said = say("format", name)
    assert said.status == 0
    assert said.out == shipped_text(name)


@pytest.mark.parametrize("name", shipped_names())
def test_shipped_recipes_check_without_an_error(say, name):
    said = say("check", name)
    assert said.status == 0
    assert "0 errors" in said.out


def test_check_finds_what_is_wrong(say, tmp_path):
    file = tmp_path / "odd.recipe"
    file.write_text(
        (shipped_text("bodice") or "").replace("at slope clockwise", "at slope anticlokwise"), "utf-8"
    )
    said = say("check", file)
    assert said.status == 1
    assert "error" in said.out


def test_format_writes_only_when_told(say, tmp_path):
    file = tmp_path / "mine.recipe"
    untidy = "recipe   mine\ntitle  'x'\n".replace("'", '"') + "drawing a\npoint   A at the   fold\n"
    file.write_text(untidy, "utf-8")
    said = say("format", file)
    assert said.status == 0
    assert file.read_text("utf-8") == untidy
    assert say("format", file, "--write").status == 0
    assert file.read_text("utf-8") == said.out
    assert say("format", file, "--write").status == 0
    assert file.read_text("utf-8") == said.out


def test_shipped_recipes_are_not_overwritten(say):
    said = say("format", "bib", "--write")
    assert said.status == 2
    assert "not overwritten" in said.err


def test_a_name_of_a_recipe_cannot_leave_the_folder(say, tmp_path):
    file = tmp_path / "evil.recipe"
    text = (shipped_text("bib") or "").replace("recipe bib", "recipe evil-thing")
    file.write_text(text.replace('"Bib"', '"../../../../tmp/x #eval(1)"'), "utf-8")
    said = say("draft", file, "--size", "86", "--out", tmp_path / "out")
    assert said.status == 0
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert names
    assert all(name.startswith("evil-") for name in names)


def test_the_printer_check_says_which_setting_to_change() -> None:
    """97 mm for 100 is what comes out when a Letter page is fitted to A4: 210 / 215.9 = 0.973."""
    runner = CliRunner()
    said = runner.invoke(app, ["printer", "97mm", "97mm"])
    assert said.exit_code == 1
    assert "97.0" in said.output
    assert runner.invoke(app, ["printer", "10cm", "100 mm"]).exit_code == 0
    assert runner.invoke(app, ["printer", "100", "99.9"]).exit_code == 0
    assert runner.invoke(app, ["printer", "wide", "10cm"]).exit_code == 2


def test_margin_and_overlap_are_the_makers(tmp_path: Path) -> None:
    """A wider margin leaves less room, so no fewer pages; a margin that is no length is refused in words."""
    runner = CliRunner()
    for name, margin in (("narrow", "5mm"), ("wide", "30mm")):
        done = runner.invoke(app, ["draft", "bib", "--margin", margin, "--out", str(tmp_path / name)])
        assert done.exit_code == 0
    pages = [len(PdfReader(tmp_path / name / "bib-pages.pdf").pages) for name in ("narrow", "wide")]
    assert pages[0] <= pages[1]
    assert runner.invoke(app, ["draft", "bib", "--margin", "wide", "--data"]).exit_code == 2
