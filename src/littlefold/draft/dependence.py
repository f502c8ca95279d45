"""Which statements lead to the goal of a `find`, and which of those change with its unknown: told by their names.

Only where all of them are plain, each of which makes the one thing it names and takes nothing that it does not name,
is anything left out or drawn once; else all are drawn for every trial, in their order.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from littlefold.draft.register import CONSTRUCTIONS
from littlefold.recipe import tree
from littlefold.recipe.walk import every

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from littlefold.recipe.recipe import Written

Lines = tuple["Written", ...]


def fixed_and_changing(
    step: tree.Find, lines: Sequence[Written], tables: Iterable[tree.Table]
) -> tuple[Lines, Lines]:
    """The statements of a trial that are the same in all trials, and those that have to be drawn for each.

    Args:
        step: The `find`.
        lines: The statements after it, up to the one with which its goal is drawn.
        tables: The tables of the recipe; their rows are worked out only where they are used.
    """
    unknown = step.name.text
    if not _are_plain(lines, unknown, tables):
        return (), tuple(lines)
    fixed: list[Written] = []
    changing: list[Written] = []
    moved = {unknown}
    for line in _leading_to(mentioned(step.left) | mentioned(step.right), lines):
        if moved.isdisjoint(mentioned(line.statement)):
            fixed.append(line)
        else:
            changing.append(line)
            moved.add(line.statement.name.text)
    return tuple(fixed), tuple(changing)


def _are_plain(lines: Sequence[Written], unknown: str, tables: Iterable[tree.Table]) -> bool:
    """Whether names alone tell what depends on what, and no name stands for two things."""
    kinds = {type(line.statement) for line in lines}
    if not kinds <= {*CONSTRUCTIONS, tree.Amount}:
        return False
    made = {line.statement.name.text for line in lines} | {unknown}
    return len(made) == len(lines) + 1 and all(made.isdisjoint(mentioned(table)) for table in tables)


def _leading_to(goal: frozenset[str], lines: Sequence[Written]) -> list[Written]:
    """The statements that make what is wanted, and what those are made from, in their order."""
    wanted, leading = set(goal), []
    for line in reversed(lines):
        if line.statement.name.text in wanted:
            wanted |= mentioned(line.statement)
            leading.append(line)
    return leading[::-1]


@lru_cache(maxsize=1024)
def mentioned(part: Any) -> frozenset[str]:
    """All names in a statement or a part of one, without the sheets before them: `front.N` is `N`."""
    return frozenset(name.text.rpartition(".")[2] for name in every(tree.Name, part))
