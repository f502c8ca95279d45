"""How a fault of a recipe is reported."""

from __future__ import annotations

import re
from difflib import get_close_matches
from typing import TYPE_CHECKING

from littlefold.problem import Place, Problem, Saying, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.recipe.recipe import Recipe, Written
    from littlefold.recipe.tree import Spot


def fault(
    written: Written,
    spot: Spot,
    code: str,
    words: str,
    severity: Severity = Severity.ERROR,
) -> Problem:
    """A problem at a spot of a statement; its message begins with the place."""
    place = written.place(spot)
    where = f"{place.file}, line {place.line}, column {place.column}"
    return Problem(code, f"{where}: {with_short_words(words)}", severity, place)


# A word longer than this is shortened in a message: a stranger's recipe may have names of a page.
LONGEST_WORD = 60
_LONG_WORD = re.compile(rf"\w{{{LONGEST_WORD + 1},}}")


def with_short_words(words: str) -> str:
    """The words, those of them that nobody could read shortened."""
    return _LONG_WORD.sub(lambda found: found[0][: LONGEST_WORD - 1] + "…", words)


def absence(recipe: Recipe, code: str, words: str) -> Problem:
    """A warning that something is missing in the whole recipe."""
    place = Place(file=recipe.file, line=1, column=1)
    return Problem(code, f"{recipe.file}: {words}", Severity.WARNING, place)


def suggestion(word: str, known: Iterable[str]) -> Saying:
    """The same as `did_you_mean`, so that it can be said in other languages."""
    close = get_close_matches(word[:40], list(known), n=1)
    return say(' Did you mean "{word}"?', word=close[0]) if close else Saying("")


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """` Did you mean "chest"?`, or nothing where no known word is like it."""
    return str(suggestion(word, known))
