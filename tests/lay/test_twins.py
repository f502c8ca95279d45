from __future__ import annotations

from garments import bodice, dress, rectangle, ring

from littlefold.lay.cloth import Cloth
from littlefold.lay.piece import LayPiece
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.twins import twinned
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way

FRONT = LayPiece("front", ring(bodice(70)), 1, on_fold=True)
BACK = LayPiece("back", ring(bodice(25)), 1, on_fold=True)


def test_front_and_back_that_differ_at_the_neck_are_cut_together() -> None:
    found = twinned((FRONT, BACK))
    assert [(piece.name, piece.copies) for piece in found.pieces] == [("back", 2)]
    assert found.notes[0].place.piece == "front"
    prepared = prepare(found.pieces, Cloth(900), Way.FOUR_LAYERS)
    assert isinstance(prepared, Prepared)
    lay = list(lays(prepared, Effort(steps=50)))[-1]
    assert verify(lay) == ()
    assert [(p.half, p.layers) for p in lay.placements] == [(True, 4)]


def test_pieces_of_other_shapes_are_left_alone() -> None:
    wide = LayPiece("wide", ring([(0, 0), (240, 0), (240, 185), (0, 185)]), 1, on_fold=True)
    for pieces in ((FRONT, wide), dress(), (FRONT, rectangle("tab", 50, 20))):
        assert twinned(pieces).pieces == pieces
        assert twinned(pieces).notes == ()
