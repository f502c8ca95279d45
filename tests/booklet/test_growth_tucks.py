"""The growth tucks that hold a child's growth: counted, and said in the maker's units and language."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from littlefold.body.measurements import Measurements
from littlefold.body.register import REGISTER, register_in
from littlefold.body.room import TUCKED, Gain, Room, room_to_grow
from littlefold.booklet.card_sheet import CardSheet, sheet_data
from littlefold.booklet.growth_picture import Taken
from littlefold.booklet.growth_tucks import growth_tucks, tucks_said
from littlefold.draft.sentence import Speech

CARD = Measurements.of({"stature": 1027.0, "chest": 560.0}, age_months=48.0, sex="girl", nickname="Mina")


@pytest.fixture
def room() -> Room:
    """Of a girl of four, for a year, in which back, arm and leg grow by 1, 2.5 and 4.1 cm."""
    found = room_to_grow(CARD, 60.0)
    assert isinstance(found, Room)
    gains = {"back_waist": 10.0, "arm": 25.0, "inside_leg": 41.0}
    named = (replace(gain, expected=gains.get(gain.name, gain.expected)) for gain in found.gains)
    return replace(found, gains=tuple(named))


def test_tucks_take_twice_their_depth(room: Room) -> None:
    """1 cm deep they take 2 cm: 1, 2 and 3 of them; 1/2 in deep they take 1 in: 1, 1 and 2."""
    found = growth_tucks(room, "cm")
    assert (found.depth, found.counts) == (10.0, (("back_waist", 1), ("arm", 2), ("inside_leg", 3)))
    found = growth_tucks(room, "in")
    assert (found.depth, found.counts) == (12.7, (("back_waist", 1), ("arm", 1), ("inside_leg", 2)))


def test_they_are_said_in_the_makers_units_and_language(room: Room) -> None:
    back, arm, leg = (REGISTER[name].title for name in TUCKED)
    assert tucks_said(room, Speech()).endswith(f"growth tucks 1 cm deep: {back} 1, {arm} 2, {leg} 3.")
    _, arm, leg = (register_in("de")[name].title for name in TUCKED)
    said = tucks_said(room, Speech("in", None, "de"))
    assert "1/2 Zoll" in said
    assert f"{arm} 1, {leg} 2." in said


def test_lengths_that_do_not_grow_ask_for_none(room: Room) -> None:
    grown = replace(room, gains=tuple(Gain(gain.name, 0.0, gain.most) for gain in room.gains))
    assert "by nothing" in tucks_said(grown, Speech())
    assert "um nichts" in tucks_said(grown, Speech(language="de"))


def test_the_card_sheet_says_the_same(room: Room) -> None:
    day, german = date(2026, 11, 20), Speech(language="de")
    data = sheet_data(CardSheet((Taken(day, CARD),), room, (), day, german))
    assert data["words"]["tucks"] == tucks_said(room, german)
