from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from littlefold.drawing import Stroke, mark_bounds
from littlefold.geometry import Bounds
from littlefold.problem import Severity
from littlefold.sheet.paper import SIZES, read_paper
from littlefold.sheet.pdf import write_pdf
from littlefold.sheet.printer_advice import printer_advice
from littlefold.sheet.printer_check import printer_check_page
from tests.sheet.reading import read
from tests.sheet.shapes import MADE


def codes(across, down):
    return [problem.code for problem in printer_advice(across, down)]


@pytest.mark.parametrize(
    ("across", "down", "expected"),
    [
        (100.0, 100.0, ["printer-true"]),
        (99.6, 100.4, ["printer-true"]),
        (97.0, 97.0, ["printer-scaled"]),
        (94.1, 94.0, ["printer-scaled"]),
        (103.0, 103.2, ["printer-scaled"]),
        (100.0, 98.5, ["printer-uneven"]),
        (98.5, 100.0, ["printer-uneven"]),
        (101.0, 99.0, ["printer-uneven"]),
        (95.0, 97.0, ["printer-scaled", "printer-uneven"]),
        (10.0, 100.0, ["printer-mark-misread"]),
        (nan, inf, ["printer-mark-misread", "printer-mark-misread"]),
        (0.0, -5.0, ["printer-mark-misread", "printer-mark-misread"]),
    ],
)
def test_what_is_wrong_with_the_printer(across, down, expected):
    assert codes(across, down) == expected


def only(across, down):
    (problem,) = printer_advice(across, down)
    return problem


def test_a_page_fitted_to_another_paper_is_recognised():
    # 279.4 / 297 = 0.941 and 210 / 215.9 = 0.973, by the sizes of the papers.
    assert "A4 page is fitted to US Letter" in only(94.1, 94.1).message
    assert "US Letter page is fitted to A4" in only(97.3, 97.3).message
    assert "A3 page is reduced to A4" in only(70.7, 70.7).message


def test_the_message_names_the_setting_and_both_numbers():
    problem = only(97.0, 97.2)
    assert "97.0 mm across and 97.2 mm down" in problem.message
    assert '"actual size" or 100 %' in problem.cure
    assert "30 cm come out as 29.1 cm" in problem.message  # 300 mm x 0.971
    assert "print at 103.0 %" in problem.message  # 100 / 97.1


def test_who_typed_centimetres_is_told():
    assert "centimetres" in only(10.0, 100.0).message
    assert "centimetres" not in only(0.5, 100.0).message


def test_who_measured_the_inch_edge_is_told():
    assert "4 in mark" in only(101.6, 101.6).message


def test_an_uneven_page_is_blamed_on_the_side_that_is_off():
    assert "the way the paper moves" in only(100.0, 98.0).message
    assert "print head" in only(98.0, 100.0).message


def test_more_than_one_percent_is_an_error():
    assert only(99.2, 99.2).severity is Severity.WARNING
    assert only(98.5, 98.5).severity is Severity.ERROR
    assert only(100.0, 100.0).severity is Severity.NOTE


@given(st.floats(), st.floats())
def test_any_two_numbers_get_an_answer(across, down):
    problems = printer_advice(across, down)
    assert problems
    assert all(problem.message for problem in problems)


@pytest.mark.parametrize("name", [*SIZES, "roll 914mm", "140x150mm", "A4 landscape"])
def test_the_check_page_stays_on_the_paper_and_carries_the_marks(name):
    page = printer_check_page(read_paper(name, margin=5.0, overlap=0.0), MADE)
    room = Bounds(0, 0, page.width, page.height).grown(-5.0)
    for mark in page.drawing.marks:
        box = mark_bounds(mark)
        assert room.contains(box.centre), mark
        assert box.left >= room.left, mark
        assert box.right <= room.right, mark
        assert box.top <= room.top, mark
        assert box.bottom >= room.bottom, mark
    names = {mark.name for mark in page.drawing.marks if isinstance(mark, Stroke)}
    assert {"check.across.cm", "check.across.in", "check.down.cm", "check.down.in"} <= names


@pytest.mark.parametrize("name", ["A4", "US Letter"])
def test_the_long_lines_and_the_square_are_exact_on_home_paper(name):
    (found,) = read(write_pdf((printer_check_page(read_paper(name), MADE),)))
    straight = [ink for ink in found.inked if len(ink.pieces) == 1]
    spans = [(abs(i.end[0] - i.start[0]), abs(i.end[1] - i.start[1])) for i in straight]
    assert any(abs(w - 180.0) < 0.02 and h < 0.01 for w, h in spans)
    assert any(abs(h - 180.0) < 0.02 and w < 0.01 for w, h in spans)
    squares = [ink for ink in found.inked if len(ink.pieces) == 4]
    (square,) = [
        s for s in squares if abs(max(x for x, _ in s.points()) - min(x for x, _ in s.points()) - 100) < 0.02
    ]
    ys = [y for _, y in square.points()]
    assert max(ys) - min(ys) == pytest.approx(100.0, abs=0.02)
