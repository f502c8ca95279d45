from __future__ import annotations

import os
import re
import sqlite3
from datetime import date
from html import unescape
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, quote, urlencode, urlsplit

import pytest

from littlefold.web.asked import understand
from littlefold.web.pages.children_begin import exact_words
from tests.web.cards import MINA, SET, record, with_mina
from tests.web.test_hostile_names import HOSTILE, harmless

if TYPE_CHECKING:
    from pathlib import Path

    from fastapi.testclient import TestClient

    from littlefold.web.room import Room


def test_the_box_is_empty_at_first_and_lies_in_the_folder_of_the_room(client: TestClient, room: Room) -> None:
    page = client.get("/children")
    assert "The box is empty" in page.text
    assert (room.folder / "cards.sqlite").exists()


def test_a_child_is_added_and_found_again(client: TestClient) -> None:
    made = client.post("/children", data=MINA)
    assert made.status_code == 303
    assert made.headers["location"] == "/child?name=Mina"
    page = client.get("/child", params={"name": "mina"}).text  # however its letters are written
    assert "3 y 7 months" in page  # from 14 August 2022 to 2 March 2026
    assert "Mina" in client.get("/children").text


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"name": " "}, "1 to 80 letters"),
        ({"name": "Bo", "born": "14.8.2022"}, "Write it like 2022-08-14"),
        ({"name": "Bo", "born": "2026-03-03"}, "still to come"),
        ({"name": "x" * 81}, "1 to 80 letters"),
        ({"name": "MINA"}, "a card of “MINA” already"),
    ],
)
def test_what_cannot_be_a_card_is_told_and_what_was_typed_stays(
    client: TestClient, typed: dict[str, str], sentence: str
) -> None:
    with_mina(client)
    refused = client.post("/children", data=typed)
    assert refused.status_code == 422
    assert sentence in unescape(refused.text)
    assert f'value="{typed["name"]}"' in refused.text
    assert f'value="{typed.get("born", "")}"' in refused.text


@pytest.mark.parametrize(
    "path", ["/child", "/child/measure", "/child/garments", "/child/erase", "/child/draft/1"]
)
def test_a_child_that_is_not_there_is_told_with_the_nearest_name(client: TestClient, path: str) -> None:
    with_mina(client)
    answer = client.get(path, params={"name": "Minna"})
    assert answer.status_code == 404
    assert "Did you mean “Mina”" in unescape(answer.text)


@pytest.mark.parametrize("path", ["/child/note", "/child/correct", "/child/erase", "/child/measure"])
def test_what_is_written_for_a_child_that_is_not_there_is_not_lost(client: TestClient, path: str) -> None:
    answer = client.post(
        path, data={"name": "Nobody", "text": "soft wool", "to": "Nobody", "over": "soft wool"}
    )
    assert answer.status_code == 404
    assert "soft wool" in answer.text or path in ("/child/correct", "/child/erase")


def test_a_link_of_endless_fields_is_cut_short(client: TestClient) -> None:
    with_mina(client)
    kept = client.post("/child/keep", data={"name": "Mina", "recipe": "bib", "query": "a=b&" * 1000})
    assert kept.status_code == 303


def test_notes_are_kept_and_an_empty_one_is_told(client: TestClient) -> None:
    with_mina(client)
    assert client.post("/child/note", data={"name": "Mina", "text": "no wool at the neck"}).status_code == 303
    assert "no wool at the neck" in client.get("/child", params={"name": "Mina"}).text
    assert client.post("/child/note", data={"name": "Mina", "text": " "}).status_code == 422


def test_the_head_of_a_card_is_corrected(client: TestClient) -> None:
    with_mina(client)
    client.post("/children", data={"name": "Otis"})
    changed = client.post(
        "/child/correct", data={"name": "Mina", "to": "Mina Lou", "born": "2022-08-15", "sex": ""}
    )
    assert parse_qs(urlsplit(changed.headers["location"]).query) == {"name": ["Mina Lou"]}
    taken = client.post("/child/correct", data={"name": "Mina Lou", "to": "otis", "born": "", "sex": ""})
    assert taken.status_code == 422
    assert "already" in taken.text
    assert 'value="otis"' in taken.text


def test_erasing_asks_twice_and_leaves_nothing(client: TestClient, room: Room) -> None:
    with_mina(client, SET)
    client.post("/child/note", data={"name": "Mina", "text": "likes dragonflies"})
    first = client.get("/child/erase", params={"name": "Mina"})
    assert "<form" not in first.text.split("<main", 1)[1]  # the first question erases nothing
    second = client.get("/child/erase", params={"name": "Mina", "again": "yes"})
    assert 'name="written"' in second.text
    wrong = client.post("/child/erase", data={"name": "Mina", "written": "Otis"})
    assert wrong.status_code == 422
    assert record(client)["name"] == "Mina"
    gone = client.post("/child/erase", data={"name": "Mina", "written": "mina"})
    assert gone.headers["location"] == "/children?done=erased"
    assert client.get("/child", params={"name": "Mina"}).status_code == 404
    for kept in (path for path in room.folder.rglob("*") if path.is_file()):
        assert b"dragonflies" not in kept.read_bytes(), kept
        assert b"Mina" not in kept.read_bytes(), kept


