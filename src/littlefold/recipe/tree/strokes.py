"""The ways to draw a line, a curve, an arc; copies; and runs of edges."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.clauses import Bend, Clauses, Direction, Side
    from littlefold.recipe.tree.expressions import Expr
    from littlefold.recipe.tree.names import Corner, LineRef, Name, Text


@dataclass(frozen=True, slots=True)
class LineStraight:
    """A straight line through two or more points."""

    name: Name
    start: Name
    stops: tuple[Name, ...]
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class LineParallel:
    """A straight line parallel to another."""

    name: Name
    line: LineRef
    distance: Expr
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class CurveBetween:
    """A curve by its ends, its directions there, and a depth."""

    name: Name
    start: Name
    starting: Direction | None
    end: Name
    ending: Direction | None
    bend: Bend | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class CurveThrough:
    """A smooth curve through points."""

    name: Name
    points: tuple[Name, ...]
    starting: Direction | None
    ending: Direction | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class CurveParallel:
    """A curve parallel to another, by one distance or by different ones at its ends."""

    name: Name
    line: Name
    distance: Expr
    end_distance: Expr | None
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class ArcRadius:
    """An arc between two points by its radius; the side is the one to which it bulges."""

    name: Name
    start: Name
    end: Name
    radius: Expr
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class ArcThrough:
    """An arc through three points."""

    name: Name
    start: Name
    middle: Name
    end: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class ArcAbout:
    """An arc about a centre, by its angle."""

    name: Name
    centre: Name
    start: Name
    angle: Expr
    clock: str | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class ArcTo:
    """An arc about a centre, from one point to another."""

    name: Name
    centre: Name
    start: Name
    end: Name
    clock: str | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class ArcCorner:
    """A corner rounded by an arc."""

    name: Name
    corner: Corner
    radius: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class Circle:
    """A whole circle about a point."""

    name: Name
    centre: Name
    radius: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class CopyMoved:
    """A line copied and moved."""

    line: Name
    name: Name
    first: Expr
    first_way: str
    second: Expr | None
    second_way: str | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class CopyMirrored:
    """A line copied and mirrored."""

    line: Name
    name: Name
    across: LineRef
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class CopyTurned:
    """A line copied and turned about a point."""

    line: Name
    name: Name
    about: Name
    angle: Expr
    clock: str | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class Run:
    """Several edges or lines, one after the other, as one."""

    name: Name
    parts: tuple[Name, ...]
    text: Text | None
