"""Worked figures from books and pages: bias, estimates, thread."""

from __future__ import annotations

import pytest

from littlefold.lay.bias import bias_square, strip_from_square
from littlefold.lay.cloth import YARD
from littlefold.lay.estimate import rough_length
from littlefold.lay.thread import STITCHES, SewnLength, thread_length, thread_per_inch
from littlefold.problem import Problem

INCH = 25.4


@pytest.mark.parametrize(
    ("length", "width", "exact", "side"),
    [(250, 2, 22.36, 23), (55, 2.5, 11.72, 12), (100, 3.5, 18.71, 19)],
)
def test_bias_square_as_printed(length: float, width: float, exact: float, side: float) -> None:
    """T15 of the drafting reference [S71],[S72]; the unit does not matter, here inches."""
    square = bias_square(length * INCH, width * INCH, step=INCH)
    assert square.exact / INCH == pytest.approx(exact, abs=0.01)  # one is printed truncated
    assert square.side / INCH == pytest.approx(side)
    assert square.strip_length >= length * INCH


def test_strip_from_a_square_as_printed() -> None:
    """T15: a square of 20 cut to strips of 2 gives 200."""
    assert strip_from_square(20, 2) == 200


def test_bias_is_cut_in_sentences_with_its_own_numbers() -> None:
    steps = bias_square(1000, 30).steps()
    assert "18 cm" in steps[0]
    assert any("3 cm" in step for step in steps)


def test_rough_length_as_printed() -> None:
    """T20 [S117]: (32 + 20) x 2 + 12 = 116 in = 3.22 yd -> buy 3 1/2 yd."""
    assert rough_length((32 * INCH, 20 * INCH), 12 * INCH) == pytest.approx(3.5 * YARD)
    assert rough_length((32 * INCH, 20 * INCH), 12 * INCH, step=INCH) == pytest.approx(116 * INCH)


def test_thread_by_ratio_as_printed() -> None:
    """standards.md, check values 22: 301 220 -> 550; 401 100 -> 540, with 15 % 621 cm."""
    assert thread_length([SewnLength("301", 2200)], waste=0) == pytest.approx(5500)
    assert thread_length([SewnLength("401", 1000)], waste=0) == pytest.approx(5400)
    assert thread_length([SewnLength("401", 1000)]) == pytest.approx(6210)


def test_thread_by_formula_as_printed() -> None:
    """standards.md, check values 22: 301 with T 0.01 in, S 10 -> 2.2; 101 with T 0.005, S 9 -> 3.09."""
    assert thread_per_inch("301", 10, 0.01) == pytest.approx(2.2)
    assert thread_per_inch("101", 9, 0.005) == pytest.approx(3.09)


def test_unknown_stitches_are_refused_in_words() -> None:
    found = thread_length([SewnLength("999", 100)])
    assert isinstance(found, Problem)
    assert "999" in found.message
    assert isinstance(thread_per_inch("304", 10, 0.01), Problem)


def test_ratios_without_a_source_say_so() -> None:
    assert {number for number, s in STITCHES.items() if "memory" not in s.origin} == {"301", "401"}
