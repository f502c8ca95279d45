"""Whatever text comes, it is read, looked through and laid out: no exception, in bounded time."""

from time import process_time

import pytest

from littlefold.problem import Problem
from littlefold.recipe import tree
from littlefold.recipe.analyse import analyse
from littlefold.recipe.format import format_recipe
from littlefold.recipe.lines import MOST_CHARACTERS, MOST_LINES
from littlefold.recipe.parse import parse
from littlefold.recipe.recipe import Recipe
from littlefold.recipe.walk import every
from littlefold.recipe.wording import written
from tests.recipe.fuzz import texts

COUNT = 2_000
# No text may take longer than this of the processor's time [s]; most take less than a millisecond.
LONGEST = 10.0


def handled(text):
    """The recipe of a text, after all that is done to a text before it is drafted."""
    recipe = parse(text, "fuzz")
    assert isinstance(recipe, Recipe)
    problems = recipe.problems + analyse(recipe, ("chest",))
    assert all(isinstance(problem, Problem) and problem.message for problem in problems)
    for line in recipe.written:
        for amount in every(tree.Amount, line.statement):
            assert written(amount.value)
    tidy = format_recipe(text)
    if isinstance(tidy, str):
        assert [line.statement for line in parse(tidy).written] == [line.statement for line in recipe.written]
    return recipe


@pytest.mark.parametrize("part", range(8))
def test_no_text_raises_or_hangs(part):
    read = unread = 0
    for text in texts(COUNT // 8, seed=part):
        begun = process_time()
        recipe = handled(text)
        assert process_time() - begun < LONGEST, text[:200]
        read += bool(recipe.written)
        unread += bool(recipe.problems)
    # The texts are of both kinds, or they would try nothing.
    assert min(read, unread) > COUNT // 8 * 0.2


@pytest.mark.parametrize(
    "text",
    [
        "x\n" * (MOST_LINES - 1),
        "point A at the fold,\n" * (MOST_LINES - 1),
        "point ?\n" * (MOST_LINES - 1),
        "#" * MOST_CHARACTERS,
        '"' * MOST_CHARACTERS,
        "\\" * MOST_CHARACTERS,
        "amount x = " + "(" * 120 + "a",
        ("amount x = " + "1 + " * 119 + "1\n") * 300,
        "a,\n" * (MOST_LINES - 1),
        "when a is b\n" * (MOST_LINES - 1),
        "work " + '"x", ' * 700 + '"x"',
    ],
)
def test_the_worst_of_each_kind_takes_bounded_time(text):
    begun = process_time()
    handled(text[:MOST_CHARACTERS])
    assert process_time() - begun < LONGEST