def test_a_draft_begins_with_her_own_readings(client: TestClient, room: Room) -> None:
    with_mina(client, SET)
    page = unescape(client.get("/child/garments", params={"name": "Mina"}).text)
    link = page.split('href="/table/casing-top?', 1)[1].split('"', 1)[0]
    fields = dict(parse_qs(link))
    assert fields["for-name"] == ["Mina"]
    assert fields["for-size"] == ["98"]  # 100 cm lies between 95 and 101
    recipe = room.recipe("casing-top")
    assert recipe is not None
    asked = understand(recipe, {name: text[0] for name, text in fields.items()}, room.preferences)
    assert asked.wish.measurements.mm("chest") == 540.0
    assert client.get(f"/table/casing-top?{link}").status_code == 200


@pytest.mark.parametrize(
    ("mm", "units", "said"), [(565.15, "in", "22 1/4 in"), (560.0, "in", "56 cm"), (565.15, "cm", "56.52 cm")]
)
def test_a_length_comes_back_as_it_was_read(mm: float, units: str, said: str) -> None:
    assert exact_words(mm, units) == said


def test_a_draft_is_kept_and_printed_again_exactly(client: TestClient) -> None:
    with_mina(client, SET)
    query = urlencode({"for-name": "Mina", "for-size": "98", "chest": "54 cm", "ease": "12 cm"})
    kept = client.post("/child/keep", data={"name": "Mina", "recipe": "casing-top", "query": query})
    assert kept.headers["location"] == "/child/draft/1?name=Mina"
    page = client.get(kept.headers["location"])
    assert "Print it again exactly" in page.text
    assert "another version" not in page.text
    pdf = client.get("/child/draft/1/pages.pdf", params={"name": "Mina"})
    assert pdf.content.startswith(b"%PDF")
    assert client.get("/child/draft/1/nothing.pdf", params={"name": "Mina"}).status_code == 404
    assert client.get("/child/draft/2", params={"name": "Mina"}).status_code == 404
    fitted = {"name": "Mina", "showed": "tight over the tummy", "left": "4 cm"}
    assert client.post("/child/draft/1/fitting", data=fitted).status_code == 303
    assert "tight over the tummy" in client.get("/child", params={"name": "Mina"}).text
    bad = client.post("/child/draft/1/fitting", data=fitted | {"left": "a little"})
    assert bad.status_code == 422
    assert 'value="a little"' in bad.text


def test_a_draft_of_no_recipe_is_not_kept(client: TestClient) -> None:
    with_mina(client)
    refused = client.post("/child/keep", data={"name": "Mina", "recipe": "no-such", "query": ""})
    assert refused.status_code == 422
    assert record(client)["drafts"] == []


def test_the_box_is_taken_out_and_in_again(client: TestClient) -> None:
    with_mina(client, SET)
    everything = client.get("/children/cards.json")
    assert everything.headers["content-disposition"].startswith("attachment")
    client.post("/child/erase", data={"name": "Mina", "written": "Mina"})
    taken = client.post("/children/import", files={"file": ("cards.json", everything.content)})
    assert taken.status_code == 303
    assert client.get("/children/cards.json").content == everything.content
    twice = client.post("/children/import", files={"file": ("cards.json", everything.content)})
    assert twice.status_code == 422
    assert "already" in twice.text
    table = client.get("/children/cards.csv").text
    assert "chest" in table
    assert client.get("/children/cards.xls").status_code == 422


@pytest.mark.parametrize("content", [b"\xff\xfe", b"", b"[" * 5000, b'{"cards": 3}', b"<html>"])
@pytest.mark.parametrize("name", ["cards.json", "cards.csv"])
def test_a_file_that_holds_no_cards_is_refused_in_words(
    client: TestClient, content: bytes, name: str
) -> None:
    refused = client.post("/children/import", files={"file": (name, content)})
    assert refused.status_code in (303, 422)
    assert refused.status_code == 422 or not content  # an empty table may hold no cards
    assert client.get("/children").text.count("index-card") == 0


def test_no_file_at_all_is_told(client: TestClient) -> None:
    assert "Choose a file first" in client.post("/children/import", files={"other": b"x"}).text


