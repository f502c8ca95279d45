"""The verification must find every fault that costs cloth, so each is made on purpose in a sound lay."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import pytest
from garments import dress, rectangle

from littlefold.geometry import Point
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.lay import Lay, Placement
from littlefold.lay.nofit import PLAIN, Sign
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.verify import CHECKS, verify
from littlefold.lay.ways import Way

TURNED, ACROSS = Sign(-1, -1), Sign(1, -1)


@lru_cache
def sound(way: Way = Way.FOLDED, *, nap: bool = False) -> Lay:
    prepared = prepare(dress(), Cloth(1120, nap=nap), way)
    assert isinstance(prepared, Prepared)
    return next(lays(prepared, Effort(steps=0)))


def changed(lay: Lay, piece: str, **new: object) -> Lay:
    number = next(k for k, placement in enumerate(lay.placements) if placement.piece == piece)
    placements = list(lay.placements)
    placements[number] = replace(placements[number], **new)  # type: ignore[arg-type]
    return replace(lay, placements=tuple(placements))


def codes(lay: Lay) -> set[str]:
    return {problem.code for problem in verify(lay)}


@pytest.mark.parametrize("way", [Way.FOLDED, Way.OPEN, Way.PARTLY])
def test_a_sound_lay_has_no_problem(way: Way) -> None:
    assert verify(sound(way)) == ()
    assert len(CHECKS) == 7


def test_a_piece_moved_on_another_overlaps() -> None:
    lay = sound()
    other = next(p for p in lay.placements if p.piece == "sleeve")
    assert "cuts-overlap" in codes(changed(lay, "pocket", at=other.at))


def test_the_gap_is_measured() -> None:
    pieces = (rectangle("a", 100, 50), rectangle("b", 100, 50))
    cloth = Cloth(1000, selvedge=0)
    prepared = prepare(pieces, cloth, Way.OPEN)
    assert isinstance(prepared, Prepared)

    def apart(distance: float) -> Lay:
        places = (("a", 0.0), ("b", 50 + distance))
        placements = tuple(
            Placement(n, half=False, layers=1, degrees=0.0, sign=PLAIN, at=Point(0, y)) for n, y in places
        )
        return Lay(cloth, prepared.spread, pieces, placements, 100.0, 3.0, "hand")

    assert codes(apart(3.0)) == set()
    assert codes(apart(2.9)) == {"cuts-overlap"}


def test_a_piece_off_the_cloth_is_found() -> None:
    assert "cut-off-the-cloth" in codes(changed(sound(), "pocket", at=Point(-5.0, 100.0)))


def test_a_piece_off_the_fold_by_two_hundredths_is_found() -> None:
    lay = sound()
    front = next(p for p in lay.placements if p.piece == "front")
    assert "not-on-the-fold" in codes(changed(lay, "front", at=Point(front.at.x, 0.02)))
    assert "not-on-the-fold" not in codes(changed(lay, "front", at=Point(front.at.x, 0.005)))


def test_a_fold_piece_on_the_selvedge_is_found() -> None:
    lay = sound()
    front = next(p for p in lay.placements if p.piece == "front")
    at_selvedge = changed(lay, "front", at=Point(front.at.x, lay.spread.height), sign=ACROSS)
    assert "not-on-the-fold" in codes(at_selvedge)


def test_a_piece_off_grain_is_found() -> None:
    assert "off-grain" in codes(changed(sound(), "pocket", degrees=3.0))


def test_a_napped_piece_upside_down_is_found() -> None:
    lay = sound(nap=True)
    assert "upside-down" in codes(changed(lay, "pocket", sign=TURNED))


def test_a_napped_piece_whose_arrow_points_back_to_the_cut_end_is_found() -> None:
    """However the piece came to be upside down: not by its sign, but drawn the other way up."""
    lay = sound(nap=True)
    arrow = (Point(50.0, 40.0), Point(20.0, 40.0))
    pieces = tuple(replace(p, grain=arrow) if p.name == "pocket" else p for p in lay.pieces)
    assert "upside-down" in codes(replace(lay, pieces=pieces))
    assert "upside-down" not in codes(replace(sound(), pieces=pieces))


def test_two_left_backs_are_found() -> None:
    lay = sound(Way.OPEN)
    first, second = (p for p in lay.placements if p.piece == "back")
    assert first.sign.along * first.sign.across == -second.sign.along * second.sign.across
    assert "same-hand-twice" in codes(changed(lay, "back", sign=second.sign))


def test_a_missing_piece_and_a_piece_twice_are_found() -> None:
    lay = sound()
    assert "wrong-number" in codes(replace(lay, placements=lay.placements[1:]))
    assert "wrong-number" in codes(replace(lay, placements=(*lay.placements, lay.placements[0])))


def test_stripes_that_do_not_meet_are_found() -> None:
    piece = replace(rectangle("a", 100, 50), match=Point(10.0, 0.0))
    cloth = Cloth(1000, selvedge=0, repeat=Repeat(along=40.0))
    prepared = prepare((piece,), cloth, Way.OPEN)
    assert isinstance(prepared, Prepared)
    lay = next(lays(prepared, Effort(steps=0)))
    assert codes(lay) == set()
    at = lay.placements[0].at
    assert codes(changed(lay, "a", at=Point(at.x + 1.0, at.y))) >= {"stripes-do-not-meet"}
