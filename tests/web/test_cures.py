"""Choices that cure a finding: whatever is offered was drafted, and does it with the least change."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import parse_qs

import pytest

from littlefold.pipeline import Workroom, on_the_shelf
from littlefold.web.asked import understand
from littlefold.web.cures import MOST_TRIALS, cures, trouble_of, troubles
from littlefold.web.own_recipes import parsed
from littlefold.web.preferences import Preferences
from littlefold.web.readings import slips

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.pipeline import Outcome, Wish
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

MARK = 5.0
TIGHT = """recipe tight
title "Tight tube"
measure chest, head
choice ease = 2 cm, 0 cm .. 20 cm "Ease round the chest"
choice closing = none | buttons "How it closes"
drawing front
  point A at the fold
  point B below A by 30 cm
  point C right of A by (chest + ease) / 4
  point D right of B by (chest + ease) / 4
  line top from A to C
  line side from C to D
  line hemline from B to D
check chest + ease >= chest + 6.2 cm "Room to breathe"
"""


def asked_for(name: str, **fields: str) -> Asked:
    recipe = on_the_shelf(name)
    assert recipe is not None
    return understand(recipe, fields, Preferences())


def found(asked: Asked, work: Workroom) -> set[tuple]:
    return set(troubles(work.fulfil(asked.wish).problems))


@pytest.mark.parametrize(
    ("name", "fields", "code", "choice"),
    [
        ("bloomers", {"hip": "75 cm"}, "elastic-length", "ease"),
        ("casing-top", {"ease": "2 cm"}, "choice-out-of-bounds", "ease"),
        ("bodice", {"ease": "2 cm"}, "recipe-check-fails", "ease"),
    ],
)
def test_a_cure_heals_and_half_a_centimetre_less_does_not(
    name: str, fields: dict[str, str], code: str, choice: str
) -> None:
    work, asked = Workroom(), asked_for(name, **fields)
    offered = cures(
        asked.wish, slips(asked, work.fulfil(asked.wish).draft), work.fulfil, mark=MARK, goes_on=lambda: True
    )
    trouble = next(one for one in offered if one[0] == code)
    cure = next(one for one in offered[trouble] if one.slip.name == choice)
    assert isinstance(cure.value, float)
    healed = found(asked_for(name, **{**fields, choice: f"{cure.value} mm"}), work)
    assert trouble not in healed
    assert healed <= found(asked, work)
    assert isinstance(cure.slip.value, float | int)
    nearer = cure.value + (MARK if cure.slip.value > cure.value else -MARK)
    assert trouble in found(asked_for(name, **{**fields, choice: f"{nearer} mm"}), work)


def test_the_least_mark_of_the_tape_is_offered() -> None:
    asked = understand(parsed(TIGHT, "tight"), {}, Preferences())
    work = Workroom()
    offered = cures(
        asked.wish, slips(asked, work.fulfil(asked.wish).draft), work.fulfil, mark=MARK, goes_on=lambda: True
    )
    (trouble,) = (one for one in offered if one[0] == "recipe-check-fails")
    assert [(one.slip.name, one.value) for one in offered[trouble]] == [("ease", 65.0)]  # 6.2 cm, to the mark


def test_trials_are_counted_and_end_when_time_is_over() -> None:
    asked, work, made = asked_for("casing-top", ease="2 cm"), Workroom(), []

    def fulfil(wish: Wish) -> Outcome:
        made.append(wish)
        return work.fulfil(wish)

    choices = slips(asked, work.fulfil(asked.wish).draft)
    assert cures(asked.wish, choices, fulfil, mark=MARK, goes_on=lambda: False) == {}
    assert len(made) == 1
    cures(asked.wish, choices, fulfil, mark=0.001, goes_on=lambda: True)
    assert len(made) <= MOST_TRIALS + 2


def test_a_doubt_about_the_measuring_has_no_cure() -> None:
    asked, work = asked_for("bodice", head="60 cm"), Workroom()
    problems = work.fulfil(asked.wish).problems
    doubts = [trouble_of(one) for one in problems if one.code.startswith("reading-")]
    assert doubts
    assert not set(doubts) & set(troubles(problems))


def test_a_cure_is_data_and_a_link_that_cures(client: TestClient) -> None:
    told = client.get("/table/bloomers/cures.json?hip=75+cm").json()
    ((cure,),) = told["cures"].values()
    assert cure["choice"] == "ease"
    assert parse_qs(cure["query"])["hip"] == ["75 cm"]
    assert parse_qs(cure["query"])["ease"] == [cure["value"]]
    assert f'data-value="{cure["value"]}"' in told["findings"]
    after = client.get(f"/table/bloomers/told.json?{cure['query']}").json()
    assert not after["in_trouble"]


def test_without_a_script_cures_are_links_too(client: TestClient) -> None:
    page = client.get("/table/bloomers?hip=75+cm").text
    assert "with-cures=yes" in page
    sought = client.get("/table/bloomers?hip=75+cm&with-cures=yes").text
    assert 'class="cure" href="/table/bloomers?hip=75+cm&amp;ease=' in sought
    assert "with-cures" not in sought  # it is asked once, and does not stick to the links


def test_inches_are_cured_in_inches(client: TestClient) -> None:
    told = client.get("/table/bloomers/cures.json?hip=75+cm&in-units=in").json()
    ((cure,),) = told["cures"].values()
    assert cure["value"].endswith(" in")
    assert not client.get(f"/table/bloomers/told.json?{cure['query']}").json()["in_trouble"]


def test_names_in_cures_are_escaped(client: TestClient, room: Room) -> None:
    assert room.own.save("tight", TIGHT.replace("Ease round", "<script>Ease round"), "new") is None
    told = client.get("/table/tight/cures.json").json()
    assert "&lt;script&gt;Ease round" in told["findings"]
    assert "<script>" not in told["findings"]
