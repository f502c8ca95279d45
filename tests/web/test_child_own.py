"""A recipe's own measurement in the workroom: asked for with its words, kept on the card, drawn with."""

from __future__ import annotations

from html import unescape
from typing import TYPE_CHECKING

import pytest

from littlefold.web.own_recipes import NEW
from tests.web.cards import SET, record, with_mina

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

HOW = "From the hollow of the neck <b>down</b> to the waist tape"
RECIPE = """recipe {name}
title "{name}"
suits stature 80 cm to 140 cm
source common practice

measure chest
own measure {own} "{how}"

drawing body
  point A at the fold
  point B below A by {own}
  point C right of A by chest / 4
"""


@pytest.fixture
def sewing(client: TestClient, room: Room) -> TestClient:
    """Mina, measured, and a recipe that asks for something of its own."""
    with_mina(client, SET)
    assert room.own.save("apron", RECIPE.format(name="apron", own="name", how=HOW), NEW) is None
    return client


def reading(**changed: str) -> dict[str, str]:
    return {"name": "Mina", "for": "apron", "day": "2026-03-01", "own-name": "21.5"} | changed


def test_it_is_asked_for_with_the_words_of_the_recipe(sewing: TestClient) -> None:
    offered = sewing.get("/child/garments", params={"name": "Mina"}).text
    assert "&amp;for=apron&amp;at=own-name" in offered
    one = sewing.get("/child/measure", params={"name": "Mina", "for": "apron", "at": "own-name"}).text
    assert HOW in unescape(one)
    assert "<b>down" not in one
    assert 'name="own-name"' in one
    told = sewing.get("/child/measure/judged.json", params=reading()).json()
    assert told["said"]["own-name"].startswith("21.5 cm")
    every = sewing.get("/child/measure", params={"name": "Mina", "for": "apron", "at": "all"}).text
    assert HOW in unescape(every)


def test_it_is_kept_shown_and_drawn_with(sewing: TestClient) -> None:
    assert sewing.post("/child/measure", data=reading()).status_code == 303
    kept = record(sewing)["measured"][-1]
    assert kept["readings"]["name"] == 215.0
    assert kept["readings"]["chest"] == 540.0, "the others stay where one measures for a garment"
    assert kept["own"] == [{"name": "name", "recipe": "apron", "how": HOW}]
    card = sewing.get("/child", params={"name": "Mina"}).text
    assert "21.5 cm" in card
    assert HOW in unescape(card)
    offered = unescape(sewing.get("/child/garments", params={"name": "Mina"}).text)
    assert "/table/apron?" in offered
    assert "name=21.5+cm" in offered
    assert sewing.get("/child/card.pdf", params={"name": "Mina"}).content.startswith(b"%PDF")


def test_what_is_not_understood_is_asked_again_and_stays(sewing: TestClient) -> None:
    refused = sewing.post("/child/measure", data=reading(**{"own-name": "long"}))
    assert refused.status_code == 422
    assert 'value="long"' in refused.text
    assert len(record(sewing)["measured"]) == 1


def test_it_goes_along_when_all_is_measured_again(sewing: TestClient) -> None:
    sewing.post("/child/measure", data=reading())
    page = sewing.get("/child/measure", params={"name": "Mina", "at": "all"}).text
    assert HOW in unescape(page)
    anew = {"name": "Mina", "day": "2026-03-02", "stature": "101", "own-name": "22"}
    assert sewing.post("/child/measure", data=anew).status_code == 303
    kept = record(sewing)["measured"][-1]
    assert kept["readings"] == {"stature": 1010.0, "name": 220.0}
    assert kept["own"][0]["how"] == HOW


def test_it_does_not_stand_for_what_another_recipe_calls_alike(sewing: TestClient, room: Room) -> None:
    other = RECIPE.format(name="smock", own="name", how="Round the little finger")
    assert room.own.save("smock", other, NEW) is None
    sewing.post("/child/measure", data=reading())
    offered = unescape(sewing.get("/child/garments", params={"name": "Mina"}).text)
    assert "name=21.5+cm" in offered[offered.index("/table/apron?") :][:300]
    assert "name=21.5+cm" not in offered[offered.index("/table/smock?") :][:300]
    page = sewing.get("/child/measure", params={"name": "Mina", "for": "smock", "at": "all"}).text
    assert "21.5" not in page


@pytest.mark.parametrize("ending", ["json", "csv"])
def test_it_goes_out_and_comes_in_again(sewing: TestClient, ending: str) -> None:
    sewing.post("/child/measure", data=reading())
    before = record(sewing)["measured"]
    file = sewing.get(f"/children/cards.{ending}", params={"name": "Mina"}).content
    assert sewing.post("/child/erase", data={"name": "Mina", "written": "Mina"}).status_code == 303
    taken = sewing.post("/children/import", files={"file": (f"cards.{ending}", file)})
    assert taken.status_code == 303, taken.text
    assert record(sewing)["measured"] == before
