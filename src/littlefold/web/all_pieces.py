"""All pieces of a garment beside each other on one sheet, in rows, as one lays them out to look at them."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from littlefold.drawing import plain
from littlefold.web.piece_marks import cutting, group, mark, number, stitching, whole

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.geometry import Bounds
    from littlefold.pattern.model import Piece

ALL = "all-pieces"
"""What a link calls this sheet; no sheet of a recipe can be called so, for the hyphen."""
BESIDE = 40.0
"""Bare paper between pieces [mm]."""
TITLE = 60.0
"""Paper under a piece for its name [mm]."""
SIGN = 14.0
"""Breadth of a sign of a piece's name: half of the largest letters in `static/table.css` [mm]."""
WIDER = 1.5
"""The sheet is about so many times as wide as high."""
EMPTY = (100.0, 100.0)


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece, and where the lower left corner of what it covers comes to lie; `top` is counted downwards [mm]."""

    piece: Piece
    box: Bounds
    left: float
    top: float


def draw_all(pieces: tuple[Piece, ...], title: str) -> str:
    """All pieces as an SVG element, without findings; a piece on the fold with its other half."""
    laid = tuple(_in_rows(pieces))
    wide = max((_right(one) for one in laid), default=EMPTY[0]) + BESIDE
    high = max((one.top + one.box.height + TITLE for one in laid), default=EMPTY[1])
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="sheet-drawing" role="img" '
        f'viewBox="{-BESIDE:g} {-BESIDE:g} {number(wide + BESIDE)} {number(high + BESIDE)}">'
        f"<title>{escape(plain(f'{title}: all pieces'))}</title>{''.join(map(_drawn, laid))}</svg>"
    )


def _right(laid: _Laid) -> float:
    return laid.left + (laid.box.width + _breadth(laid.piece, laid.box)) / 2


def _in_rows(pieces: tuple[Piece, ...]) -> Iterator[_Laid]:
    boxes = [(piece, piece.unfolded.cut.bounds()) for piece in pieces]
    area = sum((_breadth(piece, box) + BESIDE) * (box.height + TITLE) for piece, box in boxes)
    most = max(sqrt(area * WIDER), *(_breadth(piece, box) for piece, box in boxes), 0.0)
    left = top = row = 0.0
    for piece, box in boxes:
        breadth = _breadth(piece, box)
        if left and left + breadth > most:
            left, top, row = 0.0, top + row, 0.0
        yield _Laid(piece, box, left + (breadth - box.width) / 2, top)
        left += breadth + BESIDE
        row = max(row, box.height + TITLE)


def _breadth(piece: Piece, box: Bounds) -> float:
    """The paper that a piece takes in its row: its name under it may be the broader [mm]."""
    return max(box.width, SIGN * len(piece.title))


def _drawn(laid: _Laid) -> str:
    piece, box = laid.piece, laid.box
    over, down = number(laid.left - box.left), number(laid.top + box.top)
    edges = (mark(edge.path, "line", f"{piece.name}.{edge.name}") for edge in piece.edges)
    words = (
        f'<text class="piece-title" x="{number((box.left + box.right) / 2)}" y="{number(TITLE / 2 - box.bottom)}">'
        f"{escape(plain(piece.title))}</text>"
    )
    groups = (
        group("wholes", whole(piece)),
        group("allowances", cutting(piece)),
        group("stitching", stitching(piece)),
        group("draft", edges),
    )
    return f'<g transform="translate({over} {down})">{"".join(groups)}{words}</g>'
