"""What is asked of single pieces: tilt within the tolerance, chosen notches, kept places; and which layer to cut."""

from __future__ import annotations

from dataclasses import replace
from math import radians, sin

import pytest
from garments import dress, rectangle, ring

from littlefold.geometry import Point
from littlefold.lay.asked import MOST_TILT, Wished, matched, pinned, tilted
from littlefold.lay.chalk import chalk_table, words_for
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.piece import LayPiece
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way
from littlefold.problem import Problem


def as_tilted(most: float) -> tuple[LayPiece, ...]:
    found = tilted(dress(), most)
    assert not isinstance(found, Problem)
    return found


def test_a_tilted_piece_ends_no_further_off_its_grain_than_asked() -> None:
    for piece in as_tilted(3.0):
        left, _, right, _ = piece.whole.bounds
        assert (right - left) * sin(radians(piece.tilt)) == pytest.approx(3.0, rel=1e-3)
        assert piece.angles == (0.0, piece.tilt, -piece.tilt)


@pytest.mark.parametrize("most", [-1.0, MOST_TILT + 0.1])
def test_more_tilt_than_the_trade_allows_is_refused(most: float) -> None:
    found = tilted(dress(), most)
    assert isinstance(found, Problem)
    assert found.code == "tilt-too-large"


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
def test_lays_with_tilt_are_verified_and_pairs_keep_together(way: Way) -> None:
    prepared = prepare(as_tilted(3.0), Cloth(1120), way)
    assert isinstance(prepared, Prepared)
    shown = list(lays(prepared, Effort(steps=400)))
    assert all(verify(lay) == () for lay in shown)
    for lay in shown:
        for piece in lay.pieces:
            tilts = {one.degrees for one in lay.placements if one.piece == piece.name and not one.half}
            assert len(tilts) <= 1 or not tilts & {piece.tilt, -piece.tilt}
    assert all(one.degrees == 0.0 for lay in shown for one in lay.placements if one.half)


def test_a_pair_of_which_one_is_tilted_is_found() -> None:
    prepared = prepare(as_tilted(3.0), Cloth(1120), Way.OPEN)
    assert isinstance(prepared, Prepared)
    lay = next(lays(prepared, Effort(0)))
    first = next(k for k, one in enumerate(lay.placements) if one.piece == "back")
    tilt = lay.piece("back").tilt
    places = tuple(replace(one, degrees=tilt) if k == first else one for k, one in enumerate(lay.placements))
    assert "tilted-apart" in {problem.code for problem in verify(replace(lay, placements=places))}


def test_what_meets_the_stripes_is_not_tilted() -> None:
    pieces = tuple(replace(piece, match=Point(60.0, 40.0)) for piece in as_tilted(3.0))
    prepared = prepare(pieces, Cloth(1120, repeat=Repeat(along=36.0)), Way.OPEN)
    assert isinstance(prepared, Prepared)
    lay = list(lays(prepared, Effort(200)))[-1]
    assert verify(lay) == ()
    assert {one.degrees for one in lay.placements} == {0.0}


def test_two_pieces_meet_the_stripes_at_the_notches_that_were_chosen() -> None:
    notched = tuple(
        replace(
            rectangle(name, 300, 120),
            notches=((Point(30.0, 0.0), Point(30.0, -6.0)), (Point(at, 0.0), Point(at, -6.0))),
            match=Point(30.0, 0.0),
        )
        for name, at in (("front", 200.0), ("back", 170.0))
    )
    chosen = matched(notched, (("front", 2), ("back", 2)))
    assert not isinstance(chosen, Problem)
    prepared = prepare(chosen, Cloth(1120, repeat=Repeat(along=50.0)), Way.OPEN)
    assert isinstance(prepared, Prepared)
    lay = list(lays(prepared, Effort(100)))[-1]
    phases = [one.affine.apply(lay.piece(one.piece).notches[1][0]).x % 50.0 for one in lay.placements]
    assert all(min(phase, 50.0 - phase) < 0.01 for phase in phases)
    assert isinstance(matched(notched, (("front", 3),)), Problem)
    assert isinstance(matched(notched, (("sleeve", 1),)), Problem)
    free = matched(notched, (("front", 0),))
    assert not isinstance(free, Problem)
    assert free[0].match is None


def test_a_wish_for_a_place_puts_the_tail_of_the_arrow_there() -> None:
    for way in (Way.OPEN, Way.FOLDED):
        pins = pinned(dress(), way, (Wished("skirt_front", Point(150.0, 450.0)),))
        assert not isinstance(pins, Problem)
        prepared = prepare(dress(), Cloth(1120), way, pins=pins)
        assert isinstance(prepared, Prepared)
        lay = next(lays(prepared, Effort(0)))
        row = next(row for row in chalk_table(lay) if row.number == 3)
        assert row.start.x == pytest.approx(150.0)
        if way is Way.OPEN:
            assert row.start.y == pytest.approx(450.0)
    assert isinstance(pinned(dress(), Way.OPEN, (Wished("hood", Point(0, 0)),)), Problem)


def test_a_place_off_the_cut_end_is_refused_in_words() -> None:
    pins = pinned(dress(), Way.OPEN, (Wished("skirt_front", Point(1.0, 450.0)),))
    assert not isinstance(pins, Problem)
    refused = prepare(dress(), Cloth(1120), Way.OPEN, pins=pins)
    assert isinstance(refused, tuple)
    assert [one.code for one in refused] == ["pin-not-possible"]


def test_a_single_piece_that_is_not_its_own_mirror_image_names_the_layer_to_cut() -> None:
    """Right sides together the lower layer shows its face: as drawn there, mirrored from the upper one."""
    slanted = LayPiece("flap", ring([(0, 0), (200, 0), (150, 120), (0, 60)]), 1, number=1)
    prepared = prepare((slanted,), Cloth(1120), Way.FOLDED)
    assert isinstance(prepared, Prepared)
    for lay in lays(prepared, Effort(60)):
        (one,) = lay.placements
        mirrored = one.sign.along * one.sign.across < 0
        assert words_for(lay, one) == ("upper layer only" if mirrored else "lower layer only")
    even = prepare((rectangle("tab", 90, 40),), Cloth(1120), Way.FOLDED)
    assert isinstance(even, Prepared)
    lay = next(lays(even, Effort(0)))
    assert words_for(lay, lay.placements[0]) == "one layer only"
