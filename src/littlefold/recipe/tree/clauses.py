"""What may stand at the end of a statement, and the small parts that several statements share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.expressions import Condition, Expr
    from littlefold.recipe.tree.names import LineRef, Name, Text


@dataclass(frozen=True, slots=True)
class CommonPractice:
    """The source of a rule that the trade uses and no book could be named for."""


@dataclass(frozen=True, slots=True)
class Printed:
    """The number that the book itself prints for its own example."""

    value: Expr


@dataclass(frozen=True, slots=True)
class Clauses:
    """The end of a statement: a remark, a source, the book's number, a condition; each may be missing."""

    text: Text | None = None
    source: Text | CommonPractice | None = None
    printed: Printed | None = None
    when: Condition | None = None


@dataclass(frozen=True, slots=True)
class Nearer:
    """Of two answers, the one nearer a point."""

    point: Name


@dataclass(frozen=True, slots=True)
class Further:
    """Of two answers, the one further from a point."""

    point: Name


@dataclass(frozen=True, slots=True)
class Heading:
    """Of two answers, the one that lies upward, downward, leftward or rightward of the other."""

    way: str


Side = Nearer | Further | Heading


@dataclass(frozen=True, slots=True)
class SquareTo:
    """A curve ends square to a line."""

    line: LineRef


@dataclass(frozen=True, slots=True)
class Along:
    """A curve ends in the direction of a line."""

    line: LineRef


@dataclass(frozen=True, slots=True)
class Going:
    """A curve goes up, down, left or right at its end."""

    way: str


@dataclass(frozen=True, slots=True)
class HeadingTo:
    """A curve goes towards a point at its end."""

    point: Name


@dataclass(frozen=True, slots=True)
class TangentTo:
    """A curve carries on another line or curve smoothly."""

    line: Name


@dataclass(frozen=True, slots=True)
class Angled:
    """A curve goes at an angle, clockwise or anticlockwise, from a line."""

    angle: Expr
    clock: str | None
    line: LineRef


Direction = SquareTo | Along | Going | HeadingTo | TangentTo | Angled


@dataclass(frozen=True, slots=True)
class Depth:
    """How far the middle of a curve lies from its straight line, and on which side."""

    depth: Expr
    side: Side | None


@dataclass(frozen=True, slots=True)
class PastCorner:
    """How far a curve passes from a corner, on the line that halves it."""

    distance: Expr
    corner: Name


Bend = Depth | PastCorner


@dataclass(frozen=True, slots=True)
class Leg:
    """A second way and distance: `and below by 2 cm`."""

    way: str
    distance: Expr


@dataclass(frozen=True, slots=True)
class Setting:
    """A measurement or choice set to a value."""

    name: Name
    value: Expr
