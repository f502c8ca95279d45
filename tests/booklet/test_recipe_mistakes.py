"""The mistakes a recipe's text most often has are told in the language of the sheets."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.booklet.spoken import spoken
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech
from littlefold.recipe.parse import parse

HEAD = "recipe top\nmeasure chest\ndrawing body\npoint A at the fold\n"
MISTAKES = {
    "point B below K by 2 cm": "top, Zeile 5, Spalte 15: Punkt „K“ gibt es noch nicht. Bisher: A.",
    "point B below A by chst": "Betrag, Maß oder Wahl „chst“ gibt es noch nicht. Bisher: chest. Ist „chest“ gemeint?",
    "amount a = chest + 1": "was? Schreiben: 1 cm oder 1 in.",
    "point A below A by 2 cm": "„A“ hat schon eine Bedeutung. Einen anderen Namen wählen.",
    "opening neck = round of edge": "kein Teil hat bisher eine Kante „edge“. Kanten bisher: keine.",
    "grain along A-A": "das gehört zu einem Teil. Mit einer Zeile beginnen: piece NAME cut 1.",
}


@pytest.mark.parametrize("line", MISTAKES)
def test_it_is_told_in_german(line: str) -> None:
    draft = evaluate(parse(HEAD + line, "top"), Measurements.of({"chest": 560.0}), {})
    assert MISTAKES[line] in spoken(draft.problems, Speech(language="de"))[0].message
