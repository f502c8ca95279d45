"""Seams, checks, notions, the order of work, and branches."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.expressions import Condition, Expr
    from littlefold.recipe.tree.names import Name, Text


@dataclass(frozen=True, slots=True)
class Easing:
    """The second run is longer by an amount and eased in."""

    amount: Expr


@dataclass(frozen=True, slots=True)
class Gathered:
    """The second run is gathered up to the first."""


@dataclass(frozen=True, slots=True)
class Sew:
    """Two runs of edges sewn together."""

    first: tuple[Name, ...]
    second: tuple[Name, ...]
    way: Easing | Gathered | None
    within: Expr | None
    when: Condition | None


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening as it passes over the body, where pieces alone do not tell it (straps, ties, elastic bands)."""

    name: Name
    length: Expr
    text: Text | None
    when: Condition | None


@dataclass(frozen=True, slots=True)
class Check:
    """A comparison that must hold, and why."""

    left: Expr
    sign: str
    right: Expr
    within: Expr | None
    text: Text | None
    weight: str | None
    when: Condition | None


@dataclass(frozen=True, slots=True)
class NotionLine:
    """Something to buy or cut beside the cloth."""

    name: Name
    length: Expr | None
    count: Expr | None
    at: Name | None
    fixed: bool
    free: Expr | None
    text: Text | None
    when: Condition | None


@dataclass(frozen=True, slots=True)
class Work:
    """Steps of the sewing, in order."""

    texts: tuple[Text, ...]
    when: Condition | None


@dataclass(frozen=True, slots=True)
class WhenBegins:
    """What follows holds only under a condition."""

    condition: Condition


@dataclass(frozen=True, slots=True)
class Otherwise:
    """What follows holds when the condition above did not."""

    condition: Condition | None


@dataclass(frozen=True, slots=True)
class EndWhen:
    """The end of what holds under a condition."""
