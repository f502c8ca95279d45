"""The grid of pages laid over a drawing: where it starts, and which of its pages are printed.

Rows are lettered from the top, columns numbered from the left.  Every page shows a window of the drawing; the
next page begins `overlap` before its end.  The cell of a page is the part of its window that no later page
shows again, so the cells share out the whole grid.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from math import ceil
from typing import TYPE_CHECKING

import numpy as np

from littlefold.drawing import Dot, Label, Stroke
from littlefold.drawing.crop import boxed, crop_path
from littlefold.geometry import Bounds, Line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.drawing import Drawing, Mark
    from littlefold.drawing.crop import Boxed
    from littlefold.geometry import Path, Point, Segment
    from littlefold.sheet.paper import Paper

BLEED = 1.0
"""Room kept between the marks and the outer edge of the grid [mm], so that wide lines are not cut there."""

# The places that are tried for the start of the grid, as parts of the spare room; the middle first, so that
# it is kept where no other place saves a page.
SHARES = (0.5, 0.0, 1.0, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875)

UPPER_LEFT = (0.0,)
"""Instead of these: all spare room to the right and below."""

# The points that stand for a drawing while places are tried lie this far apart [mm].  Larger: a page that a
# line just touches is overlooked in the trial, and printed all the same.  Smaller: slower.
SPACING = 4.0

# A single segment has no more of these points than this; at 4 mm apart that is eight metres.
MOST_PLACES = 2000

# Words weigh more: nothing of the sheet should be laid over them.
SPACING_IN_WORDS = 1.5

MOST_PAGES = 1000
"""Larger grids are refused: no garment takes so many, but a slip of the keys may."""

Cell = tuple[int, int]
"""Row and column, counted from 0 at the top left."""


@dataclass(frozen=True, slots=True)
class Grid:
    """Pages of one size over a drawing.

    Attributes:
        left: The left edge of the first column on the drawing [mm].
        top: The top edge of the first row on the drawing [mm].
        across: The width of a window [mm].
        down: The height of a window [mm].
        overlap: How much of a window the next one shows again [mm].
        rows: How many.
        columns: How many.
        printed: The cells that are printed, in reading order.
    """

    left: float
    top: float
    across: float
    down: float
    overlap: float
    rows: int
    columns: int
    printed: tuple[Cell, ...] = ()

    def window(self, cell: Cell) -> Bounds:
        """What the page of a cell shows, on the drawing."""
        left = self.left + cell[1] * (self.across - self.overlap)
        top = self.top - cell[0] * (self.down - self.overlap)
        return Bounds(left, top - self.down, left + self.across, top)

    def share(self, cell: Cell) -> Bounds:
        """The part of the window that belongs to this cell alone; the last ones keep all of theirs."""
        window = self.window(cell)
        right = window.right - (self.overlap if cell[1] < self.columns - 1 else 0.0)
        bottom = window.bottom + (self.overlap if cell[0] < self.rows - 1 else 0.0)
        return Bounds(window.left, bottom, right, window.top)

    def cells(self) -> tuple[Cell, ...]:
        """All cells in reading order."""
        return tuple(product(range(self.rows), range(self.columns)))


def cell_name(cell: Cell) -> str:
    """`B2` for the second page of the second row; after Z comes AA."""
    letters, rest = "", cell[0] + 1
    while rest:
        rest, letter = divmod(rest - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return f"{letters}{cell[1] + 1}"


def fit_grid(drawing: Drawing, paper: Paper, shares: tuple[float, ...] = SHARES) -> Grid:
    """The grid with the fewest pages among a few places of its start, with the cells that are printed.

    Of several such grids it is the one whose page edges cross the fewest words.  A cell is printed when a
    mark lies in it, or when printed pages shut it in on all sides: then it is paper in the middle of a
    piece.
    """
    box = (drawing.bounds() or Bounds(0.0, 0.0, 0.0, 0.0)).grown(BLEED)
    marks = boxed(drawing)
    places = sample_boxed(marks)
    words = tuple(box for mark, box in marks if isinstance(mark, Label))
    grids = candidates(box, paper, shares)
    grid = min(grids, key=lambda grid: (len(touched(grid, places)), cut_words(grid, words)))
    found = frozenset(cell for cell in grid.cells() if _is_marked(marks, grid.share(cell)))
    return _with_printed(grid, found | _shut_in(grid, found))


def cut_words(grid: Grid, words: tuple[Bounds, ...]) -> int:
    """How many boxes of words are crossed by a line on which pages meet."""
    across, down = grid.across - grid.overlap, grid.down - grid.overlap
    return sum(
        (word.left - grid.left) // across != (word.right - grid.left) // across
        or (grid.top - word.top) // down != (grid.top - word.bottom) // down
        for word in words
    )


def whole_cell(box: Bounds, grid: Grid) -> Cell | None:
    """The last cell that shows a box whole; None if there is none."""
    column = int((box.left - grid.left) / (grid.across - grid.overlap))
    row = int((grid.top - box.top) / (grid.down - grid.overlap))
    cell = min(row, grid.rows - 1), min(column, grid.columns - 1)
    window = grid.window(cell)
    whole = box.right <= window.right and box.bottom >= window.bottom
    return cell if whole and box.left >= window.left and box.top <= window.top else None


def _with_printed(grid: Grid, printed: frozenset[Cell]) -> Grid:
    return Grid(
        grid.left,
        grid.top,
        grid.across,
        grid.down,
        grid.overlap,
        grid.rows,
        grid.columns,
        tuple(sorted(printed)),
    )


def candidates(box: Bounds, paper: Paper, shares: tuple[float, ...] = SHARES) -> tuple[Grid, ...]:
    """Grids of the fewest rows and columns that cover a box, begun at parts of the spare room.

    Raises:
        ValueError: They have more than `MOST_PAGES`.
    """
    across, down = paper.room_across, paper.room_up
    rows, columns = rows_and_columns(box, paper)
    if rows * columns > MOST_PAGES:
        raise ValueError(f"{rows} rows of {columns} pages are more than {MOST_PAGES}")
    spare_x = columns * (across - paper.overlap) + paper.overlap - box.width
    spare_y = rows * (down - paper.overlap) + paper.overlap - box.height
    return tuple(
        Grid(box.left - u * spare_x, box.top + v * spare_y, across, down, paper.overlap, rows, columns)
        for u, v in product(shares, shares)
    )


def rows_and_columns(box: Bounds, paper: Paper) -> tuple[int, int]:
    """How many rows and columns of pages cover a box."""
    return (
        _count(box.height, paper.room_up, paper.overlap),
        _count(box.width, paper.room_across, paper.overlap),
    )


def _count(length: float, window: float, overlap: float) -> int:
    """How many windows cover a length [mm]; a millionth of a millimetre too much is rounding."""
    return max(1, ceil((length - overlap) / (window - overlap) - 1e-9))


def touched(grid: Grid, places: np.ndarray) -> frozenset[Cell]:
    """The cells in which some of the places (n x 2) [mm] lie, shut-in cells included."""
    columns = np.floor((places[:, 0] - grid.left) / (grid.across - grid.overlap)).astype(int)
    rows = np.floor((grid.top - places[:, 1]) / (grid.down - grid.overlap)).astype(int)
    numbers = np.clip(rows, 0, grid.rows - 1) * grid.columns + np.clip(columns, 0, grid.columns - 1)
    counts = np.bincount(numbers, minlength=grid.rows * grid.columns)
    found = frozenset(divmod(int(number), grid.columns) for number in np.flatnonzero(counts))
    return found | _shut_in(grid, found)


def _is_marked(marks: tuple[Boxed, ...], share: Bounds) -> bool:
    return any(box.overlaps(share) and _reaches(mark, share) for mark, box in marks)


def _reaches(mark: Mark, share: Bounds) -> bool:
    """Whether a mark whose box touches a cell is really in it; words and filled shapes count by their box."""
    return not isinstance(mark, Stroke) or bool(crop_path(mark.path, share))


def _shut_in(grid: Grid, found: frozenset[Cell]) -> frozenset[Cell]:
    """The bare cells from which no way over bare cells leads out of the grid."""
    bare = set(grid.cells()) - found
    edge = [cell for cell in bare if _is_outer(grid, cell)]
    while edge:
        cell = edge.pop()
        if cell in bare:
            bare.discard(cell)
            edge.extend(near for near in _neighbours(cell) if near in bare)
    return frozenset(bare)


def _is_outer(grid: Grid, cell: Cell) -> bool:
    return cell[0] in (0, grid.rows - 1) or cell[1] in (0, grid.columns - 1)


def _neighbours(cell: Cell) -> tuple[Cell, ...]:
    row, column = cell
    return (row - 1, column), (row + 1, column), (row, column - 1), (row, column + 1)


def sample(drawing: Drawing, spacing: float = SPACING) -> np.ndarray:
    """Points that stand for a drawing (n x 2) [mm], no more than `spacing` apart along its strokes."""
    return sample_boxed(boxed(drawing), spacing)


def sample_boxed(marks: Iterable[Boxed], spacing: float = SPACING) -> np.ndarray:
    """The same for marks whose boxes are known."""
    points = [place for mark, box in marks for place in _places(mark, box, spacing)]
    return np.array(points or [(0.0, 0.0)])


def _places(mark: Mark, box: Bounds, spacing: float) -> list[tuple[float, float]]:
    if isinstance(mark, Dot):
        return [(mark.at.x, mark.at.y)]
    if isinstance(mark, Label):
        return [(x, y) for x in _steps(box.left, box.right) for y in _steps(box.bottom, box.top)]
    return _along(mark.path, spacing)


def _along(path: Path, spacing: float) -> list[tuple[float, float]]:
    return [place for segment in path.segments for place in _segment_places(segment, spacing)]


def _segment_places(segment: Segment, spacing: float) -> list[tuple[float, float]]:
    if isinstance(segment, Line):
        return _line_places(segment.start, segment.end, spacing)
    count = _count_places(segment.length(), spacing)
    points = [segment.at(k / count) for k in range(count + 1)]
    return [(point.x, point.y) for point in points]


def _line_places(start: Point, end: Point, spacing: float) -> list[tuple[float, float]]:
    """Most lines are straight, and there are thousands of places: these are reckoned without a point each."""
    count = _count_places(start.distance(end), spacing)
    across, up = (end.x - start.x) / count, (end.y - start.y) / count
    return [(start.x + across * k, start.y + up * k) for k in range(count + 1)]


def _count_places(length: float, spacing: float) -> int:
    return min(MOST_PLACES, max(1, ceil(length / spacing)))


def _steps(low: float, high: float) -> list[float]:
    count = max(1, ceil((high - low) / SPACING_IN_WORDS))
    return [low + (high - low) * k / count for k in range(count + 1)]
