"""A statement is tried; what cannot be done becomes a problem with its place, and the rest goes on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.desk import FOLLOWS
from littlefold.draft.refusal import Exhausted, Refusal
from littlefold.problem import Problem, say
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import with_short_words

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.problem import Place, Saying
    from littlefold.recipe.recipe import Written


def attempt(line: Written, desk: Desk, do: Callable[[], None]) -> bool:
    """Does something for a statement; if it is refused, reports it, and that what it makes is not there.

    Returns:
        Whether it was done.
    """
    try:
        do()
    except Exhausted as exhausted:
        exhausted.line = exhausted.line or line
        raise
    except Refusal as refusal:
        for made in _made(line.statement):
            desk.failed.update((made.text, desk.qualified(made.text)))
        if refusal.code != FOLLOWS:
            desk.problems.append(problem_of(refusal, line))
        return False
    return True


def _made(statement: object) -> tuple[tree.Name, ...]:
    """The names of what a statement makes."""
    if isinstance(statement, tree.Split):
        return (statement.first, statement.second)
    name = getattr(statement, "name", None)
    return (name,) if isinstance(name, tree.Name) else ()


def problem_of(refusal: Refusal, line: Written) -> Problem:
    """What is told of a refusal, with its place in the recipe."""
    place = line.place(refusal.spot)
    message = f"{where(place)}: {with_short_words(refusal.message)}"
    said = (say("{where}: {what}", where=where(place), what=refusal.said),) if refusal.said else ()
    return Problem(refusal.code, message, place=place, numbers=refusal.numbers, said=said)


def where(place: Place) -> Saying:
    """A place in a recipe, in words."""
    parts = {"file": str(place.file), "line": str(place.line), "column": str(place.column)}
    return say("{file}, line {line}, column {column}", **parts)
