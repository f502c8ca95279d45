"""A recipe as it is read and written: its lines, what they draw, and what is wrong with them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from littlefold.recipe.analyse import analyse
from littlefold.web.asked import understand
from littlefold.web.on_table import on_table
from littlefold.web.own_recipes import parsed
from littlefold.web.said import elements

if TYPE_CHECKING:
    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe
    from littlefold.web.room import Room

Json = dict[str, Any]

_PLACE = re.compile(r"^[^,\s]+, line \d+, column \d+: ")
"""What a message begins with where it stands alone; beside the text the place is a link."""


def read_text(room: Room, text: str, sheet: str) -> Json:
    """What a text draws for the child a recipe is first shown for, and everything that is wrong with it."""
    return read_recipe(room, parsed(text, "recipe"), sheet)


def read_recipe(room: Room, recipe: Recipe, sheet: str) -> Json:
    """What a recipe draws, and everything that is wrong with it."""
    asked = understand(recipe, {"on-sheet": sheet}, room.preferences)
    lying = on_table(room, asked)
    problems = dict.fromkeys((*recipe.problems, *analyse(recipe), *lying.outcome.problems))
    return {
        "drawing": lying.drawing,
        "sheet": lying.sheet,
        "sheets": [one.name for one in lying.outcome.draft.sheets],
        "lines": {
            name: told["line"] for name, told in elements(lying.outcome, asked).items() if "line" in told
        },
        "messages": [_message(problem) for problem in problems if _is_of_text(problem, recipe)],
    }


def _is_of_text(problem: Problem, recipe: Recipe) -> bool:
    """Whether it is about the text: it names a line of it, or spoils the whole."""
    own = problem.place.file in {None, recipe.file}
    return own and (problem.place.line is not None or problem.severity.value == "error")


def _message(problem: Problem) -> Json:
    return {
        "line": problem.place.line,
        "column": problem.place.column,
        "severity": problem.severity.value,
        "message": _PLACE.sub("", problem.message),
    }
