import pytest
from hypothesis import given
from hypothesis import strategies as st

from littlefold.problem import Problem
from littlefold.sheet.paper import Paper, read_paper


@pytest.mark.parametrize(
    ("text", "width", "height"),
    [
        ("a4", 210.0, 297.0),  # ISO 216
        ("A0", 841.0, 1189.0),  # ISO 216
        (" A3  landscape", 420.0, 297.0),
        ("letter", 215.9, 279.4),
        ("US Letter", 215.9, 279.4),
        ("legal", 215.9, 355.6),
        ("tabloid", 279.4, 431.8),
        ("210x297mm", 210.0, 297.0),
        ("210 × 297 mm", 210.0, 297.0),  # noqa: RUF001 - as people write it
        ("8.5x11in", 215.9, 279.4),
        ('8.5 x 11"', 215.9, 279.4),
        ("21 by 29,7 cm", 210.0, 297.0),
        ("roll 914mm", 914.0, None),
        ("roll of 36 in", 914.4, None),
    ],
)
def test_papers_as_people_write_them(text, width, height):
    paper = read_paper(text)
    assert isinstance(paper, Paper)
    assert paper.width == pytest.approx(width)
    assert paper.height == (None if height is None else pytest.approx(height))


def test_an_unknown_paper_gets_a_suggestion():
    problem = read_paper("leter")
    assert isinstance(problem, Problem)
    assert 'Did you mean "Letter"?' in problem.message
    assert "210x297mm" in problem.cure


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("foolscap", "paper-unknown"),
        ("", "paper-unknown"),
        ("210x297", "paper-unknown"),
        ("100x150mm", "paper-too-small"),
        ("0x0mm", "paper-too-small"),
        ("6x6000in", "paper-too-large"),
        ("roll 90mm", "paper-too-small"),
        ("roll 9000mm", "paper-too-large"),
    ],
)
def test_what_is_no_paper_is_a_problem(text, code):
    problem = read_paper(text)
    assert isinstance(problem, Problem)
    assert problem.code == code


def test_margins_that_leave_no_room_are_a_problem():
    assert isinstance(read_paper("a4", margin=60.0), Problem)
    assert isinstance(read_paper("a4", margin=-1.0), Problem)
    assert isinstance(read_paper("a4", overlap=100.0), Problem)
    assert isinstance(read_paper("a4", margin=5.0, overlap=0.0), Paper)


@given(st.text(max_size=100))
def test_any_text_is_a_paper_or_a_problem(text):
    found = read_paper(text)
    assert isinstance(found, Problem) or found.room_across >= 130.0
