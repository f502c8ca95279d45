from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.web.preferences import FILE, Preferences

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

POUCH = """recipe pouch
title "Pouch"
drawing body
  point A at the fold
  point B below A by 30 cm
  point C right of A by 20 cm
  point D right of B by 20 cm
  line top from A to C
  line side from C to D
  line hemline from B to D
piece front "Front" from body cut 1 on fold
  edges A-B as middle fold, hemline hem, side seam, top seam 2 cm
  grain along A-B
"""
INCHES = {"units": "in", "tape": "1/8in", "paper": "US Letter", "region": "us", "light": "dark"}


def test_settings_are_kept_and_used_everywhere(client: TestClient, room: Room) -> None:
    assert client.post("/settings", data=INCHES).status_code == 303
    assert room.preferences == Preferences("in", "1/8in", "US Letter", "us", "dark")
    assert 'class="dark"' in client.get("/").text
    told = client.get("/steps/casing-top/3.json?chest=22+in&ease=4+in").json()
    assert "6 1/2 in" in told["sentence"]  # (22 + 4) / 4
    assert "of US Letter" in client.get("/print/bib").text


def test_a_link_says_its_own_units(client: TestClient) -> None:
    client.post("/settings", data=INCHES)
    told = client.get("/steps/casing-top/3.json?chest=560&ease=120&in-units=cm&on-tape=exact").json()
    assert "17 cm" in told["sentence"]


@pytest.mark.parametrize(("name", "value"), [("paper", "parchment"), ("tape", "1/7in")])
def test_what_cannot_be_set_is_said_and_kept_on_the_page(
    client: TestClient, room: Room, name: str, value: str
) -> None:
    answer = client.post("/settings", data={**INCHES, name: value})
    assert answer.status_code == 422
    assert room.preferences == Preferences()
    assert 'value="in" checked' in answer.text


@pytest.mark.parametrize("name", list(INCHES))
def test_a_form_of_another_make_is_refused(client: TestClient, room: Room, name: str) -> None:
    if name not in {"paper", "tape"}:
        assert client.post("/settings", data={**INCHES, name: "<b>"}).status_code == 422
    assert client.post("/settings", data={k: v for k, v in INCHES.items() if k != name}).status_code == 422
    assert room.preferences == Preferences()


def test_allowances_are_hers_where_a_recipe_says_nothing(client: TestClient, room: Room) -> None:
    assert room.own.save("pouch", POUCH, "new") is None
    form = INCHES | {"units": "cm", "seam": "1.5", "hem": "1 1/4 in"}
    assert client.post("/settings", data=form).status_code == 303
    assert (room.preferences.seam, room.preferences.hem) == (15.0, 31.75)
    record = client.get("/table/pouch.json").json()
    added = {edge["name"]: edge["allowance_mm"] for piece in record["pieces"] for edge in piece["edges"]}
    assert added == {"middle": 0.0, "hemline": 31.75, "side": 15.0, "top": 20.0}
    assert 'value="1.5 cm"' in client.get("/settings").text


def test_with_nothing_written_the_common_allowances_stand(client: TestClient, room: Room) -> None:
    client.post("/settings", data=INCHES | {"seam": "2 cm", "hem": "3 cm"})
    client.post("/settings", data=INCHES | {"seam": " ", "hem": ""})
    assert (room.preferences.seam, room.preferences.hem) == (10.0, 20.0)


@pytest.mark.parametrize("width", ["0", "-1 cm", "wide", "16 cm", "1e9", "nan"])
def test_an_allowance_that_cannot_be_is_said_and_stays_in_its_field(
    client: TestClient, room: Room, width: str
) -> None:
    answer = client.post("/settings", data=INCHES | {"seam": width})
    assert answer.status_code == 422
    assert "allowance of a seam" in answer.text
    assert f'name="seam" value="{width}"' in answer.text
    assert room.preferences == Preferences()


def test_the_language_of_the_steps(client: TestClient, room: Room) -> None:
    assert client.post("/settings", data=INCHES | {"language": "de"}).status_code == 303
    assert room.preferences.language == "de"
    said = {
        code: client.get(f"/steps/bib/2.json?in-language={code}").json()["sentence"] for code in ("de", "en")
    }
    assert said["de"] != said["en"]
    assert client.get("/steps/bib/2.json").json()["sentence"] == said["de"]
    assert client.post("/settings", data=INCHES | {"language": "../../en"}).status_code == 422


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "null", '{"paper": "parchment"}', '{"units": 3}', '{"tape": "1/7in"}', "[" * 100_000],
)
def test_a_spoilt_file_of_settings_gives_the_first_ones(room: Room, text: str) -> None:
    room.folder.mkdir(parents=True)
    (room.folder / FILE).write_text(text)
    assert room.preferences == Preferences()
