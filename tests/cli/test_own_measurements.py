"""A recipe's own measurement on the command line: kept on the card with its words, drawn with, taken out and in."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from littlefold.cli.main import app

RECIPE = """recipe apron
title "Apron"
suits stature 80 cm to 140 cm
source common practice

measure chest
own measure bib_height "{how}"

drawing body
  point A at the fold
  point B below A by bib_height
  point C right of A by chest / 4
"""
HOW = "From the hollow of the neck down to the waist tape"


@pytest.fixture(autouse=True)
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("LITTLEFOLD_DATA", str(tmp_path / "data"))
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)
    monkeypatch.setenv("COLUMNS", "160")
    monkeypatch.chdir(tmp_path)
    Path("apron.recipe").write_text(RECIPE.format(how=HOW))
    Path("other.recipe").write_text(
        RECIPE.replace("recipe apron", "recipe other").format(how="Quite otherwise")
    )
    say("child", "add", "Mina", "--born", "2022-08-14", "--girl")
    return tmp_path


def say(*words: str, ends: int = 0) -> str:
    done = CliRunner().invoke(app, list(words))
    assert done.exit_code == ends, (done.output, done.exception)
    return done.output


def measured_for(recipe: str, bib: str = "bib_height=21.5cm") -> None:
    say("child", "measure", "Mina", "stature=104cm", "chest=56cm", bib, "--for", recipe)


def drawn(recipe: str) -> dict:
    done = CliRunner().invoke(app, ["draft", recipe, "--child", "Mina", "--data"])
    return json.loads(done.stdout)


def test_it_is_kept_with_its_words_and_drawn_with() -> None:
    measured_for("apron.recipe")
    shown = say("child", "show", "Mina")
    assert "21.5 cm" in shown
    assert f"bib_height, for apron: {HOW}" in shown
    document = drawn("apron.recipe")
    assert document["measurements"]["bib_height"] == {"mm": 215.0, "origin": "given"}
    assert document["points"]["body.B"] == [0.0, -215.0]


def test_it_does_not_stand_for_what_another_recipe_calls_alike() -> None:
    measured_for("apron.recipe")
    document = drawn("other.recipe")
    told = [problem["message"] for problem in document["problems"] if problem["severity"] == "error"]
    assert any("bib_height is needed" in message and "Quite otherwise" in message for message in told)


@pytest.mark.parametrize("file", ["cards.json", "readings.csv"])
def test_it_goes_out_and_comes_in_again(file: str) -> None:
    measured_for("apron.recipe")
    before = json.loads(say("child", "show", "Mina", "--data"))["measured"]
    assert before[0]["own"] == [{"name": "bib_height", "recipe": "apron", "how": HOW}]
    say("child", "export", file)
    say("child", "erase", "Mina", "--yes")
    say("child", "import", file)
    assert json.loads(say("child", "show", "Mina", "--data"))["measured"] == before
    assert drawn("apron.recipe")["points"]["body.B"] == [0.0, -215.0]


def test_it_is_read_again_without_its_recipe_and_refused_where_nobody_knows_it() -> None:
    refused = say("child", "measure", "Mina", "bib_height=21.5cm", ends=2)
    assert "--for RECIPE" in " ".join(refused.split())
    measured_for("apron.recipe")
    say("child", "measure", "Mina", "bib_height=22cm")
    (_, again) = json.loads(say("child", "show", "Mina", "--data"))["measured"]
    assert again["readings"]["bib_height"] == 220.0
    assert again["own"][0]["how"] == HOW


def test_a_recipe_that_is_not_there_and_a_length_that_is_none_are_refused() -> None:
    assert "no recipe" in say("child", "measure", "Mina", "bib_height=21cm", "--for", "nothing", ends=2)
    assert "bib_height" in say("child", "measure", "Mina", "bib_height=long", "--for", "apron.recipe", ends=2)


def test_it_can_be_said_beside_a_draft_and_in_a_childs_file() -> None:
    told = CliRunner().invoke(
        app, ["draft", "apron.recipe", "--size", "104", "--measure", "bib_height=20cm", "--data"]
    )
    assert json.loads(told.stdout)["points"]["body.B"] == [0.0, -200.0]
    Path("mina.json").write_text('{"measurements": {"chest": "56 cm", "bib_height": "19 cm"}}')
    told = CliRunner().invoke(app, ["draft", "apron.recipe", "--child", "mina.json", "--data"])
    assert json.loads(told.stdout)["points"]["body.B"] == [0.0, -190.0]


def test_it_stands_on_the_printed_card() -> None:
    measured_for("apron.recipe")
    say("child", "forecast", "Mina", "--out", "mina.pdf")
    assert Path("mina.pdf").read_bytes().startswith(b"%PDF")
