"""Pieces: what is cut, from which edges, with which marks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.expressions import Expr
    from littlefold.recipe.tree.names import LineRef, Name, Numeral, Text


@dataclass(frozen=True, slots=True)
class CutOrder:
    """How often and how a piece is cut, and from which cloth."""

    count: Numeral
    way: str | None
    cloth: Name | None


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece traced from a sheet."""

    name: Name
    text: Text | None
    sheet: Name | None
    cutting: CutOrder


@dataclass(frozen=True, slots=True)
class PieceRectangle:
    """A rectangular piece, width by height."""

    name: Name
    text: Text | None
    width: Expr
    height: Expr
    cutting: CutOrder


@dataclass(frozen=True, slots=True)
class PieceBias:
    """A strip cut on the bias, length by width."""

    name: Name
    text: Text | None
    length: Expr
    width: Expr
    cutting: CutOrder


@dataclass(frozen=True, slots=True)
class PieceBand:
    """A straight band as long as a run or line."""

    name: Name
    text: Text | None
    along: Name
    width: Expr
    cutting: CutOrder


@dataclass(frozen=True, slots=True)
class PieceFacing:
    """A facing that follows edges of a piece."""

    name: Name
    text: Text | None
    edges: tuple[Name, ...]
    width: Expr
    cutting: CutOrder


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a piece: its line, what becomes of it, its allowance."""

    line: LineRef
    name: Name | None
    kind: Name
    allowance: Expr | None
    included: str | None
    turns: str | None
    lap: Expr | None


@dataclass(frozen=True, slots=True)
class Edges:
    """The edges of a piece in order round it."""

    edges: tuple[Edge, ...]


@dataclass(frozen=True, slots=True)
class EdgesAs:
    """The edges of another piece, some of them otherwise."""

    piece: Name
    but: tuple[Edge, ...] | None


@dataclass(frozen=True, slots=True)
class Grain:
    """The grain runs along a line."""

    line: LineRef


@dataclass(frozen=True, slots=True)
class GrainAngle:
    """The grain runs at an angle to a line."""

    angle: Expr
    line: LineRef


@dataclass(frozen=True, slots=True)
class NotchAt:
    """A notch at a point."""

    edge: Name
    point: Name
    double: bool


@dataclass(frozen=True, slots=True)
class NotchShare:
    """A notch at a share of an edge."""

    edge: Name
    share: Numeral
    base: Name | None
    double: bool


@dataclass(frozen=True, slots=True)
class NotchBy:
    """A notch at a distance along an edge."""

    edge: Name
    distance: Expr
    base: Name
    double: bool


@dataclass(frozen=True, slots=True)
class InsideLine:
    """A slit, placket, opening, dart or other line inside a piece."""

    kind: Name
    line: LineRef
    name: Name | None
    edge: Name | None


@dataclass(frozen=True, slots=True)
class Holes:
    """Buttonholes or buttons spaced evenly along a line."""

    kind: str
    count: Expr | None
    line: LineRef
    length: Expr | None


@dataclass(frozen=True, slots=True)
class Mark:
    """Words at a point of a piece."""

    text: Text
    point: Name
