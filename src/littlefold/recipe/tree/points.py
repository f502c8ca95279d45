"""The ways to place a point."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.clauses import Clauses, Leg, Side
    from littlefold.recipe.tree.expressions import Expr
    from littlefold.recipe.tree.names import Corner, LineRef, Name


@dataclass(frozen=True, slots=True)
class PointStart:
    """The first point of a sheet: on its fold, or anywhere."""

    name: Name
    place: str
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointPlaced:
    """A point at distances across and up from the start."""

    name: Name
    across: Expr
    up: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointOffset:
    """A point below, above, left or right of another, perhaps with a second leg."""

    name: Name
    way: str
    base: Name
    distance: Expr
    leg: Leg | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointLevel:
    """A point at the height of one point and straight above or below another."""

    name: Name
    level: Name
    plumb: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointInward:
    """A point in from the fold, at the height of another point."""

    name: Name
    distance: Expr
    level: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointSquare:
    """A point square from a line."""

    name: Name
    line: LineRef
    at: Name
    distance: Expr
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointTowards:
    """A point at a distance from one point towards another."""

    name: Name
    base: Name
    towards: Name
    distance: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointShare:
    """A point at a share of the way from one point to another."""

    name: Name
    base: Name
    towards: Name
    share: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointOn:
    """A point on a line or curve, by length along it from one of its ends."""

    name: Name
    line: LineRef
    distance: Expr
    base: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointOnShare:
    """A point on a line or curve, at a share of its length from one of its ends."""

    name: Name
    line: LineRef
    share: Expr
    base: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointOnLevel:
    """A point where a line comes level or plumb with another point."""

    name: Name
    line: LineRef
    level: str
    other: Name
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointBeyond:
    """A point on a line carried on past one of its ends."""

    name: Name
    line: LineRef
    past: Name
    distance: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointReach:
    """A point at given distances from two others."""

    name: Name
    first_distance: Expr
    first: Name
    second_distance: Expr
    second: Name
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointFoot:
    """The foot of the perpendicular from a point on a line."""

    name: Name
    of: Name
    line: LineRef
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointMeet:
    """Where two lines meet."""

    name: Name
    line: LineRef
    other: LineRef
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointMeetCircle:
    """Where a line meets a circle."""

    name: Name
    line: LineRef
    centre: Name
    radius: Expr
    side: Side | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointMirror:
    """The mirror image of a point in a line."""

    name: Name
    of: Name
    line: LineRef
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointTurn:
    """A point turned about another."""

    name: Name
    of: Name
    about: Name
    angle: Expr
    clock: str | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointAngle:
    """A point at a distance and an angle spoken from a line."""

    name: Name
    base: Name
    distance: Expr
    angle: Expr
    clock: str | None
    line: LineRef
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointMidway:
    """The point midway between two others."""

    name: Name
    first: Name
    second: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointEnd:
    """The point at an end of a line."""

    name: Name
    end: str
    line: Name
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class PointBisector:
    """A point from a corner, on the line that halves it."""

    name: Name
    corner: Corner
    distance: Expr
    clauses: Clauses
