"""The first page: what lay on the table last, a first draft in four pages, the sample that goes with one click."""

from __future__ import annotations

import re
from datetime import date
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
from fastapi.testclient import TestClient

from littlefold.body.plausible import examine
from littlefold.store.reprint import pattern_again
from littlefold.web.app import make_app
from littlefold.web.pages.first import GARMENTS
from littlefold.web.pages.sample_room import sample_cards, sample_classes
from littlefold.web.recent import MOST, Recent, keep_recent, read_recent
from littlefold.web.room import Room
from tests.web.conftest import HOME
from tests.web.test_hostile_names import HOSTILE, harmless

if TYPE_CHECKING:
    from pathlib import Path

DAY = date(2026, 3, 2)


def opened(folder: Path, *, with_sample: bool = True) -> TestClient:
    room = Room(folder, today=lambda: DAY, with_sample=with_sample)
    return TestClient(make_app(room), base_url=HOME, follow_redirects=False)


def test_what_lay_on_the_table_is_there_after_a_restart(tmp_path: Path) -> None:
    first = opened(tmp_path, with_sample=False)
    first.get("/table/bib?bib_width=&for-size=92")
    first.get("/table/casing-top/told.json?chest=560&for-name=Runa")
    again = opened(tmp_path, with_sample=False).get("/").text
    links = re.findall(r'<li><a href="(/table/[^"]*)"', again)
    assert [urlsplit(link).path for link in links] == ["/table/casing-top", "/table/bib"]
    assert parse_qs(urlsplit(links[0]).query.replace("&amp;", "&"))["chest"] == ["56 cm"]
    assert "for Runa" in again


def test_a_garment_only_looked_at_is_not_kept(client: TestClient) -> None:
    client.get("/table/bib")
    assert "Lately on your table" not in client.get("/").text


def test_of_one_garment_for_one_child_the_newest_is_kept(tmp_path: Path) -> None:
    for ease in ("10 cm", "11 cm"):
        keep_recent(tmp_path, Recent("casing-top", (("ease", ease), ("for-name", "Runa")), DAY))
    keep_recent(tmp_path, Recent("casing-top", (("ease", "12 cm"), ("for-name", "Bo")), DAY))
    assert [dict(one.fields)["ease"] for one in read_recent(tmp_path)] == ["12 cm", "11 cm"]


def test_no_more_are_kept_than_are_shown(tmp_path: Path) -> None:
    for number in range(3 * MOST):
        keep_recent(tmp_path, Recent("bib", (("for-name", f"child {number}"),), DAY))
    assert len(read_recent(tmp_path)) == MOST
    assert read_recent(tmp_path)[0].who == f"child {3 * MOST - 1}"


@pytest.mark.parametrize("text", ["", "[", "{}", "[1]", '[{"recipe": "bib"}]', "\xff"])
def test_a_spoilt_file_of_recent_drafts_is_none(tmp_path: Path, text: str) -> None:
    (tmp_path / "recent.json").write_text(text, encoding="latin-1")
    assert read_recent(tmp_path) == ()


def test_nothing_recent_is_left_of_an_erased_child(tmp_path: Path) -> None:
    client = opened(tmp_path, with_sample=False)
    client.post("/children", data={"name": "Mina"})
    client.get("/table/bib?for-name=mina&for-size=92")
    client.get("/table/bib?for-name=Bo&for-size=92")
    client.post("/child/erase", data={"name": "Mina", "written": "Mina"})
    assert [one.who for one in read_recent(tmp_path)] == ["Bo"]
    assert "mina" not in (tmp_path / "recent.json").read_text("utf-8").lower()


@pytest.mark.parametrize("words", HOSTILE)
def test_recent_names_stay_words(client: TestClient, words: str) -> None:
    client.get("/table/bib", params={"for-name": words, "for-size": "92"})
    page = client.get("/").text
    assert "Lately on your table" in page
    harmless(page)


