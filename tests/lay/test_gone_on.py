"""A search that goes on from a lay that was found before."""

from __future__ import annotations

from dataclasses import replace

import pytest
from garments import dress, rectangle, romper

from littlefold.geometry import Point
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.lay import Placement
from littlefold.lay.nofit import PLAIN
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.stored import read_stored, stored
from littlefold.lay.ways import Way

SAME = 0.01
"""Settling anew moves the pieces by less than this [mm]."""


def asked(way: Way, **more: object) -> Prepared:
    pieces = dress() if way is Way.FOLDED else romper()
    found = prepare(pieces, Cloth(1400.0, **more), way)  # type: ignore[arg-type]
    assert isinstance(found, Prepared), found
    return found


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED, Way.PARTLY, Way.TWO_FOLDS])
def test_the_first_lay_is_then_the_one_that_was_found(way: Way) -> None:
    prepared = asked(way)
    found = list(lays(prepared, Effort(2000)))[-1]
    kept = read_stored(stored(found))
    assert not isinstance(kept, tuple)
    first, *others = lays(prepared, Effort(200, seed=7), kept.placements)
    assert first.length == pytest.approx(found.length, abs=SAME)
    assert all(one.length < first.length for one in others)


def test_pieces_that_are_held_stay_where_they_are() -> None:
    pieces = (rectangle("held", 300, 200), rectangle("free", 400, 300), rectangle("other", 250, 350))
    pin = Placement("held", half=False, layers=1, degrees=0.0, sign=PLAIN, at=Point(150.0, 500.0))
    prepared = prepare(pieces, Cloth(1120.0), Way.OPEN, pins=[pin])
    assert isinstance(prepared, Prepared)
    found = list(lays(prepared, Effort(500)))[-1]
    again = next(lays(prepared, Effort(0), found.placements))
    assert [one.at for one in again.placements if one.piece == "held"] == [Point(150.0, 500.0)]
    moved = tuple(
        replace(one, at=Point(600.0, 10.0)) if one.piece == "held" else one for one in found.placements
    )
    assert prepared.question.layout(moved) is None


def test_what_answers_another_question_is_not_gone_on_from() -> None:
    prepared = asked(Way.OPEN)
    found = list(lays(prepared, Effort(0)))[-1]
    question = prepared.question
    assert question.layout(found.placements) is not None
    assert question.layout(found.placements[:-1]) is None
    assert question.layout((*found.placements, found.placements[0])) is None
    assert question.layout([replace(one, piece="sleeve") for one in found.placements]) is None
    striped = asked(Way.OPEN, repeat=Repeat(along=40.0))
    assert (
        next(lays(striped, Effort(0), found.placements)).length > 0
    )  # verified: what is off the stripes is not shown
