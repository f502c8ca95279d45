"""Steps of a sheet under the names of another: what a redrawn sheet calls its own, and the outlines cut from it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, Final

from littlefold.recipe import tree
from littlefold.recipe.recipe import Written
from littlefold.recipe.walk import replaced

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

CUTTING: Final = (
    tree.Outline,
    tree.Split,
    tree.Slash,
    tree.CloseDart,
    tree.FoldIn,
    tree.GatherIn,
    tree.Join,
    tree.ButtonStand,
)
"""Statements that make outlines, each a sheet of its own."""

_OUTLINES: Final = ("outline", "first", "second", "name")
"""The parts of such a statement that name an outline and nothing else."""


def made_by(statement: Any) -> tuple[tree.Name, ...]:
    """What a drawing statement makes: one thing, or both parts of a split."""
    return (statement.first, statement.second) if isinstance(statement, tree.Split) else (statement.name,)


def renamed(steps: Sequence[Written], redraw: tree.Redraw) -> list[Written]:
    """The steps under the names they bear on the redrawn sheet.

    `front.N`, said on the sheet `front` itself, is `back.N` on the sheet `back`.
    """
    old, new = redraw.original.text, redraw.name.text
    cut = (step.statement for step in steps if isinstance(step.statement, CUTTING))
    names = {old: new} | {name.text: _anew(name.text, old, new) for one in cut for name in made_by(one)}
    return [Written(step.line, _said(step.statement, names), step.file) for step in steps]


def _anew(name: str, old: str, new: str) -> str:
    """The name of an outline that bears the name of its sheet, or has the new one put before it."""
    is_named_after = name == old or name.startswith(f"{old}_")
    return new + name.removeprefix(old) if is_named_after else f"{new}_{name}"


def _said(statement: Any, names: Mapping[str, str]) -> Any:
    def swapped(name: tree.Name) -> tree.Name:
        sheet, dot, rest = name.text.partition(".")
        return tree.Name(f"{names[sheet]}.{rest}", name.spot) if dot and sheet in names else name

    said = replaced(statement, tree.Name, swapped)
    if not isinstance(statement, CUTTING):
        return said
    outlines = {part: getattr(said, part) for part in _OUTLINES if hasattr(said, part)}
    anew = {part: replace(name, text=names.get(name.text, name.text)) for part, name in outlines.items()}
    return replace(said, **anew)
