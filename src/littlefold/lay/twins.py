"""Front and back cut at once: two pieces on the fold that differ only at the neck.

Small tops are cut from cloth in four layers, front and back together by the larger outline; then the smaller one,
nearly always the front with its deeper neck, is laid on its two layers and the rest is cut away.  That is possible where
one outline, laid with the fold and the hem together, covers the other.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.problem import Place, Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.piece import LayPiece

# The smaller outline may stick out of the larger one by this [mm]: less than the scissors stray.
STRAY = 1.0

# The larger outline may have this share more area; with more, too much cloth is cut away.
MOST_CUT_AWAY = 0.15


@dataclass(frozen=True, slots=True)
class Twinned:
    """Pieces with their twins put together, and what to tell the maker about each."""

    pieces: tuple[LayPiece, ...]
    notes: tuple[Problem, ...]


def twinned(pieces: Sequence[LayPiece]) -> Twinned:
    """The pieces with every pair of twins laid as the larger one, cut twice."""
    left = list(pieces)
    notes = []
    for larger in sorted(pieces, key=lambda piece: -piece.area):
        smaller = next((other for other in left if _covers(larger, other)), None)
        if larger not in left or smaller is None:
            continue
        left[left.index(larger)] = replace(larger, copies=2)
        left.remove(smaller)
        notes.append(_note(larger, smaller))
    return Twinned(tuple(left), tuple(notes))


def no_twins() -> Problem:
    """What is said where nothing can be cut together."""
    words = (
        "No two pieces on the fold differ only at the neck, so none are cut together: each is laid by itself."
    )
    return Problem("no-twins", words, Severity.NOTE)


def _covers(larger: LayPiece, smaller: LayPiece) -> bool:
    """Whether two single pieces on the fold are twins; the larger has its hem at either end."""
    if larger.name == smaller.name or not (larger.on_fold and smaller.on_fold):
        return False
    if (larger.copies, smaller.copies) != (1, 1) or larger.area > smaller.area * (1 + MOST_CUT_AWAY):
        return False
    room = shapely.buffer(larger.whole, STRAY)
    return any(shapely.covers(room, _shifted(smaller, larger, side)) for side in (0, 2))


def _shifted(smaller: LayPiece, larger: LayPiece, side: int) -> shapely.Polygon:
    """The smaller whole piece with its left (0) or right (2) end where the larger one's is."""
    by = larger.whole.bounds[side] - smaller.whole.bounds[side]
    return shapely.transform(smaller.whole, lambda xy: xy + np.array((by, 0.0)))


def _note(larger: LayPiece, smaller: LayPiece) -> Problem:
    return Problem(
        "cut-with-its-twin",
        f'"{smaller.name}" is cut together with "{larger.name}" by the outline of "{larger.name}". Then lay '
        f'"{smaller.name}" on two of the layers, fold on fold and hem on hem, and cut away what it does not cover.',
        Severity.NOTE,
        place=Place(piece=smaller.name),
    )
