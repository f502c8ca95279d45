"""What a pattern cutter does with a closed outline: cut, open, fold in, gather, join."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.expressions import Expr
    from littlefold.recipe.tree.names import Corner, LineRef, Name


@dataclass(frozen=True, slots=True)
class LineNamed:
    """A line of an outline, perhaps under another name."""

    line: LineRef
    name: Name | None


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed outline, its edges in order, cut where neighbours meet."""

    name: Name
    edges: tuple[LineNamed, ...]


@dataclass(frozen=True, slots=True)
class Split:
    """An outline cut along a line into two, both named."""

    outline: Name
    line: LineRef
    first: Name
    nearer: Name
    second: Name


@dataclass(frozen=True, slots=True)
class Slash:
    """An outline cut along lines and opened: at one edge (hinged) or at two."""

    outline: Name
    lines: tuple[LineRef, ...]
    name: Name
    opening: Expr
    at: Name
    second_opening: Expr | None
    second_at: Name | None


@dataclass(frozen=True, slots=True)
class CloseDart:
    """A dart closed by turning about its tip, perhaps opening along another line."""

    dart: Corner
    outline: Name
    name: Name
    opening: LineRef | None


@dataclass(frozen=True, slots=True)
class FoldIn:
    """Pleats or tucks laid into an outline."""

    kind: str
    outline: Name
    line: LineRef
    name: Name
    depth: Expr
    count: Expr | None
    apart: Expr | None
    way: str


@dataclass(frozen=True, slots=True)
class GatherIn:
    """Width added evenly for gathers across an edge, or between two points of it, by ratio or to a length."""

    outline: Name
    edge: Name
    start: Name | None
    end: Name | None
    name: Name
    by: str
    amount: Expr


@dataclass(frozen=True, slots=True)
class Join:
    """Two outlines put together at an edge that both have."""

    first: Name
    second: Name
    edge: Name
    name: Name


@dataclass(frozen=True, slots=True)
class ButtonStand:
    """Width added beyond an edge for buttons to stand on."""

    edge: Name
    outline: Name
    width: Expr
    name: Name
