"""What is wrong with a recipe that can be told without a child.

Faults that drafting finds anyway (missing points, numbers of the wrong kind, names taken) are not looked for
here; these are the ones it would pass over.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.recipe.faults import branch_names, branches, changes, cloths, header, names, numbers

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe

FAULTS: Final[tuple[Callable[[Recipe], Iterator[Problem]], ...]] = (
    header.said_at_all,
    header.said_once,
    header.known_garment,
    header.known_languages,
    names.names_are_no_words,
    names.one_meaning,
    numbers.two_ways_to_divide,
    numbers.bare_numbers,
    numbers.options_differ,
    numbers.printed_with_example,
    numbers.examples_set_what_is_asked,
    branches.branches,
    branch_names.names_of_one_branch,
    changes.changes_follow_redraw,
    cloths.cloths_spelt_alike,
)


def analyse(recipe: Recipe, measures: Collection[str] = ()) -> tuple[Problem, ...]:
    """The faults of a recipe, in the order of its lines; those of unreadable lines are in `recipe.problems`.

    Args:
        recipe: As parsed.
        measures: The short names of all measurements of the body; without them no name of one is doubted.
    """
    found = [problem for look in FAULTS for problem in look(recipe)]
    found += header.known_measures(recipe, measures) if measures else ()
    return tuple(sorted(found, key=lambda problem: (problem.place.line or 0, problem.place.column or 0)))
