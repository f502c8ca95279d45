"""What is written is read again as the same; and an expression begins where its first word stands."""

import pytest
from hypothesis import given, settings

from littlefold.recipe.parse import read_statement
from littlefold.recipe.wording import leftmost_spot, written
from tests.recipe.sentences import conditions, expressions, lines


@settings(max_examples=150, deadline=None)
@given(expressions())
def test_an_expression_written_and_read_is_the_same(value):
    assert read_statement(f"amount x = {written(value)}").value == value


@settings(max_examples=100, deadline=None)
@given(conditions())
def test_a_condition_written_and_read_is_the_same(condition):
    assert read_statement(f"when {written(condition)}").condition == condition


@settings(max_examples=20, deadline=None)
@given(lines())
def test_a_line_written_and_read_is_the_same(line):
    assert read_statement(f"grain along {written(line)}").line == line


@pytest.mark.parametrize(
    ("loose", "canonical"),
    [
        ("chest/4+1 cm", "chest / 4 + 1 cm"),
        ("( chest+ease )/4", "(chest + ease) / 4"),
        ("3   1/4   in", "3 1/4 in"),
        ("-  chest*2", "-chest * 2"),
        ("1/4 of chest-1/2 in", "1/4 of chest - 1/2 in"),
        ("larger   of chest / 4 and 12 cm", "larger of chest / 4 and 12 cm"),
        ("round of front.neckline   then back.neckline", "round of front.neckline then back.neckline"),
        ("square root of (a*b) at  least 3 cm", "square root of (a * b) at least 3 cm"),
    ],
)
def test_there_is_one_way_to_write_it(loose, canonical):
    assert written(read_statement(f"amount x = {loose}").value) == canonical


@pytest.mark.parametrize(
    "text",
    [
        "a is b or c is d and e is f",
        "(a is b or c is d) and e is f",
        "a is b and (c is d and e is f)",
        "not (a is b and c > 3 cm) or not not d is not e",
        "(a + b) * 2 > c",
    ],
)
def test_a_condition_keeps_the_brackets_it_needs(text):
    assert written(read_statement(f"when {text}").condition) == text


@pytest.mark.parametrize(
    ("text", "column"),
    [
        ("chest / 4 + 1 cm", 12),
        ("(chest + ease) / 4", 13),
        ("1/4 of chest", 12),
        ("pi * 2", 12),
        ("length of A-B", 22),
        ("round of side then hem", 21),
        ("larger of 3 cm and chest", 22),
    ],
)
def test_an_expression_begins_at_its_first_name_or_number(text, column):
    assert leftmost_spot(read_statement(f"amount x = {text}").value) == (1, column)
