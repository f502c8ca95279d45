"""Cautions on paper: heavy, wrapped, each beginning on a line of its own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.drawing import Label, Meaning, wrapped
from littlefold.drawing.words import LEADING
from littlefold.geometry import Point

if TYPE_CHECKING:
    from collections.abc import Iterable

LONGEST = 2000
"""So many signs of a caution are printed: those of the safety rules have some 400; only a prank has more."""


def caution_lines(cautions: Iterable[str], at: Point, width: float, height: float) -> tuple[Label, ...]:
    """The lines of all cautions below each other, the first with its base line at a point."""
    lines = [line for caution in cautions for line in wrapped(caution, width, height, "heavy", LONGEST)]
    return tuple(
        Label(line, Point(at.x, at.y - number * height * LEADING), Meaning.CAUTION, height, name="caution")
        for number, line in enumerate(lines)
    )
