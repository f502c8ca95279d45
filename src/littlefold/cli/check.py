"""`littlefold check`: a recipe read, and drafted for the bodies it is meant for and for its own examples."""

from __future__ import annotations

from dataclasses import replace
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

Drafted = tuple[str, tuple[Problem, ...]]

# The statures drafted where a recipe does not say whom it suits [mm].
ANY_CHILD = (620.0, 1520.0)


def check_recipe(name: str) -> int:
    """Checks a recipe and prints what was found; returns the exit status."""
    recipe = read_recipe(name)
    if isinstance(recipe, Problem):
        print_findings((recipe,), aside())
        return 2
    bodies, published = list(_bodies(recipe)), list(_examples(recipe))
    drafted = [*bodies, *published]
    found = _told(drafted, at_all_sizes=set.intersection(*(set(problems) for _, problems in bodies)))
    console = to_person()
    print_findings(found, console)
    errors = sum(problem.severity is Severity.ERROR for problem in found)
    titles = ", ".join(title for title, _ in drafted)
    console.print(f"{recipe.title}: drafted for {titles}; {count_words(errors, 'error')}.")
    return 1 if errors else 0


def _told(drafted: list[Drafted], at_all_sizes: set[Problem]) -> tuple[Problem, ...]:
    """Everything found, each once; what not every size shows begins with the first draft that does."""
    first: dict[Problem, str] = {}
    for title, problems in drafted:
        for problem in problems:
            first.setdefault(problem, title)
    return tuple(
        problem if problem in at_all_sizes else replace(problem, message=f"For {title}: {problem.message}")
        for problem, title in first.items()
    )


def _bodies(recipe: Recipe) -> Iterator[Drafted]:
    """The smallest, middle and largest body, with everything found but notes."""
    low, high = _statures(recipe)
    for stature in (low, (low + high) / 2, high):
        outcome = fulfil(Wish(recipe, Measurements.of({"stature": stature}), Circumstances()))
        serious = (problem for problem in outcome.problems if problem.severity is not Severity.NOTE)
        yield f"stature {stature / 10:.0f} cm", tuple(serious)


def _examples(recipe: Recipe) -> Iterator[Drafted]:
    """A book's own examples: what its draft shows, the printed numbers among it; nobody will wear them."""
    low, high = _statures(recipe)
    for example, body, choices in examples(recipe):
        known = body if body.readings else Measurements.of({"stature": (low + high) / 2})
        outcome = fulfil(Wish(recipe, known, Circumstances(), settings(choices)))
        yield f'"{example.text.words}"', outcome.draft.problems


def _statures(recipe: Recipe) -> tuple[float, float]:
    suited = stature_range(recipe)
    return ANY_CHILD if suited == ANY else suited
