"""6. Rounded as the tape is: what the pencil is given, not the amounts in between."""

from __future__ import annotations

import pytest

from littlefold.body.tape import TapeMark, read_mark
from littlefold.draft.sentence import Speech, sentence
from tests.language.drafting import FRAME, amount, draft_of

TEXT = FRAME.replace("drawing s", "measure chest\namount q = chest / 7\ndrawing s") + "point P below A by q\n"
# A chest of 53.5 cm: a seventh is 76.43 mm.  The mark, the distance rounded to it [mm], and how it is said.
MARKS = {
    "1/8in": (76.2, "in", "3 in"),
    "1/16in": (76.2, "in", "3 in"),
    "0.5cm": (75.0, "cm", "7.5 cm"),
    "1mm": (76.0, "cm", "7.6 cm"),
    "exact": (535 / 7, "cm", "7.64 cm"),
}


@pytest.mark.parametrize("name", MARKS)
def test_the_drawn_and_the_spoken_distance_are_the_same(name: str) -> None:
    mark = read_mark(name)
    assert isinstance(mark, TapeMark)
    drawn_mm, units, words = MARKS[name]
    drawn = draft_of(TEXT, tape=mark, chest=53.5)
    assert drawn.points["s.P"].at.y == pytest.approx(-drawn_mm)
    speech = Speech("in" if units == "in" else "cm", mark)
    assert sentence(drawn.steps[-1], speech) == f"From A measure {words} straight down and mark P."
    assert amount(drawn, "q") == pytest.approx(53.5 / 7)  # amounts in between are never rounded


def test_without_a_mark_nothing_is_rounded() -> None:
    drawn = draft_of(TEXT, chest=53.5)
    assert drawn.points["s.P"].at.y == pytest.approx(-535 / 7)
    assert drawn.tape is None
