"""Reads a recipe: each line by the grammar, every mistake reported, the right lines kept."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from lark.exceptions import UnexpectedInput

from littlefold.problem import Number, Place, Problem
from littlefold.recipe.grammar import grammar
from littlefold.recipe.lines import MOST_CHARACTERS, MOST_LINES, Stretch, stretches
from littlefold.recipe.mistakes import explain
from littlefold.recipe.recipe import Recipe, Written

# A statement longer or deeper than this is no sentence; the bound keeps reading quick and shallow.
MOST_IN_STATEMENT = 4_000
MOST_OPERATORS = 120
_OPERATORS = "+*/(-"


def parse(text: str, file: str = "recipe") -> Recipe:
    """A recipe text as a tree, with all that is wrong with the text.

    Args:
        text: The whole recipe.
        file: What its problems call it.

    Returns:
        The recipe; lines that could not be read are left out and reported in `problems`.
    """
    oversized = oversize(text, file)
    if oversized:
        return Recipe(file, text, (), (oversized,))
    written: list[Written] = []
    problems: list[Problem] = []
    for stretch in stretches(text):
        if not stretch.text.strip():
            continue
        outcome = _read(stretch, file)
        if isinstance(outcome, Problem):
            problems.append(outcome)
        else:
            written.append(Written(stretch.line, outcome, file))
    return Recipe(file, text, tuple(written), tuple(problems))


def _read(stretch: Stretch, file: str) -> Any:
    """The statement of a stretch of text, or the problem with it."""
    if is_too_long(stretch.text):
        return _too_long(stretch, file)
    try:
        return read_statement(stretch.text)
    except UnexpectedInput as fault:
        return explain(fault, stretch, file)


@lru_cache(maxsize=4096)
def read_statement(text: str) -> Any:
    """The value of one statement; remembered, since most lines of a recipe in the making stay as they were.

    Raises:
        UnexpectedInput: The text is not a statement.
    """
    return grammar().parse(text)


def is_too_long(text: str) -> bool:
    """Whether a statement has more characters or operators than are read."""
    return len(text) > MOST_IN_STATEMENT or sum(map(text.count, _OPERATORS)) > MOST_OPERATORS


def _too_long(stretch: Stretch, file: str) -> Problem:
    size = len(stretch.text)
    return Problem(
        "statement-too-long",
        f"{file}, line {stretch.line}: this statement has {size} characters and many operators; "
        f"at most {MOST_IN_STATEMENT} characters and {MOST_OPERATORS} operators are read. "
        f"Write it as several amounts.",
        place=Place(file=file, line=stretch.line, column=1),
        numbers=(Number("characters", size, "count"), Number("at most", MOST_IN_STATEMENT, "count")),
    )


def oversize(text: str, file: str) -> Problem | None:
    """The problem with a text that is larger than any recipe need be; None when there is none."""
    lines = text.count("\n") + 1
    if len(text) <= MOST_CHARACTERS and lines <= MOST_LINES:
        return None
    return Problem(
        "recipe-too-large",
        f"{file}: the recipe has {len(text)} characters in {lines} lines; at most {MOST_CHARACTERS} "
        f"characters and {MOST_LINES} lines are read. Divide it into several recipes.",
        place=Place(file=file, line=1, column=1),
        numbers=(Number("characters", len(text), "count"), Number("at most", MOST_CHARACTERS, "count")),
    )
