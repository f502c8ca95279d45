"""Room to grow, per measurement."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.body.register import NAMES
from littlefold.body.room import Room, room_to_grow, tucks
from littlefold.body.stature import stature_at
from littlefold.problem import Problem


def girl_of_four() -> Room:
    card = Measurements.of({"stature": stature_at(48, "girl").median}, age_months=48, sex="girl")
    found = room_to_grow(card, 60)
    assert isinstance(found, Room)
    return found


def test_a_year_at_four_is_a_size_and_more_in_the_leg_than_in_the_chest() -> None:
    room = girl_of_four()
    # WHO: 102.73 cm at 48 months, 109.42 at 60; a label covers 3 cm to either side.
    assert (room.size_now, room.size_then) == (104, 110)
    assert room.size_at_most >= room.size_then
    # standards.md 2.1: for 6 cm of height chest 2.49, outside leg (waist height) 4.31, arm 2.17 cm; here 6.7 cm.
    assert room.gain("chest").expected == pytest.approx(24.9 * 6.69 / 6, rel=0.25)
    assert room.gain("outside_leg").expected == pytest.approx(43.1 * 6.69 / 6, rel=0.2)
    assert room.gain("arm").expected == pytest.approx(21.7 * 6.69 / 6, rel=0.2)


def test_gains_are_whole_and_never_less_than_nothing() -> None:
    room = girl_of_four()
    assert tuple(gain.name for gain in room.gains) == NAMES
    assert all(0 <= gain.expected < gain.most for gain in room.gains)
    assert room.gain("chest").is_width
    assert not room.gain("arm").is_width
    with pytest.raises(KeyError):
        room.gain("nose")


def test_tucks_hold_the_gain() -> None:
    assert [tucks(gain, 10) for gain in (0, -5, 1, 20, 20.1, 40)] == [0, 0, 1, 1, 2, 2]
    # amberlanemarquis.blogspot.com, a growth tuck hem (2014): n tucks of 1/2 in take n in.
    assert [tucks(n * 25.4, 25.4 / 2) for n in (1, 2, 3)] == [1, 2, 3]
    with pytest.raises(ValueError, match="depth"):
        tucks(10, 0)


def test_without_an_age_there_is_no_forecast() -> None:
    found = room_to_grow(Measurements.of({"chest": 500}), 60)
    assert isinstance(found, Problem)
