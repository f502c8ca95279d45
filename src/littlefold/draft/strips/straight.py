"""Straight pieces in one line: rectangles, bias strips, bands.

 tl ---- top ---- tr        Drawn upright on a sheet of the piece's own name, its lower left corner at the
 |                 |        start.  Cut on the fold, the half is drawn, its left edge on the fold.  The edges
left             right      are seams (the fold a fold) until an `edges` line says otherwise.
 |                 |
 bl -- bottom --- br
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from littlefold.draft.drawn import named, pencil, word
from littlefold.draft.model import EdgeKind, Said
from littlefold.draft.pieces import StatedEdge
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.laid_down import lay_down
from littlefold.draft.shapes.shape import Shape, ShapeEdge
from littlefold.draft.shapes.taken import on_sheet
from littlefold.draft.stating import stated_piece
from littlefold.draft.steps import write_step
from littlefold.draft.worn import sewn_length
from littlefold.geometry import Path, Point, Vector
from littlefold.problem import Number, say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.draft.pieces import StatedPiece
    from littlefold.recipe import tree
    from littlefold.recipe.recipe import Written

MadeAs = Literal["rectangle", "bias", "band"]


def rectangle(line: Written, desk: Desk) -> None:
    """A piece of a width and a height; on the fold, half the width is drawn."""
    step: tree.PieceRectangle = line.statement
    width, height = pencil(step.width, desk), pencil(step.height, desk)
    stated = _begun(line, "rectangle", desk)
    drawn = width.value / 2 if stated.cutting.on_fold else width.value
    words = {"width": width.said, "height": height.said, "drawn": Said("length", drawn)}
    _draw(line, stated, (drawn, height.value), words, width, desk)


def bias(line: Written, desk: Desk) -> None:
    """A strip whose grain runs at half a right angle to it; on the fold, half the length is drawn."""
    step: tree.PieceBias = line.statement
    length, width = pencil(step.length, desk), pencil(step.width, desk)
    stated = _begun(line, "bias", desk)
    stated.grain = Vector(1, 1)
    drawn = length.value / 2 if stated.cutting.on_fold else length.value
    words = {"length": length.said, "width": width.said, "drawn": Said("length", drawn)}
    _draw(line, stated, (drawn, width.value), words, length, desk)


def band(line: Written, desk: Desk) -> None:
    """A strip as long as a run or line as drawn, what pleats fold away taken off.

    Lines are drawn as halves where their piece lies on the fold.  So a band on the fold is drawn as long as the
    run, and is twice as long when it is opened out, as the run is.
    """
    step: tree.PieceBand = line.statement
    width, length = pencil(step.width, desk), sewn_length(step.along, desk)
    stated = _begun(line, "band", desk)
    words = {"along": named(step.along), "length": Said("length", length), "width": width.said}
    _draw(line, stated, (length, width.value), words, width, desk)


def _begun(line: Written, made_as: MadeAs, desk: Desk) -> StatedPiece:
    """The piece in the making, on a sheet of its own name."""
    return stated_piece(line, line.statement.name.text, desk, made_as=made_as)


def _draw(  # noqa: PLR0917 - what it is, how large, what is said of it
    line: Written,
    stated: StatedPiece,
    size: tuple[float, float],
    words: Mapping[str, Said],
    distance: Distance,
    desk: Desk,
) -> None:
    """Draws the strip on its own sheet, writes down the step and begins the piece."""
    shape = _upright(line.statement.name, *size)
    lay_down(line.statement.name, shape, desk)
    stated.usual.extend(_usual(stated, shape, desk))
    fold = word(stated.made_as if stated.cutting.on_fold else "none")
    said = {"name": named(stated.name), **words, "fold": fold}
    with on_sheet(stated.sheet, desk):
        write_step(line, stated.name, f"piece.{stated.made_as}", said, desk, distance)
    desk.stated = stated


def _upright(name: tree.Name, width: float, height: float) -> Shape:
    """The rectangle, counter-clockwise from its lower left corner.

    Raises:
        Refusal: It has no width or no height.
    """
    if min(width, height) <= 0:
        raise Refusal(
            "strip-without-size",
            say(
                "{name} would be {width} by {height}. Both have to be more than nothing.",
                name=str(name),
                width=f"{width / 10:.1f} cm",
                height=f"{height / 10:.1f} cm",
            ),
            name.spot,
            (Number("width", width), Number("height", height)),
        )
    points = {"bl": Point(0, 0), "br": Point(width, 0), "tr": Point(width, height), "tl": Point(0, height)}
    ways = {"bottom": ("bl", "br"), "right": ("br", "tr"), "top": ("tr", "tl"), "left": ("tl", "bl")}
    edges = (ShapeEdge(edge, Path.line_through(points[a], points[b])) for edge, (a, b) in ways.items())
    return Shape(tuple(edges), points)


def _usual(stated: StatedPiece, shape: Shape, desk: Desk) -> list[StatedEdge]:
    """The edges of a strip of which nothing is said: seams, and the fold."""
    kinds = {"left": EdgeKind.FOLD} if stated.cutting.on_fold else {}
    return [
        StatedEdge(edge.name, kind, edge.path, desk.allowances[kind.value], stated.spot)
        for edge in shape.edges
        for kind in (kinds.get(edge.name, EdgeKind.SEAM),)
    ]
