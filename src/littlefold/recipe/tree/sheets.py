"""Sheets of paper: begun, gone on with, drawn again with changes, traced and laid on each other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.expressions import Expr
    from littlefold.recipe.tree.names import Name, Text


@dataclass(frozen=True, slots=True)
class Drawing:
    """A new sheet of paper."""

    name: Name
    text: Text | None


@dataclass(frozen=True, slots=True)
class ContinueDrawing:
    """Back to a sheet begun before."""

    name: Name


@dataclass(frozen=True, slots=True)
class Redraw:
    """The steps of a sheet again on a new one, with the named ones changed."""

    original: Name
    name: Name
    text: Text | None


@dataclass(frozen=True, slots=True)
class WithChange:
    """A step drawn otherwise in a redrawn sheet."""

    step: object


@dataclass(frozen=True, slots=True)
class Without:
    """Steps left out of a redrawn sheet."""

    names: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class TraceLines:
    """Lines of another sheet traced in the same place."""

    lines: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class Placing:
    """Where a part is laid: P on Q, R towards S, perhaps overlapped there, perhaps turned over."""

    point: Name
    onto: Name
    second: Name
    towards: Name
    overlap: Expr | None
    turned_over: bool


@dataclass(frozen=True, slots=True)
class LayPart:
    """A sheet or outline laid on the sheet in hand."""

    part: Name
    name: Name | None
    placing: Placing | None
