"""Several sizes: each drawn anew, all stacked; the paper and the choices are those of the draft."""

from __future__ import annotations

import csv
import io
import re
import time
from html import unescape
from threading import Event
from typing import TYPE_CHECKING, NoReturn
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
from fastapi.testclient import TestClient

from littlefold.web import size_run
from littlefold.web.app import make_app
from littlefold.web.patience import TooLongError
from littlefold.web.room import Room
from tests.web.conftest import HOME, Pipeline
from tests.web.test_hostile_names import HOSTILE, harmless

if TYPE_CHECKING:
    from pathlib import Path

RUN = "/sizes/trousers?from-size=92&to-size=104&hip_ease=80"


def test_the_page_has_every_size_and_every_sheet(client: TestClient) -> None:
    page = unescape(client.get(RUN).text)
    assert re.findall(r">Size (\d+)</a>", page) == ["92", "98", "104"]
    for size in ("92", "104"):
        assert re.search(rf'href="/print/trousers\?[^"]*for-size={size}[^"]*"', page)
    for link in re.findall(r'href="(/sizes/trousers/[^"]+)"', page):
        assert client.get(link).status_code == 200, link


def test_the_table_of_moves_is_of_these_sizes_and_choices(client: TestClient) -> None:
    def moves(query: str) -> list[list[str]]:
        return list(csv.reader(io.StringIO(client.get(f"/sizes/trousers/moves.csv?{query}").text)))

    told = moves("from-size=92&to-size=104")
    assert told[0] == ["point", "92 to 98 x mm", "92 to 98 y mm", "98 to 104 x mm", "98 to 104 y mm"]
    points = {row[0]: row[1:] for row in told[1:]}
    assert float(points["front.A"][0]) == 0.0  # where the draft begins, nothing moves
    assert any(float(step) != 0 for row in told[1:] for step in row[1:])
    assert moves("from-size=92&to-size=104&leg_part=0.5") != told


def test_a_childs_own_readings_have_no_place_in_a_run(client: TestClient) -> None:
    own = client.get("/sizes/trousers/moves.csv?from-size=92&to-size=98&hip=700&for-name=Bo")
    assert own.text == client.get("/sizes/trousers/moves.csv?from-size=92&to-size=98").text


@pytest.mark.parametrize("query", ["from-size=104&to-size=92", "from-size=x", "from-size=97", "to-size=500"])
def test_sizes_that_cannot_be_are_told(client: TestClient, query: str) -> None:
    answer = client.get(f"/sizes/trousers?{query}")
    assert answer.status_code == 422
    assert 'role="alert"' in answer.text
    assert client.get(f"/sizes/trousers/all-sizes.svg?{query}").status_code == 422


def test_the_first_sizes_are_such_as_the_garment_is_made_for(client: TestClient) -> None:
    page = client.get("/sizes/bib").text
    sizes = [int(size) for size in re.findall(r">Size (\d+)</a>", page)]
    assert sizes
    assert all(61 <= size <= 96 for size in sizes)  # bib.recipe: suits stature 61 cm to 96 cm


def test_there_is_no_other_file(client: TestClient) -> None:
    assert client.get("/sizes/bib/nothing.pdf").status_code == 404
    assert client.get("/sizes/nothing").status_code == 404


@pytest.mark.parametrize("words", HOSTILE)
def test_words_of_a_link_stay_words(client: TestClient, words: str) -> None:
    told = {"from-size": words, "closing": words, "for-name": words, "on-paper": words}
    harmless(client.get("/sizes/casing-top", params=told).text)


def test_many_sizes_are_drawn_beside_the_pages_with_a_bar_and_a_stop(client: TestClient) -> None:
    wanted = {"from-size": "62", "to-size": "92", "for-name": "Mina", "ease": "60"}
    link = "/sizes/bib?" + urlencode(wanted)
    assert "not drawn yet" in client.get(link).text
    begun = client.post("/sizes/bib/draw", data=wanted).headers["location"]
    page = client.get(begun)
    assert "<progress" in page.text
    assert 'action="/sizes/bib/stop"' in page.text
    work = parse_qs(urlsplit(begun).query)["work"][0]
    until = time.monotonic() + 60.0
    while not client.get(f"/sizes/bib/work/{work}.json").json()["over"]:
        assert time.monotonic() < until
        time.sleep(0.05)
    drawn = client.get(begun).headers["location"]
    assert "work=" not in drawn
    assert re.findall(r">Size (\d+)</a>", client.get(drawn).text) == ["62", "68", "74", "80", "86", "92"]
    assert client.post("/sizes/bib/draw", data=wanted).headers["location"] == drawn  # it is there already


