"""The card's value, and the register of names."""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.register import NAMES, REGISTER

# Issue 2, section 5: the names of the data contract, in this order.
CONTRACT = [
    "stature", "head", "neck", "chest", "waist", "hip", "back_waist", "front_waist", "across_back", "shoulder",
    "scye_depth", "upper_arm", "arm", "wrist", "fist", "thigh", "knee", "calf", "ankle", "foot", "body_rise",
    "inside_leg", "outside_leg",
]  # fmt: skip


def test_the_register_holds_exactly_the_names_of_the_contract() -> None:
    assert list(NAMES) == CONTRACT


@pytest.mark.parametrize("name", CONTRACT)
def test_every_measurement_is_explained_for_a_child_that_stands_and_one_that_lies(name: str) -> None:
    found = REGISTER[name]
    assert found.name == name
    assert found.how_standing.endswith((".", ")"))
    assert found.how_lying.endswith(".")
    assert found.how_standing != found.how_lying
    assert found.iso_term
    assert found.clause_note in {"from memory", "as secondary sources quote it"}


# standards.md 3.1, clauses of ISO 8559-1:2017 as its secondary sources use them.
@pytest.mark.parametrize(
    ("name", "clause"),
    [("stature", "5.1.1"), ("neck", "5.3.2"), ("chest", "5.3.4"), ("waist", "5.3.10"), ("hip", "5.3.13"),
     ("upper_arm", "5.3.16"), ("back_waist", "5.4.5"), ("inside_leg", "5.1.15")],
)  # fmt: skip
def test_iso_clauses(name: str, clause: str) -> None:
    assert REGISTER[name].clause == clause


def test_a_card_is_a_value() -> None:
    card = Measurements.of({"chest": 560, "hip": 580}, age_months=48, sex="girl", nickname="Mira")
    assert card == Measurements.of({"chest": 560, "hip": 580}, age_months=48, sex="girl", nickname="Mira")
    assert len({card, card.with_reading("chest", Reading(560.0))}) == 1
    assert card.get("waist") is None
    assert card.get("waist", Reading(1.0)) == Reading(1.0)
    assert card.mm("chest") == 560.0
    with pytest.raises(KeyError):
        card.mm("waist")


def test_readings_are_put_in_replaced_and_taken_out() -> None:
    card = Measurements.of({"chest": 560, "hip": 580})
    grown = card.with_reading("chest", Reading(570.0)).with_reading(
        "waist", Reading(500.0, Origin.ESTIMATED, 9.0)
    )
    assert list(grown) == ["chest", "hip", "waist"]
    assert grown.mm("chest") == 570.0
    assert list(grown.without("hip", "waist")) == ["chest"]
    assert list(grown.only(Origin.GIVEN)) == ["chest", "hip"]


def test_a_name_cannot_stand_twice() -> None:
    with pytest.raises(ValueError, match="twice"):
        Measurements((("chest", Reading(1.0)), ("chest", Reading(2.0))))
