"""Choices as people write them, made into values: `ease=12cm`, `closing=cord`, `slope=15 degrees`."""

from __future__ import annotations

from difflib import get_close_matches
from math import radians
from typing import TYPE_CHECKING

from littlefold.body.measurements import Measurements
from littlefold.body.tape import read_length
from littlefold.draft.arithmetic import evaluate
from littlefold.draft.desk import Desk
from littlefold.draft.quantity import Dimension
from littlefold.draft.refusal import Refusal
from littlefold.problem import Problem
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.recipe.recipe import Recipe

Choice = tree.ChoiceLength | tree.ChoiceOption


def read_choices(
    recipes: tuple[Recipe, ...], texts: Mapping[str, str]
) -> tuple[dict[str, float | str], tuple[Problem, ...]]:
    """The values of choices written as text.

    Args:
        recipes: The recipe and those it begins with: all whose choices may be set.
        texts: What was written, by the name of the choice.

    Returns:
        The values (mm, radians, months, plain numbers, names of options), and what could not be understood.
    """
    known = {step.name.text: step for recipe in recipes for step in choices_of(recipe)}
    values: dict[str, float | str] = {}
    problems: list[Problem] = []
    for name, text in texts.items():
        outcome = _read(known[name], text) if name in known else _unknown(name, known)
        if isinstance(outcome, Problem):
            problems.append(outcome)
        else:
            values[name] = outcome
    return values, tuple(problems)


def choices_of(recipe: Recipe) -> tuple[Choice, ...]:
    """The choices of a recipe, in order."""
    wanted = (tree.ChoiceLength, tree.ChoiceOption)
    return tuple(line.statement for line in recipe.written if isinstance(line.statement, wanted))


def _read(choice: Choice, text: str) -> float | str | Problem:
    if isinstance(choice, tree.ChoiceOption):
        options = [option.text for option in choice.options]
        return text if text in options else _no_option(choice.name.text, text, options)
    return _READERS[dimension_of(choice)](choice.name.text, text)


def dimension_of(choice: tree.ChoiceLength) -> Dimension:
    """What a choice between bounds measures; a length where its default cannot be worked out alone."""
    try:
        return evaluate(choice.default, Desk(Measurements(), None)).dimension
    except Refusal:
        return Dimension.LENGTH


def _length(name: str, text: str) -> float | Problem:
    found = read_length(text)
    if isinstance(found, Problem):
        return Problem("choice-not-understood", f"{name}: {found.message}")
    return found


def _number(name: str, text: str) -> float | Problem:
    try:
        return float(text)
    except ValueError:
        return Problem("choice-not-understood", f'{name}: "{text}" is no number. Write it like 0.75.')


def _angle(name: str, text: str) -> float | Problem:
    found = _number(name, text.removesuffix("degrees").removesuffix("°").strip())
    return found if isinstance(found, Problem) else radians(found)


_READERS = {
    Dimension.LENGTH: _length,
    Dimension.AREA: _number,
    Dimension.NUMBER: _number,
    Dimension.ANGLE: _angle,
    Dimension.AGE: _number,
}


def _no_option(name: str, text: str, options: list[str]) -> Problem:
    close = get_close_matches(text, options, n=1)
    hint = f' Did you mean "{close[0]}"?' if close else ""
    return Problem(
        "choice-not-understood", f'{name} cannot be "{text}". It is one of: {", ".join(options)}.{hint}'
    )


def _unknown(name: str, known: Mapping[str, Choice]) -> Problem:
    close = get_close_matches(name, known, n=1)
    hint = f' Did you mean "{close[0]}"?' if close else ""
    return Problem(
        "choice-not-known", f'the recipe has no choice "{name}". Its choices: {", ".join(known)}.{hint}'
    )