def test_a_program_is_given_the_file_of_a_long_run_without_asking_twice(client: TestClient) -> None:
    table = client.get("/sizes/bib/moves.csv?from-size=62&to-size=92")
    assert table.status_code == 200
    assert table.text.startswith("point,62 to 68 x mm")


def test_a_run_is_stopped_and_its_sizes_stay_said(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    is_stopped, drawn = Event(), size_run._drawn
    monkeypatch.setattr(size_run, "_drawn", lambda *size: is_stopped.wait() and drawn(*size))
    wanted = {"from-size": "62", "to-size": "134"}
    begun = client.post("/sizes/trousers/draw", data=wanted).headers["location"]
    work = parse_qs(urlsplit(begun).query)["work"][0]
    stopped = client.post("/sizes/trousers/stop", data=wanted | {"work": work}).headers["location"]
    is_stopped.set()
    assert parse_qs(urlsplit(stopped).query) == {name: [text] for name, text in wanted.items()}
    assert "not drawn yet" in client.get(stopped).text
    assert "not drawn yet" in client.get(begun.replace(work, "gone")).text  # as after a restart


def test_the_files_stand_where_they_are_wanted_and_the_map_beside_the_pages(client: TestClient) -> None:
    page = unescape(client.get("/print/bib").text)
    assert re.findall(r"<section><h2>([^<]*)</h2>", page) == [
        "At home",
        "For the copy shop",
        "To sew and to teach by",
    ]
    assert "The cover, with the map of the pages" in page
    sheets = int(re.search(r"(\d+) sheets of A4", page)[1])  # type: ignore[index]  # the test fails if it is not there
    assert page.count('<img src="/print/bib/pages/') == sheets
    for link in re.findall(r'download="[^"]*"', page):
        assert re.fullmatch(r'download="bib-[a-z-]+\.(pdf|svg)"', link)


def test_a_garment_tells_its_pieces_and_about_how_much_cloth(client: TestClient) -> None:
    client.get("/garments")  # what takes too long for the first page is worked out behind it
    page = unescape(client.get("/garments?look=casing").text)
    assert "<b>Cut:</b> Front, Back" in page or "<b>Cut:</b> Back, Front" in page
    guess = re.search(r"about ([\d.]+) m of 140 cm", page)
    laid = re.search(r"Buy <b>([\d.]+) m</b>", client.get("/cloth/casing-top?cloth-width=140+cm").text)
    assert guess
    assert laid
    assert float(guess[1]) == pytest.approx(float(laid[1]), abs=0.2)


def test_garments_are_found_by_word_kind_and_height(client: TestClient) -> None:
    def found(**told: str) -> list[str]:
        return re.findall(r'class="card" href="/table/([a-z-]+)"', client.get("/garments", params=told).text)

    assert found(kind="skirt") == [one["name"] for one in client.get("/garments.json?kind=skirt").json()]
    assert "circle-skirt" in found(kind="skirt")
    assert "bib" not in found(tall="1.04 m")
    assert "bib" in found(tall="35 in")
    assert found(look="sleeve") == ["sleeve"]
    wrong = client.get("/garments", params={"tall": "very"})
    assert "not understood" in wrong.text
    assert 'value="very"' in wrong.text


def test_garments_are_shown_though_one_takes_for_ever(tmp_path: Path) -> None:
    def endless() -> NoReturn:
        raise TooLongError

    client = TestClient(make_app(Room(tmp_path, Pipeline(endless))), base_url=HOME)
    for _ in range(2):
        page = client.get("/garments")
        assert page.status_code == 200
        assert "Bib" in page.text
        assert "about" not in page.text
