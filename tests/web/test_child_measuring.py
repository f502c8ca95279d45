from __future__ import annotations

import re
from html import unescape
from typing import TYPE_CHECKING

import pytest

from tests.web.cards import SET, record, with_mina

if TYPE_CHECKING:
    from fastapi.testclient import TestClient


def test_readings_are_kept_as_they_were_read_from_the_tape(client: TestClient) -> None:
    with_mina(client, SET | {"by": "Edda", "over": "vest"})
    kept = record(client)["measured"][0]
    assert kept["day"] == "2026-02-20"
    assert kept["by"] == "Edda"
    mm = kept["readings"]
    assert mm["chest"] == 540.0
    assert mm["head"] == pytest.approx(19.875 * 25.4)
    page = client.get("/child", params={"name": "Mina"}).text
    assert "by Edda" in page
    assert "50.48 cm" in page  # 19 7/8 in


def test_inches_typed_as_centimetres_are_caught_and_nothing_is_lost(client: TestClient) -> None:
    with_mina(client)
    wrong = SET | {"chest": "23", "by": "Edda"}
    refused = client.post("/child/measure", data=wrong)
    assert refused.status_code == 422
    assert "23 looks like inches" in refused.text
    assert 'value="23"' in refused.text
    assert 'value="Edda"' in refused.text
    assert record(client)["measured"] == []
    assert client.post("/child/measure", data=wrong | {"they-are-right": "yes"}).status_code == 303
    assert len(record(client)["measured"]) == 1


@pytest.mark.parametrize(
    ("field", "text", "sentence"),
    [
        ("chest", "fifty", "not understood as a length"),
        ("chest", "1,024", "can mean"),
        ("chest", "0", "more than nothing"),
        ("chest", "54 ells", "is not known"),
        ("day", "yesterday", "is not a day"),
        ("day", "2030-01-01", "still to come"),
        ("day", "2022-08-13", "born on 2022-08-14, after 2022-08-13"),
    ],
)
def test_what_is_not_understood_is_said_beside_it_and_stays(
    client: TestClient, field: str, text: str, sentence: str
) -> None:
    with_mina(client)
    refused = client.post("/child/measure", data=SET | {field: text})
    assert refused.status_code == 422
    assert sentence in unescape(refused.text)
    assert f'value="{text}"' in refused.text
    assert record(client)["measured"] == []


def test_a_day_that_cannot_be_is_told_at_its_field_while_one_types(client: TestClient) -> None:
    with_mina(client)
    fields = {"name": "Mina", "day": "2020-01-01", "stature": "104"}
    told = client.get("/child/measure/judged.json", params=fields).json()
    assert "born on 2022-08-14" in told["refused"]["day"]
    page = client.get("/child/measure", params=fields | {"at": "all"}).text
    place = page.index('data-said="day"')
    assert "born on 2022-08-14" in page[place : place + 200]
    assert 'value="104"' in page


def test_one_by_one_a_day_that_cannot_be_is_told_before_one_goes_on(client: TestClient) -> None:
    with_mina(client)
    fields = {"name": "Mina", "day": "2020-01-01", "was": "chest", "chest": "54"}
    again = client.get("/child/measure", params=fields | {"at": "waist"}).text
    assert "Chest girth of Mina" in again
    place = again.index('data-said="day"')
    assert "born on 2022-08-14" in again[place : place + 200]
    assert 'type="date" name="day" value="2020-01-01"' in again
    right = client.get("/child/measure", params=fields | {"at": "waist", "day": "2026-02-20"}).text
    assert "Waist girth of Mina" in right


def test_a_second_reading_of_a_day_replaces_its_measurement_alone(client: TestClient) -> None:
    with_mina(
        client, SET | {"by": "Edda", "over": "vest"}, {"name": "Mina", "day": SET["day"], "chest": "55"}
    )
    first, second = record(client)["measured"]
    assert second == first | {"readings": first["readings"] | {"chest": 550.0}}
    page = unescape(client.get("/child", params={"name": "Mina"}).text)
    table = page[page.index('class="readings"') :]
    assert table.index("55 cm") < table.index("54 cm"), "the newest of a day stands first"
    picture = client.get("/child/growth.svg", params={"name": "Mina", "of": "chest"}).text
    earlier = client.get("/child/growth.svg", params={"name": "Mina"}).text
    dots = [len(re.findall(r'<circle[^>]*data-name="reading"', one)) for one in (picture, earlier)]
    assert dots == [1, 1], "one a day"


