"""What a fitting showed becomes a changed draft; a child is measured for one garment."""

from __future__ import annotations

import re
from datetime import date
from html import unescape
from typing import TYPE_CHECKING

import pytest

from littlefold.store import Card, CardBox
from littlefold.store.reprint import pattern_again
from littlefold.web.pages.children_box import Cards
from tests.web.test_hostile_names import HOSTILE, harmless

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room


@pytest.fixture(autouse=True)
def _mina(client: TestClient, _own_box: None) -> None:
    """Mina, measured, with one draft of the loose top on her card."""
    client.post("/children", data={"name": "Mina", "born": "2022-03-01"})
    told = {
        "day": "2026-02-20",
        "stature": "104",
        "chest": "56",
        "head": "50",
        "neck": "25",
        "back_waist": "25",
    }
    assert client.post("/child/measure", data={"name": "Mina", **told}).status_code == 303
    query = "for-name=Mina&for-size=104&chest=56+cm&ease=12+cm&closing=press_studs"
    kept = client.post("/child/keep", data={"name": "Mina", "recipe": "casing-top", "query": query})
    assert kept.status_code == 303


def card(room: Room) -> Card:
    box = Cards(room).box()
    assert isinstance(box, CardBox)
    found = box.card("Mina")
    assert isinstance(found, Card)
    return found


def fit(client: TestClient, **fields: str) -> object:
    told = {"name": "Mina", "showed": "tight over the tummy", "left": "", "choose-closing": "press_studs"}
    more = {f"choose-{name}" if name not in told else name: text for name, text in fields.items()}
    return client.post("/child/draft/1/fitting", data={**told, **more})


def test_changed_choices_are_kept_as_a_draft_that_follows(client: TestClient, room: Room) -> None:
    answer = fit(client, ease="16", left="3 cm")
    assert answer.headers["location"] == "/child/draft/2?name=Mina"  # type: ignore[attr-defined]
    first, second = card(room).drafts
    assert [one.showed for one in first.fittings] == ["tight over the tummy"]
    assert first.let_down == 30.0
    assert second.follows == 1
    assert second.body == first.body
    assert second.recipes == first.recipes
    assert dict(second.choices) == dict(first.choices) | {"ease": 160.0}
    pattern, problems = pattern_again(second)
    assert problems == ()
    amounts = {amount.name: amount.value for amount in pattern.draft.amounts}
    assert amounts["width"] == pytest.approx((560 + 160) / 4)
    assert "after the fitting of draft 1" in client.get("/child?name=Mina").text


def test_a_fitting_without_a_change_makes_no_draft(client: TestClient, room: Room) -> None:
    answer = fit(client, ease="", flare="")
    assert answer.headers["location"] == "/child/draft/1?name=Mina"  # type: ignore[attr-defined]
    assert len(card(room).drafts) == 1
    assert len(card(room).drafts[0].fittings) == 1


def test_the_same_value_again_is_no_change(client: TestClient, room: Room) -> None:
    fit(client, ease="12 cm")
    assert len(card(room).drafts) == 1


def test_another_option_is_a_change(client: TestClient, room: Room) -> None:
    told = {"name": "Mina", "showed": "the studs press", "choose-closing": "elastic"}
    client.post("/child/draft/1/fitting", data=told)
    assert dict(card(room).drafts[1].choices)["closing"] == "elastic"


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"ease": "wide"}, "wide"),
        ({"ease": "90"}, "8 cm to 28 cm"),
        ({"left": "much"}, "much"),
        ({"showed": " "}, "Say what it showed."),
    ],
)
def test_what_cannot_be_cut_is_told_and_nothing_is_kept(
    client: TestClient, room: Room, fields: dict[str, str], told: str
) -> None:
    answer = fit(client, **fields)
    assert answer.status_code == 422  # type: ignore[attr-defined]
    text = unescape(answer.text)  # type: ignore[attr-defined]
    assert told in re.search(r'role="alert">([^<]*)<', text)[1]  # type: ignore[index]
    if "showed" not in fields:
        assert "tight over the tummy" in text
    assert card(room).drafts[0].fittings == ()
    assert len(card(room).drafts) == 1


def test_a_garment_tells_what_it_still_needs_and_that_alone_is_measured(
    client: TestClient, room: Room
) -> None:
    offered = unescape(client.get("/child/garments?name=Mina").text)
    link = re.search(r'href="(/child/measure\?name=Mina&for=trousers&at=\w+)"', offered)
    assert link
    page = unescape(client.get(link[1]).text)
    assert "Trousers with an elastic waist" in page
    assert "of 6" in page  # waist, hip, body rise, inside leg, foot, stature
    told = {"name": "Mina", "for": "trousers", "day": "2026-03-01", "others": "stay"}
    told |= {"waist": "52", "hip": "58", "body_rise": "18", "inside_leg": "43", "foot": "16.5"}
    assert client.post("/child/measure", data=told).status_code == 303
    newest = card(room).latest()
    assert newest is not None
    assert newest.day == date(2026, 3, 1)
    readings = dict(newest.readings)
    assert readings["waist"] == 520.0
    assert readings["chest"] == 560.0  # not taken again, and it stays
    assert "all is measured" in client.get("/child/garments?name=Mina").text


def test_what_is_not_taken_again_can_be_left_out(client: TestClient, room: Room) -> None:
    told = {"name": "Mina", "for": "trousers", "day": "2026-03-01", "others": "go", "waist": "52"}
    client.post("/child/measure", data=told)
    newest = card(room).latest()
    assert newest is not None
    assert newest.readings == (("waist", 520.0),)


def test_nothing_is_kept_where_nothing_was_typed(client: TestClient, room: Room) -> None:
    told = {"name": "Mina", "for": "trousers", "day": "2026-03-01", "others": "stay"}
    assert client.post("/child/measure", data=told).status_code == 422
    assert len(card(room).measured) == 1


def test_growth_is_drawn_of_each_measurement_that_was_taken(client: TestClient) -> None:
    page = unescape(client.get("/child?name=Mina&of=chest").text)
    assert re.search(r'<img src="/child/growth.svg[^"]*of=chest" alt="Chest girth by age', page)
    nav = page.partition('class="pictures"')[2].partition("</nav>")[0]
    assert re.findall(r"of=(\w+)", nav) == ["stature", "head", "neck", "chest", "back_waist"]
    tall, round_ = (client.get(f"/child/growth.svg?name=Mina&of={one}").text for one in ("stature", "chest"))
    assert "104 cm" in tall
    assert "56 cm" in round_
    harmless(client.get("/child", params={"name": "Mina", "of": HOSTILE[0]}).text)


@pytest.mark.parametrize("words", HOSTILE)
def test_words_about_a_fitting_stay_words(client: TestClient, words: str) -> None:
    for fields in ({"showed": words}, {"left": words}, {"ease": words}, {"closing": words}):
        answer = fit(client, **fields)
        if answer.status_code == 422:  # type: ignore[attr-defined]
            harmless(answer.text)  # type: ignore[attr-defined]
    harmless(client.get("/child/draft/1?name=Mina").text)
    harmless(
        client.get("/child/measure", params={"name": "Mina", "for": words, "others": words, "at": words}).text
    )
