"""Lengths as people write them, and as a tape shows them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.body.tape import (
    EIGHTH,
    EXACT,
    HALF_CM,
    MARKS,
    ONE_MM,
    SIXTEENTH,
    TapeMark,
    read_length,
    read_mark,
    round_to_mark,
    say_length,
)
from littlefold.problem import Problem

# One inch is 25.4 mm by definition, so every expected value is exact.
WRITTEN = {
    "56 cm": 560.0,
    "56cm": 560.0,
    '22 1/4"': 565.15,
    "22¼ in": 565.15,
    "22 ¼ in": 565.15,
    "22-1/4 in": 565.15,
    "22 1\u20444 in": 565.15,
    "22.25in": 565.15,
    "22.25 inches": 565.15,
    "22⅛\u2033": 561.975,
    "560 mm": 560.0,
    "56,5 cm": 565.0,
    "0,125 in": 3.175,
    ".5 in": 12.7,
    "½ in": 12.7,
    "11/16 in": 17.4625,
    "10 15/16 in": 277.8125,
    "1.04 m": 1040.0,
    "२२ cm": 220.0,
    "0 cm": 0.0,
    "0": 0.0,
    "0.0": 0.0,
}


@pytest.mark.parametrize(("text", "mm"), WRITTEN.items())
def test_reads_what_people_write(text: str, mm: float) -> None:
    assert read_length(text) == pytest.approx(mm, abs=1e-9)


REFUSED = {
    "": "length-missing",
    "56": "unit-missing",
    "0 q": "unit-unknown",
    "22 1/4": "unit-missing",
    "1,234": "length-ambiguous",
    "1,234 mm": "length-ambiguous",
    "-3 cm": "length-negative",
    "\u22123 cm": "length-negative",
    "5 ft": "unit-unknown",
    "56 cm or so": "unit-unknown",
    "22 5/4 in": "length-not-understood",
    "221/4 in": "length-not-understood",
    "22.5 1/4 in": "length-not-understood",
    "3/0 in": "length-not-understood",
    "1e5 cm": "length-not-understood",
    "nan cm": "length-not-understood",
    "1.234,5 mm": "length-not-understood",
    "101 m": "length-too-long",
    "9" * 5000 + " cm": "length-not-understood",
}


@pytest.mark.parametrize(("text", "code"), REFUSED.items())
def test_refuses_in_words(text: str, code: str) -> None:
    found = read_length(text)
    assert isinstance(found, Problem)
    assert found.code == code
    assert len(found.message) < 300


def test_an_ambiguous_comma_shows_both_readings() -> None:
    found = read_length("1,234")
    assert isinstance(found, Problem)
    assert "1234" in found.message
    assert "1.234" in found.message


def test_a_bare_number_takes_the_unit_it_is_given() -> None:
    assert read_length("56", "cm") == 560.0
    assert read_length("22 1/4", "in") == pytest.approx(565.15)
    assert read_length("22 in", "cm") == pytest.approx(558.8)


@given(st.text(max_size=60))
@settings(max_examples=400)
def test_any_text_gives_a_length_or_a_problem(text: str) -> None:
    found = read_length(text, "cm")
    assert isinstance(found, Problem) or 0.0 <= found <= 100_000.0


# standards.md section 7, item 23: exact arithmetic.
@pytest.mark.parametrize(("cm", "said"), [(60.0, "23 5/8 in"), (53.3, "21 in"), (16.2, "6 3/8 in")])
@pytest.mark.parametrize("mark", [EIGHTH, SIXTEENTH])
def test_says_inches_to_the_mark(cm: float, said: str, mark: TapeMark) -> None:
    assert say_length(cm * 10, "in", mark) == said


def test_says_centimetres_with_no_more_decimals_than_needed() -> None:
    assert say_length(560.0) == "56 cm"
    assert say_length(565.0) == "56.5 cm"
    assert say_length(565.15) == "56.52 cm"
    assert say_length(565.15, "cm", HALF_CM) == "56.5 cm"
    assert say_length(-0.0) == "0 cm"
    assert say_length(-12.7, "in") == "-1/2 in"


@given(st.floats(0, 3000), st.sampled_from([mark for mark in MARKS.values() if mark.mm]))
def test_rounding_errs_by_at_most_half_a_mark_and_lands_on_one(mm: float, mark: TapeMark) -> None:
    rounded = round_to_mark(mm, mark)
    assert abs(rounded - mm) <= mark.mm / 2 + 1e-5
    assert rounded / mark.mm == pytest.approx(round(rounded / mark.mm), abs=1e-6)
    assert round_to_mark(rounded, mark) == pytest.approx(rounded)


@given(st.floats(0, 3000), st.sampled_from(["cm", "in"]))
def test_what_is_said_can_be_read_back(mm: float, units: str) -> None:
    mark = ONE_MM if units == "cm" else SIXTEENTH
    on_tape = round_to_mark(mm, mark)
    assert read_length(say_length(mm, units, mark)) == pytest.approx(on_tape, abs=1e-3)  # type: ignore[arg-type]


@given(st.integers(0, 100), st.integers(1, 15))
def test_every_sixteenth_is_read_exactly(whole: int, over: int) -> None:
    expected = float((whole + Fraction(over, 16)) * Fraction(254, 10))
    assert read_length(f"{whole} {over}/16 in") == pytest.approx(expected, abs=1e-9)


def test_marks_are_read_by_name_or_length() -> None:
    assert read_mark("1/8in") == EIGHTH
    assert read_mark("1/8 in") == EIGHTH
    assert read_mark('1/16"') == SIXTEENTH
    assert read_mark("5 mm") == HALF_CM
    assert read_mark("0,5 cm") == HALF_CM
    assert read_mark("exact") == EXACT
    refused = read_mark("3 mm")
    assert isinstance(refused, Problem)
    assert "1/16in" in refused.message


def test_exact_rounds_nothing() -> None:
    assert round_to_mark(12.3456, EXACT) == 12.3456
    assert round_to_mark(12.3456, None) == 12.3456
