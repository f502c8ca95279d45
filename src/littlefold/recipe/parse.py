"""Reads a recipe: each line by the grammar, every mistake reported, the right lines kept."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any, Final

from lark.exceptions import UnexpectedInput

from littlefold.problem import Number, Place, Problem
from littlefold.recipe.grammar import grammar
from littlefold.recipe.lines import MOST_CHARACTERS, MOST_LINES, Stretch, stretches
from littlefold.recipe.mistakes import explain
from littlefold.recipe.recipe import Recipe, Written

# A statement longer or deeper than this is no sentence; the bound keeps reading quick and shallow.
MOST_IN_STATEMENT: Final = 4_000
MOST_OPERATORS: Final = 120
# A text with more lines that cannot be read is no recipe; the others are only counted.
MOST_EXPLAINED: Final = 100

_QUOTED: Final = re.compile(r'"(?:\\.|[^"\\\n])*"')
_WORD: Final = re.compile(r"[^\W\d]\w*")
_OPERATOR: Final = re.compile(r"[-+*/(]|\b(?:of|up|not|and|or|least|most)\b")


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
    mistakes: list[tuple[Stretch, UnexpectedInput | None]] = []
    for stretch in stretches(text):
        try:
            if is_too_long(stretch.text):
                mistakes.append((stretch, None))
            elif stretch.text:
                written.append(Written(stretch.line, read_statement(stretch.text), file))
        except UnexpectedInput as fault:
            mistakes.append((stretch, fault))
    unread = frozenset(
        word for stretch, _ in mistakes for word in _WORD.findall(_QUOTED.sub("", stretch.text))
    )
    return Recipe(file, text, tuple(written), _explained(mistakes, file), unread)


@lru_cache(maxsize=4096)
def read_statement(text: str) -> Any:
    """The value of one statement; remembered, since most lines of a recipe in the making stay as they were.

    Raises:
        UnexpectedInput: The text is not a statement.
    """
    return grammar().parse(text)


def is_too_long(text: str) -> bool:
    """Whether a statement has more characters or operators than are read."""
    return len(text) > MOST_IN_STATEMENT or (len(text) > MOST_OPERATORS and _operators(text) > MOST_OPERATORS)


def _operators(text: str) -> int:
    return len(_OPERATOR.findall(_QUOTED.sub("", text)))


def _explained(mistakes: list[tuple[Stretch, UnexpectedInput | None]], file: str) -> tuple[Problem, ...]:
    said = tuple(
        explain(fault, stretch, file) if fault else _too_long(stretch, file)
        for stretch, fault in mistakes[:MOST_EXPLAINED]
    )
    return (
        (*said, _too_many(mistakes[MOST_EXPLAINED][0], len(mistakes), file))
        if mistakes[MOST_EXPLAINED:]
        else said
    )


def _too_many(next_one: Stretch, count: int, file: str) -> Problem:
    return Problem(
        "too-many-mistakes",
        f"{file}, line {next_one.line}: from here on {count - MOST_EXPLAINED} more lines cannot be read; "
        f"the first {MOST_EXPLAINED} are explained. Is this text a recipe?",
        place=Place(file=file, line=next_one.line, column=1),
        numbers=(Number("lines not explained", count - MOST_EXPLAINED, "count"),),
    )


def _too_long(stretch: Stretch, file: str) -> Problem:
    size, most, what = len(stretch.text), MOST_IN_STATEMENT, "characters"
    if size <= most:
        size, most, what = _operators(stretch.text), MOST_OPERATORS, "operators"
    return Problem(
        "statement-too-long",
        f"{file}, line {stretch.line}, column 1: this statement has {size} {what}; at most {most} are read. "
        "Write a formula as several amounts, a table as several tables.",
        place=Place(file=file, line=stretch.line, column=1),
        numbers=(Number(what, size, "count"), Number("at most", most, "count")),
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