@pytest.mark.parametrize("words", [name for name in HOSTILE if name.isprintable()])
def test_hostile_names_stay_words(client: TestClient, words: str) -> None:
    assert client.post("/children", data={"name": words, "born": "2022-08-14"}).status_code == 303
    one = SET | {"name": words, "by": words, "over": words}
    assert client.post("/child/measure", data=one).status_code == 303
    client.post("/child/note", data={"name": words, "text": words})
    client.post("/child/keep", data={"name": words, "recipe": "bib", "query": urlencode({"for-name": words})})
    client.post("/child/draft/1/fitting", data={"name": words, "showed": words})
    paths = (
        "/child",
        "/child/measure?at=chest",
        "/child/measure?at=all",
        "/child/garments",
        "/child/draft/1",
    )
    for path in (*paths, "/child/erase?again=yes"):
        answer = client.get(
            path + ("&" if "?" in path else "?") + urlencode({"name": words, "by": words, "chest": words})
        )
        assert answer.status_code == 200, path
        harmless(answer.text)
    harmless(client.get("/children").text)
    harmless(client.get("/child", params={"name": words + "x"}).text)


def test_a_name_that_turns_the_writing_round_is_refused(client: TestClient) -> None:
    refused = client.post("/children", data={"name": "\u202eright to left"})
    assert refused.status_code == 422
    assert "no invisible signs" in refused.text
    harmless(refused.text)


@pytest.mark.parametrize(
    "path",
    [
        "/children",
        "/children/import",
        "/child/note",
        "/child/correct",
        "/child/erase",
        "/child/measure",
        "/child/keep",
    ],
)
def test_writes_from_another_site_change_nothing(client: TestClient, path: str) -> None:
    with_mina(client)
    before = client.get("/children/cards.json").content
    fields = SET | {"written": "Mina", "to": "Other", "text": "words", "recipe": "bib"}
    refused = client.post(path, data=fields, headers={"sec-fetch-site": "cross-site"})
    assert refused.status_code == 403
    assert client.get("/children/cards.json").content == before


@pytest.mark.parametrize(
    "path", ["/children", "/child?name=Mina", "/child/measure?name=Mina&at=chest", "/child/measure?name=Mina"]
)
def test_no_page_has_script_or_style_within(client: TestClient, path: str) -> None:
    with_mina(client, SET)
    text = client.get(path).text
    assert "<style" not in text
    assert " style=" not in text
    assert " onclick" not in text


def test_a_box_that_cannot_be_opened_is_told_and_tried_again(client: TestClient, room: Room) -> None:
    room.folder.mkdir(parents=True)
    (room.folder / "cards.sqlite").write_bytes(b"no database at all, but long enough to be looked at" * 40)
    shut = client.get("/children")
    assert shut.status_code == 503
    assert "cannot be opened" in shut.text
    kept = client.post("/children", data=MINA)
    assert "Mina" in kept.text  # what was typed is shown again
    (room.folder / "cards.sqlite").unlink()
    assert client.get("/children").status_code == 200


def test_cards_outlive_the_workroom(tmp_path: Path) -> None:
    from littlefold.web.app import make_app  # noqa: PLC0415
    from littlefold.web.room import Room  # noqa: PLC0415
    from tests.web.conftest import HOME, TestClient  # noqa: PLC0415

    for closing in (True, False):
        room = Room(tmp_path / "own", today=lambda: date(2026, 3, 2))
        with TestClient(make_app(room), base_url=HOME, follow_redirects=False) as client:
            if closing:
                with_mina(client, SET)
            else:
                assert len(record(client)["measured"]) == 1
    with sqlite3.connect(tmp_path / "own" / "cards.sqlite") as box:
        assert box.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    box.close()


def test_the_file_of_cards_is_for_this_user_alone(client: TestClient, room: Room) -> None:
    client.get("/children")
    if os.name == "posix":
        assert (room.folder / "cards.sqlite").stat().st_mode & 0o077 == 0


def test_a_name_with_a_slash_or_a_dot_is_a_name(client: TestClient) -> None:
    for name in ("a/b", "..", "?x=1#y", "%2e%2e"):
        assert client.post("/children", data={"name": name}).status_code == 303
        assert client.get(f"/child?name={quote(name, safe='')}").status_code == 200


def test_a_draft_from_a_card_says_how_tall_and_how_old_the_child_is(client: TestClient) -> None:
    with_mina(client, SET)
    page = unescape(client.get("/child/garments?name=Mina").text)
    for garment in ("bib", "circle-skirt"):  # neither asks for her height
        found = re.search(rf'href="/table/{garment}\?([^"]*)"', page)
        assert found
        told = parse_qs(found[1])
        assert told["for-age"] == ["42"]  # born on 2022-08-14, today is 2026-03-02
        assert told["stature"] == ["100 cm"]


IN_INCHES = {"units": "in", "tape": "1/8in", "paper": "US Letter", "region": "us", "light": "day", "seam": ""}


def test_the_card_says_how_many_growth_tucks_hold_the_room(client: TestClient) -> None:
    with_mina(client, SET)
    page = unescape(client.get("/child", params={"name": "Mina"}).text)
    assert "growth tucks 1 cm deep: " in page.split('id="growth"')[1].split("</section>")[0]
    assert client.post("/settings", data=IN_INCHES).status_code == 303
    assert "growth tucks 1/2 in deep: " in client.get("/child", params={"name": "Mina"}).text
