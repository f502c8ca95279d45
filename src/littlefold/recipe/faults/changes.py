"""Changes to a sheet that is not being redrawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.recipe import tree
from littlefold.recipe.faults.fault import fault

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe


def changes_follow_redraw(recipe: Recipe) -> Iterator[Problem]:
    """What is drawn otherwise, and what is left out, stands directly below the `redraw` that it changes."""
    redrawing = False
    for written in recipe.written:
        is_change = isinstance(written.statement, tree.WithChange | tree.Without)
        if is_change and not redrawing:
            words = (
                "this changes a sheet that is redrawn, but it does not stand below a `redraw`. "
                "Write it directly below a line such as: redraw body as back"
            )
            yield fault(written, (1, 1), "change-without-redraw", words)
        redrawing = isinstance(written.statement, tree.Redraw) or (is_change and redrawing)
