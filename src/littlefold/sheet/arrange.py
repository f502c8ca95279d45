"""Laying pieces beside each other so that few pages are printed, or little of a roll is used.

Pieces are packed by their boxes into strips of one, two, three ... pages; of all tries the one that touches
the fewest pages wins.  It is a quick search, not the best answer there is, and the same pieces always give
the same sheet.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import reduce
from itertools import product
from math import pi
from typing import TYPE_CHECKING

import numpy as np

from littlefold.drawing import Drawing
from littlefold.geometry import Affine, Bounds, Vector
from littlefold.sheet.grid import BLEED, candidates, sample, touched
from littlefold.sheet.skyline import Spot, pack

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from littlefold.sheet.paper import Paper

GAP = 8.0
"""Bare paper between two pieces [mm]: room for scissors."""

MOST_COLUMNS = 8
"""Wider sheets than this many pages are not tried; nobody's table is wider."""

# The places of the grid that are tried for each packing, as parts of the spare room; the page writer tries
# more.
TRIED = (0.0, 0.5, 1.0)

QUARTER = Affine.rotation(pi / 2)


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Pieces laid out on one drawing, and the paper to print it on: as given or on its side."""

    drawing: Drawing
    paper: Paper
    pages: int


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece in one position, with its box and points that stand for it (n x 2)."""

    drawing: Drawing
    box: Bounds
    places: np.ndarray


def arrange(
    pieces: Sequence[Drawing], paper: Paper, title: str = "", *, may_turn: bool = False
) -> Arrangement:
    """The pieces laid so that few pages are touched; pieces without marks are left out.

    Args:
        pieces: Each drawn in its own place, upright as it is to be read.
        paper: Pages to join, a large sheet or a roll.  Sheets are tried on their side as well.
        title: The title of the whole.
        may_turn: Whether a piece may also lie on its side.
    """
    lying = tuple(_positions(piece, may_turn=may_turn) for piece in pieces if piece.marks)
    if not lying:
        return Arrangement(Drawing((), title), paper, 0)
    tries = (attempt for sheet in _sheets(paper) for attempt in _tries(lying, sheet))
    best = min(tries, key=lambda attempt: attempt.cost)
    return Arrangement(best.drawing(title), best.paper, best.cost[0])


def _positions(piece: Drawing, *, may_turn: bool) -> tuple[_Piece, ...]:
    upright = _piece(piece)
    return (upright, _piece(piece.transformed(QUARTER))) if may_turn else (upright,)


def _piece(drawing: Drawing) -> _Piece:
    box = drawing.bounds()
    assert box is not None, "a piece has marks"  # noqa: S101 - our own mistake
    return _Piece(drawing, box, sample(drawing))


def _sheets(paper: Paper) -> tuple[Paper, ...]:
    return (paper,) if paper.is_roll else (paper, paper.turned())


@dataclass(frozen=True, slots=True)
class _Attempt:
    """Pieces in order, their spots, and the cost: pages, longer side of the sheet, area."""

    pieces: tuple[_Piece, ...]
    spots: tuple[Spot, ...]
    paper: Paper
    cost: tuple[int, float, float]

    def drawing(self, title: str) -> Drawing:
        """All pieces on one drawing; the corner at the upper left is the origin."""
        moved = (
            piece.drawing.transformed(Affine.translation(_way(piece, spot)))
            for piece, spot in zip(self.pieces, self.spots, strict=True)
        )
        return Drawing(tuple(mark for drawing in moved for mark in drawing.marks), title)


def _way(piece: _Piece, spot: Spot) -> Vector:
    return Vector(spot.left - piece.box.left, -spot.depth - piece.box.top)


def _tries(lying: tuple[tuple[_Piece, ...], ...], paper: Paper) -> Iterator[_Attempt]:
    """One attempt for each order of pieces, way of turning them, and width of strip that they may need."""
    turns = TURNS if any(len(positions) > 1 for positions in lying) else TURNS[:1]
    for order, turn in product(ORDERS, turns):
        chosen = tuple(sorted((turn(positions) for positions in lying), key=order))
        yield from (_attempt(chosen, spots, paper) for spots in _packings(chosen, paper))


def _packings(pieces: tuple[_Piece, ...], paper: Paper) -> Iterator[tuple[Spot, ...]]:
    """The pieces packed into strips of one, two, three ... pages, up to one strip that takes all in a row.

    A piece wider than `MOST_COLUMNS` pages makes its own strip.
    """
    sizes = [(piece.box.width + GAP, piece.box.height + GAP) for piece in pieces]
    widest, row = max(width for width, _ in sizes), sum(width for width, _ in sizes)
    for width in (*_widths(paper), max(widest, _widths(paper)[-1])):
        spots = pack(sizes, width + GAP)
        if spots is not None:
            yield spots
        if width >= row:
            return


def _widths(paper: Paper) -> tuple[float, ...]:
    """The room in strips of whole pages; only what the roll is wide, if it is a roll."""
    step = paper.room_across - paper.overlap
    most = 1 if paper.is_roll else MOST_COLUMNS
    return tuple(k * step + paper.overlap - 2 * BLEED for k in range(1, most + 1))


def _attempt(pieces: tuple[_Piece, ...], spots: tuple[Spot, ...], paper: Paper) -> _Attempt:
    ways = [_way(piece, spot) for piece, spot in zip(pieces, spots, strict=True)]
    places = np.concatenate(
        [piece.places + np.array((way.x, way.y)) for piece, way in zip(pieces, ways, strict=True)]
    )
    box = reduce(Bounds.union, (_moved(piece.box, way) for piece, way in zip(pieces, ways, strict=True)))
    pages = min(len(touched(grid, places)) for grid in candidates(box.grown(BLEED), paper, TRIED))
    return _Attempt(pieces, spots, paper, (pages, max(box.width, box.height), box.width * box.height))


def _moved(box: Bounds, way: Vector) -> Bounds:
    return Bounds(box.left + way.x, box.bottom + way.y, box.right + way.x, box.top + way.y)


ORDERS: tuple[Callable[[_Piece], float], ...] = (
    lambda piece: -piece.box.height,
    lambda piece: -piece.box.width,
    lambda piece: -piece.box.width * piece.box.height,
)
"""Tall pieces first, wide ones first, large ones first; equal ones as they came."""

TURNS: tuple[Callable[[tuple[_Piece, ...]], _Piece], ...] = (
    lambda positions: positions[0],
    lambda positions: min(positions, key=lambda piece: piece.box.width),
    lambda positions: min(positions, key=lambda piece: piece.box.height),
)
"""As drawn, all narrow, all flat."""
