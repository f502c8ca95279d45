from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.web.preferences import FILE, Preferences

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

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


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "null", '{"paper": "parchment"}', '{"units": 3}', '{"tape": "1/7in"}', "[" * 100_000],
)
def test_a_spoilt_file_of_settings_gives_the_first_ones(room: Room, text: str) -> None:
    room.folder.mkdir(parents=True)
    (room.folder / FILE).write_text(text)
    assert room.preferences == Preferences()
