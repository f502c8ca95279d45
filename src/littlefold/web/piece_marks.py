"""The marks of one piece for the screen: cutting line, stitch line, notches, grain, and the half under the fold."""

from __future__ import annotations

from typing import TYPE_CHECKING
from xml.sax.saxutils import quoteattr

from littlefold.drawing import plain
from littlefold.geometry import Path, Point
from littlefold.pattern import notch
from littlefold.pattern.allowance import is_folded, width
from littlefold.sheet.svg import outline_commands

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.pattern.model import Piece

ORIGIN = Point(0.0, 0.0)
LEAST_GRAIN = 1.0
"""A shorter grain line is none [mm]."""


def whole(piece: Piece) -> Iterator[str]:
    """The piece as it is cut, both halves, where it is drawn as one on the fold."""
    if piece.cutting.on_fold:
        yield mark(piece.unfolded.cut, "whole", f"{piece.name}.whole")


def cutting(piece: Piece) -> Iterator[str]:
    """Cutting line, folds of hems, notches."""
    yield mark(piece.outline.cut, "cut", f"{piece.name}.cut")
    yield from (mark(path, "turn", f"{piece.name}.turn") for path in piece.turns)
    for placed in piece.notches:
        marks = notch.marks(placed, piece.edge(placed.edge))
        yield from (mark(path, "notch", f"{piece.name}.{placed.edge}.notch") for path in marks)


def stitching(piece: Piece) -> Iterator[str]:
    """Stitch lines of edges that have an allowance, lines inside, grain."""
    for edge in piece.edges:
        if width(edge) > 0 and not is_folded(edge):
            yield mark(edge.path, "stitch", f"{piece.name}.{edge.name}")
    yield from (mark(one.path, "inside", f"{piece.name}.{one.name}") for one in piece.inside)
    start, end = piece.grain
    if start.distance(end) > LEAST_GRAIN:
        yield mark(Path.line_through(start, end), "grain", f"{piece.name}.grain")


def mark(path: Path, sort: str, name: str) -> str:
    """One line of the drawing."""
    return f'<path class="{sort}" d="{outline_commands(path, ORIGIN)}" data-name={quoteattr(plain(name))}/>'


def group(name: str, marks: Iterable[str]) -> str:
    """Marks that are shown or hidden together."""
    return f'<g class="{name}">{"".join(marks)}</g>'


def number(value: float) -> str:
    """A coordinate as short as it can be said to a hundredth of a millimetre."""
    return f"{value:.2f}".rstrip("0").rstrip(".")
