"""The small drawing of a garment on its card: the pieces side by side, as they are cut out."""

from __future__ import annotations

from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from littlefold.drawing import plain
from littlefold.geometry import Affine, Bounds, Point, Vector
from littlefold.sheet.svg import outline_commands
from littlefold.web.asked import understand

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.pattern.model import Piece
    from littlefold.web.room import Room

BETWEEN = 30.0
"""Between one piece and the next [mm]."""
BARE = 12.0
MOST_PIECES = 4
ORIGIN = Point(0.0, 0.0)
STYLE = (
    "path{fill:#fffdf7;stroke:#2b2a28;stroke-width:1.6px;vector-effect:non-scaling-stroke;stroke-linejoin:round}"
    ".stitch{fill:none;stroke:#8b8577;stroke-width:1px;stroke-dasharray:4 3}"
)


def small_drawing(room: Room, name: str) -> str:
    """The pieces of a recipe, small."""
    recipe = room.recipe(name)
    assert recipe is not None, name  # noqa: S101 - the route has looked
    outcome = room.fulfil(understand(recipe, {}, room.preferences).wish)
    traced = {piece.name for piece in outcome.draft.pieces if piece.made_as == "traced"}
    pieces = [piece for piece in outcome.pattern.pieces if piece.name in traced] or outcome.pattern.pieces
    return _row(pieces[:MOST_PIECES], recipe.title)


def _row(pieces: list[Piece] | tuple[Piece, ...], title: str) -> str:
    marks: list[str] = []
    across, tall = 0.0, 1.0
    for piece in pieces:
        box = piece.unfolded.cut.bounds()
        marks.extend(_outlines(piece, Affine.translation(Vector(across - box.left, -box.top))))
        across, tall = across + box.width + BETWEEN, max(tall, box.height)
    view = Bounds(0.0, 0.0, max(across - BETWEEN, 1.0), tall).grown(BARE)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view.left:.1f} {view.left:.1f} {view.width:.1f} '
        f'{view.height:.1f}"><title>{escape(plain(title))}</title><style>{STYLE}</style>{"".join(marks)}</svg>'
    )


def _outlines(piece: Piece, move: Affine) -> Iterator[str]:
    whole = piece.unfolded
    yield f'<path d="{outline_commands(whole.cut.transformed(move), ORIGIN)}"/>'
    yield f'<path class="stitch" d="{outline_commands(whole.stitch.transformed(move), ORIGIN)}"/>'
