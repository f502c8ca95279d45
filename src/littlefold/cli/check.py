"""`littlefold check`: a recipe read, and drafted for the bodies it is meant for and for its own examples."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.cli.files import read_recipe
from littlefold.cli.words import aside, count_words, print_findings, to_person
from littlefold.draft.printed import examples
from littlefold.draft.suits import ANY, stature_range
from littlefold.pipeline import Wish, fulfil, settings
from littlefold.problem import Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.recipe.recipe import Recipe

# The statures drafted where a recipe does not say whom it suits [mm].
ANY_CHILD = (620.0, 1520.0)


def check_recipe(name: str) -> int:
    """Checks a recipe and prints what was found; returns the exit status."""
    recipe = read_recipe(name)
    if isinstance(recipe, Problem):
        print_findings((recipe,), aside())
        return 2
    found: dict[Problem, list[str]] = {}
    for title, wish in _wishes(recipe):
        for problem in fulfil(wish).problems:
            if problem.severity is not Severity.NOTE:
                found.setdefault(problem, []).append(title)
    console = to_person()
    print_findings(found, console)
    errors = sum(problem.severity is Severity.ERROR for problem in found)
    drafted = ", ".join(title for title, _ in _wishes(recipe))
    console.print(f"{recipe.title}: drafted for {drafted}; {count_words(errors, 'error')}.")
    return 1 if errors else 0


def _wishes(recipe: Recipe) -> Iterator[tuple[str, Wish]]:
    low, high = stature_range(recipe)
    low, high = ANY_CHILD if (low, high) == ANY else (low, high)
    for stature in (low, (low + high) / 2, high):
        body = Measurements.of({"stature": stature})
        yield f"stature {stature / 10:.0f} cm", Wish(recipe, body, Circumstances())
    for example, body, choices in examples(recipe):
        known = body if body.readings else Measurements.of({"stature": (low + high) / 2})
        yield f'"{example.text.words}"', Wish(recipe, known, Circumstances(), settings(choices))