@pytest.mark.parametrize("recipe", GARMENTS)
def test_a_first_draft_leads_to_printed_sheets(client: TestClient, recipe: str) -> None:
    assert f'href="/first/{recipe}"' in client.get("/first").text
    assert "How tall is the child?" in client.get(f"/first/{recipe}").text
    answered = client.get(f"/first/{recipe}", params={"tall": "90", "who": "Bo"})
    assert answered.status_code == 303
    link = answered.headers["location"]
    assert parse_qs(urlsplit(link).query) == {"for-name": ["Bo"], "for-size": ["92"]}
    drawn = client.get(link).text
    assert "for Bo" in drawn
    assert 'class="line' in drawn
    onward = re.search(rf'href="(/first/{recipe}/print[^"]*)"', drawn)
    assert onward
    at_printer = client.get(onward[1].replace("&amp;", "&")).text
    sheets = re.findall(rf'href="(/print/{recipe}/[^"]*\.pdf[^"]*)"', at_printer)
    assert [urlsplit(sheet).path.rpartition("/")[2] for sheet in sheets] == [
        "printer-check.pdf",
        "pages.pdf",
        "instructions.pdf",
    ]
    for sheet in sheets:
        assert client.get(sheet.replace("&amp;", "&")).content.startswith(b"%PDF")


@pytest.mark.parametrize(
    ("tall", "told"),
    [
        ("", "length"),
        ("tall", "not understood"),
        ("250", "drawn for children of"),
        ("9", "drawn for children of"),
    ],
)
def test_a_height_that_cannot_be_is_asked_again(client: TestClient, tall: str, told: str) -> None:
    answer = client.get("/first/casing-top", params={"tall": tall, "who": "Bo"})
    assert answer.status_code == 422
    assert told in answer.text
    assert f'name="tall" value="{tall}"' in answer.text
    assert 'name="who" value="Bo"' in answer.text


def test_the_caution_stands_where_a_cord_is_chosen(client: TestClient) -> None:
    assert "caution" not in client.get("/first/casing-top/drawn?for-size=98").text
    with_cord = client.get("/first/casing-top/drawn?for-size=98&closing=cord").text
    assert 'class="caution"' in with_cord
    assert "EN 14682" in with_cord


def test_the_sample_is_one_whose_readings_hold_together(tmp_path: Path) -> None:
    cards = sample_cards(Room(tmp_path, today=lambda: DAY))
    assert len(cards) >= 5
    for card in cards:
        for one in card.measured:
            assert examine(card.body(one), "cm") == (), (card.name, one.day)
        for draft in card.drafts:
            assert pattern_again(draft)[1] == (), card.name
    pupils = {name for one in sample_classes() for name in one.pupils}
    assert pupils <= {card.name for card in cards}


def test_the_sample_is_there_on_the_first_start_and_never_again_after_one_click(tmp_path: Path) -> None:
    client = opened(tmp_path)
    page = client.get("/").text
    assert "Put the sample away" in page
    assert "Runa" in page
    assert "Lately on your table" in page
    assert client.post("/sample/away").status_code == 303
    for later in (client, opened(tmp_path)):
        page = later.get("/").text
        assert "Put the sample away" not in page
        assert "Runa" not in page
        assert "The box is empty" in later.get("/children").text
        assert "Tuesday" not in later.get("/classes").text
    assert read_recent(tmp_path) == ()


def test_what_she_added_stays_when_the_sample_goes(tmp_path: Path) -> None:
    client = opened(tmp_path)
    client.post("/children", data={"name": "Ada"})
    client.get("/table/bib?for-name=Ada&for-size=92")
    client.post("/sample/away")
    assert "Ada" in client.get("/children").text
    assert [one.who for one in read_recent(tmp_path)] == ["Ada"]


def test_what_she_changed_of_the_sample_is_asked_about_and_kept(tmp_path: Path) -> None:
    client = opened(tmp_path)
    client.post("/child/note", data={"name": "Bo", "text": "Likes yellow"})
    asked = client.post("/sample/away")
    assert asked.status_code == 200
    assert "You have changed Bo" in asked.text
    assert "Runa" in client.get("/children").text  # nothing has gone yet
    client.post("/sample/away", data={"changed": "keep"})
    left = client.get("/children").text
    assert "Bo" in left
    assert "Runa" not in left
    assert "Put the sample away" not in client.get("/").text


def test_a_box_with_cards_in_it_gets_no_sample(tmp_path: Path) -> None:
    opened(tmp_path, with_sample=False).post("/children", data={"name": "Ada"})
    assert "Put the sample away" not in opened(tmp_path).get("/").text
