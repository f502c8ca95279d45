"""A `when` that is never ended, and branches after the last one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.recipe import tree
from littlefold.recipe.faults.fault import fault

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe, Written


def branches(recipe: Recipe) -> Iterator[Problem]:
    """Every `when` ends; after an `otherwise` without a condition nothing is left for another one."""
    begun: list[Written] = []
    settled: set[int] = set()
    for written in recipe.written:
        if isinstance(written.statement, tree.WhenBegins):
            begun.append(written)
        elif isinstance(written.statement, tree.EndWhen) and begun:
            begun.pop()
        elif isinstance(written.statement, tree.Otherwise) and begun:
            if begun[-1].line in settled:
                words = "this branch can never be taken: the `otherwise` above it takes all that is left."
                yield fault(written, (1, 1), "branch-never-taken", words)
            if written.statement.condition is None:
                settled.add(begun[-1].line)
    for written in begun:
        words = "this `when` is never ended. Write `end` on a line of its own after what belongs to it."
        yield fault(written, (1, 1), "when-not-ended", words)