def test_a_birth_date_after_the_first_readings_is_refused_and_stays_typed(client: TestClient) -> None:
    with_mina(client, SET)
    wrong = {"name": "Mina", "to": "Mina", "born": "2026-02-21", "sex": "girl"}
    refused = client.post("/child/correct", data=wrong)
    assert refused.status_code == 422
    assert "measured on 2026-02-20, before 2026-02-21" in refused.text
    assert 'value="2026-02-21"' in refused.text
    assert record(client)["born"] == "2022-08-14"


def test_a_set_of_nothing_is_not_kept(client: TestClient) -> None:
    with_mina(client)
    refused = client.post("/child/measure", data={"name": "Mina"})
    assert refused.status_code == 422
    assert "at least one" in refused.text


def test_readings_are_judged_while_they_are_typed(client: TestClient) -> None:
    with_mina(client)
    fields = {"name": "Mina", "stature": "104", "chest": "23", "waist": "about 50", "head": '19 7/8"'}
    told = client.get("/child/measure/judged.json", params=fields).json()
    assert told["said"]["head"] == "50.48 cm (19 7/8 in)"
    assert "not understood" in told["refused"]["waist"]
    assert told["doubtful"] == ["chest"]
    assert told["found"][0]["severity"] == "error"
    assert client.get("/child/measure/judged.json", params={"name": "No"}).status_code == 404


def test_one_after_the_other_keeps_what_was_typed_in_the_link(client: TestClient) -> None:
    with_mina(client)
    page = client.get(
        "/child/measure", params={"name": "Mina", "at": "chest", "stature": "104 cm", "head": "50"}
    )
    assert '<input type="hidden" name="stature" value="104 cm">' in page.text
    assert "Chest girth" in page.text
    assert "/child/figure/chest.svg" in page.text
    again = client.get(
        "/child/measure", params={"name": "Mina", "at": "waist", "was": "chest", "chest": "plenty"}
    )
    assert "Chest girth of Mina" in again.text  # what is not understood is asked again
    assert "not understood" in again.text


def test_a_baby_is_measured_lying(client: TestClient) -> None:
    client.post("/children", data={"name": "Otis", "born": "2025-06-01"})
    page = client.get("/child/measure", params={"name": "Otis", "at": "stature"}).text
    assert "Lay the baby on a firm table" in page
    standing = client.get("/child/measure", params={"name": "Otis", "at": "stature", "lies": "no"}).text
    assert "heels and back against a wall" in standing


def test_every_measurement_has_its_figure(client: TestClient) -> None:
    from littlefold.body.register import NAMES  # noqa: PLC0415

    for name in NAMES:
        drawn = client.get(f"/child/figure/{name}.svg")
        assert drawn.headers["content-type"] == "image/svg+xml"
        assert 'data-name="tape"' in drawn.text
    assert client.get("/child/figure/..%2Fpasswd.svg").status_code == 404


def test_growth_is_drawn_told_and_printed(client: TestClient) -> None:
    with_mina(client, SET)
    picture = client.get("/child/growth.svg", params={"name": "Mina"})
    assert picture.status_code == 200
    assert "P97" in picture.text
    page = client.get("/child", params={"name": "Mina", "on": "2027-02-14"}).text
    assert "4 y 6 months" in page  # her age on that day
    sheet = client.get("/child/card.pdf", params={"name": "Mina"})
    assert sheet.content.startswith(b"%PDF")
    assert sheet.headers["cache-control"] == "no-store"


def test_until_when_something_fits_is_told_in_months(client: TestClient) -> None:
    with_mina(client, SET)
    page = client.get("/child", params={"name": "Mina", "fits": "stature", "limit": "106"}).text
    assert "The height passes 106 cm about" in page
    wrong = client.get("/child", params={"name": "Mina", "fits": "stature", "limit": "tall"}).text
    assert "not understood" in wrong
    assert 'value="tall"' in wrong


@pytest.mark.parametrize("on", ["never", "2020-01-01"])
def test_a_day_that_cannot_be_looked_ahead_to_is_told(client: TestClient, on: str) -> None:
    with_mina(client, SET)
    page = client.get("/child", params={"name": "Mina", "on": on})
    assert page.status_code == 200
    assert "not a day" in page.text or "Name a later day" in page.text or "no birth date" in page.text
    assert client.get("/child/growth.svg", params={"name": "Mina", "on": on}).status_code == 422


def test_a_birth_date_of_long_ago_is_told_where_growth_would_be(client: TestClient) -> None:
    client.post("/children", data={"name": "Oma", "born": "1950-01-01"})
    client.post("/child/measure", data=SET | {"name": "Oma", "they-are-right": "yes"})
    assert "Look at the birth date" in client.get("/child", params={"name": "Oma"}).text
    assert client.get("/child/card.pdf", params={"name": "Oma"}).status_code == 422
