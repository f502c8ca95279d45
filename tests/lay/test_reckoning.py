"""Worked figures from books and pages: bias, thread."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.lay.bias import bias_square, strip_from_square
from littlefold.lay.sewn import Stitching, read_stitching
from littlefold.lay.thread import STITCHES, SewnLength, thread_length
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Callable

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


def test_thread_by_ratio_as_printed() -> None:
    """standards.md, check values 22: 301 220 -> 550; 401 100 -> 540, with 15 % 621 cm."""
    assert thread_length([SewnLength("301", 2200)], waste=0) == pytest.approx(5500)
    assert thread_length([SewnLength("401", 1000)], waste=0) == pytest.approx(5400)
    assert thread_length([SewnLength("401", 1000)]) == pytest.approx(6210)


FORMULAS: dict[str, Callable[[float, float, float], float]] = {
    "101": lambda s, t, _: 3 + 2 * t * s,
    "301": lambda s, t, _: 2 + 2 * t * s,
    "401": lambda s, t, _: 4 + 2 * t * s,
    "406": lambda s, t, w: 7 + 2 * s * (t + w),
    "504": lambda s, t, w: 5 + 4 * s * (w + t),
    "516": lambda s, t, w: 9 + 2 * s * (2 * w + 3 * t),
    "602": lambda s, t, w: 8 + s * (5 * w + 4 * t),
}
"""Inches of thread for an inch of seam, from stitches per inch, thickness and width [in] (textiletechinsight.com,
textilecalculations.com); for 504 the second page prints 2 less."""

USUAL = (10, 0.6 / INCH, 5 / INCH)
"""A stitch of 2.5 mm through two layers of cotton of 0.3 mm, 5 mm wide; common practice, no source."""


def test_formulas_as_printed() -> None:
    """standards.md, check values 22: 301 with T 0.01 in, S 10 -> 2.2; 101 with T 0.005, S 9 -> 3.09."""
    assert FORMULAS["301"](10, 0.01, 0) == pytest.approx(2.2)
    assert FORMULAS["101"](9, 0.005, 0) == pytest.approx(3.09)


@pytest.mark.parametrize("stitch", FORMULAS)
def test_no_ratio_falls_short_of_the_printed_formula(stitch: str) -> None:
    """Thread that runs out in the middle of a seam is worse than some left over."""
    assert STITCHES[stitch].ratio >= FORMULAS[stitch](*USUAL)


@pytest.mark.parametrize("stitch", ["301", "504", "516"])
def test_ratios_of_usual_seams_lie_near_the_printed_formula(stitch: str) -> None:
    assert STITCHES[stitch].ratio == pytest.approx(FORMULAS[stitch](*USUAL), rel=0.1)


@pytest.mark.parametrize(
    ("text", "meant"),
    [("301+504", ("301", "504")), (" 401 + 304 ", ("401", "304")), ("516", ("516", None))],
)
def test_stitches_are_read_as_seams_and_edges(text: str, meant: tuple[str, str | None]) -> None:
    assert read_stitching(text) == Stitching(*meant)


@pytest.mark.parametrize(
    ("text", "wrong"), [("301+", '""'), ("zigzag", '"zigzag"'), ("301+999", '"999"'), ("", '""')]
)
def test_stitches_that_are_none_are_refused_with_those_there_are(text: str, wrong: str) -> None:
    found = read_stitching(text)
    assert isinstance(found, Problem)
    assert f"no stitch class {wrong}" in found.message
    assert "504 three-thread overedge" in found.message


def test_unknown_stitches_are_refused_in_words() -> None:
    found = thread_length([SewnLength("999", 100)])
    assert isinstance(found, Problem)
    assert "999" in found.message


def test_ratios_without_a_source_say_so() -> None:
    assert {number for number, s in STITCHES.items() if "memory" not in s.origin} == {"301", "401"}
