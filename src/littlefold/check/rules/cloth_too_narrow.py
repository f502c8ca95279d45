"""The piece as cut fits the width of the cloth."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.across import extent, square_to_grain
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "cloth-too-narrow"


@rule(
    code=CODE,
    title="Every piece fits across the cloth with its grain lengthwise",
    why="A piece wider than the cloth cannot be cut, however much of the cloth is bought.",
    source="cloth bought to the exact length and the piece could not be cut from it (Jayme Grace 2008/11)",
)
def cloth_too_narrow(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Pieces of the main cloth wider across the grain, unfolded, than the cloth."""
    cloth = circumstances.cloth_width
    if cloth is None:
        return
    for piece in pattern.pieces:
        wide = width_across_grain(piece)
        if piece.cloth == "main" and wide > cloth:
            yield found(
                CODE,
                say(
                    'The piece "{piece}" is {wide} wide across the grain; the cloth is {cloth} wide.',
                    piece=piece.name,
                    wide=cm(wide),
                    cloth=cm(cloth),
                ),
                say(
                    "Take wider cloth, turn the grain where the cloth allows it, or put a seam into the piece."
                ),
                place=on_piece(piece),
                numbers=(mm("piece", wide), mm("cloth", cloth)),
            )


def width_across_grain(piece: Piece) -> float:
    """The width of the whole cut piece when its grain stands upright [mm]."""
    return extent(piece.unfolded.cut, square_to_grain(piece))
