"""Where data was asked for, a document with `problems` comes, also when nothing else can."""

from __future__ import annotations

import json

import pytest


@pytest.fixture(autouse=True)
def room(tmp_path, monkeypatch):
    monkeypatch.setenv("LITTLEFOLD_DATA", str(tmp_path / "data"))
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("sizes", "92..1000"), "size-unknown"),
        (("measurements", "chset"), "measurement-unknown"),
        (("child", "show", "Nobody"), "child-not-known"),
        (("child", "forecast", "Nobody"), "child-not-known"),
        (("child", "forecast", "Nobody", "--of", "wings"), "measurement-unknown"),
        (("child", "forecast", "Nobody", "--out", "mina.txt"), "option-not-understood"),
    ],
)
def test_a_refusal_is_a_document(say, words, code):
    said = say(*words, "--data")
    assert said.status == 2
    (problem,) = said.data["problems"]
    assert problem["code"] == code
    assert len(problem["message"]) > 15


def test_a_box_that_cannot_be_opened_is_a_document(say, tmp_path):
    (tmp_path / "data").mkdir()
    (tmp_path / "data" / "cards.sqlite").write_text("no database, but a poem")
    said = say("child", "list", "--data")
    assert said.status == 2
    assert said.data["problems"][0]["code"] == "card-box-not-opened"


def notes(said):
    return [one["message"] for one in said.data["problems"] if one["code"] == "sex-not-asked"]


def test_curves_that_nothing_asks_for_are_told(say, tmp_path):
    (note,) = notes(say("draft", "bib", "--size", "86", "--girl", "--data"))
    assert "--girl changes nothing" in note
    assert "--age" in note
    (tmp_path / "mina.json").write_text(json.dumps({"measurements": {"stature": "86 cm"}}))
    (note,) = notes(say("draft", "bib", "--child", "mina.json", "--boy", "--data"))
    assert "--boy changes nothing" in note
    assert notes(say("draft", "bib", "--age", "18m", "--girl", "--data")) == []
    assert notes(say("draft", "bib", "--measure", "stature=86cm", "--girl", "--data")) == []


def test_where_nothing_is_told_of_them_the_curves_change_something(say):
    """The last case above: what is not measured is estimated otherwise for a girl than for a boy."""
    girl, boy = (
        say("draft", "bodice", "--measure", "stature=104cm", sex, "--data").data["measurements"]
        for sex in ("--girl", "--boy")
    )
    assert girl != boy
