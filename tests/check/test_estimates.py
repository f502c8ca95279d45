"""What the note on measurements that nobody took says: how many, and each to the millimetre of a tape."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Origin, Reading
from littlefold.booklet.spoken import spoken
from littlefold.check.circumstances import Circumstances
from littlefold.check.rules.measurements_estimated import measurements_estimated
from littlefold.draft.sentence import Speech
from tests.check.examples import body, top


def note(language: str, *guessed: str, used: tuple[str, ...]) -> str:
    measured = body()
    for name in used:
        origin = Origin.ESTIMATED if name in guessed else Origin.GIVEN
        measured = measured.with_reading(name, Reading(534.5, origin))
    (found,) = measurements_estimated(top(measurements=measured, used=used), Circumstances())
    assert [number.value for number in found.numbers] == [535] * len(guessed)
    (said,) = spoken((found,), Speech(language=language))
    return said.message


@pytest.mark.parametrize(
    ("guessed", "used", "english", "german"),
    [
        (("chest",), ("chest",), "The one measurement that is used was not", "Das eine Maß, das gebraucht wird, wurde"),
        (("chest",), ("chest", "neck"), "1 of 2 measurements was not", "1 von 2 Maßen wurde nicht"),
        (("chest", "neck"), ("chest", "neck"), "2 of 2 measurements were not", "2 von 2 Maßen wurden nicht"),
    ],
)  # fmt: skip
def test_one_was_not_taken_and_two_were_not(
    guessed: tuple[str, ...], used: tuple[str, ...], english: str, german: str
) -> None:
    assert note("en", *guessed, used=used).startswith(english)
    assert note("de", *guessed, used=used).startswith(german)


def test_an_estimate_is_said_to_the_millimetre() -> None:
    assert "53.5 cm" in note("en", "chest", used=("chest",))
    assert "53,5 cm" in note("de", "chest", used=("chest",))
