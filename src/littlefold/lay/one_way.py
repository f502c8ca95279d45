"""Which pieces must lie the same way up as all others, and of which a left and a right are the same thing.

A nap or a print with an up and a down binds every piece, and so do uneven stripes across the cloth: upside down they are
read backwards.  Uneven stripes along the cloth have a left and a right instead.  They run on from piece to piece round
the body where every piece that meets them lies the same way up, and a copy is cut as its mirror image where it is worn
as one and nowhere else; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.lay.piece import mirrors_to_itself

if TYPE_CHECKING:
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.piece import LayPiece


def lies_one_way(piece: LayPiece, cloth: Cloth) -> bool:
    """Whether a piece must not be turned end for end on this cloth."""
    return cloth.nap or piece.one_way or shows_way_up(piece, cloth)


def shows_way_up(piece: LayPiece, cloth: Cloth) -> bool:
    """Whether uneven stripes would tell that a piece is turned end for end."""
    return (cloth.repeat is not None and cloth.repeat.uneven_along) or runs_on(piece, cloth)


def runs_on(piece: LayPiece, cloth: Cloth) -> bool:
    """Whether uneven stripes along the cloth meet those of the neighbours in this piece."""
    is_held = piece.match is not None and not (piece.bias or piece.crossgrain)
    return is_held and cloth.repeat is not None and cloth.repeat.uneven_across


def may_be_turned_over(piece: LayPiece, cloth: Cloth) -> bool:
    """Whether a copy and its mirror image are the same thing: by the cloth, or by the shape of the piece."""
    if runs_on(piece, cloth):
        return False
    may_turn = not lies_one_way(piece, cloth)
    return cloth.two_faced or mirrors_to_itself(piece.whole, may_turn=may_turn)
