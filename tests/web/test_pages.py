from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING
from xml.etree import ElementTree as ET

import pytest

from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

SVG = "{http://www.w3.org/2000/svg}"
RECIPES = shipped_names()


def test_home_begins_with_garments(client: TestClient) -> None:
    text = client.get("/").text
    assert 'href="/garments"' in text
    assert "/first/casing-top" in text
    assert "No cords" in text


def test_all_garments_are_listed_with_their_drawing_and_source(client: TestClient) -> None:
    text = client.get("/garments").text
    for name in RECIPES:
        assert f'href="/table/{name}"' in text
        assert f'src="/small/{name}.svg"' in text
    assert "School Needlework" in text


def test_garments_are_found_by_word_and_by_height(client: TestClient) -> None:
    found = {card["name"] for card in client.get("/garments.json?look=skirt").json()}
    assert "circle-skirt" in found
    assert "bib" not in found
    tall = {card["name"] for card in client.get("/garments.json?tall=150").json()}
    assert "trousers" in tall  # suits 68 to 152 cm
    assert "bib" not in tall
    nothing = client.get("/garments?look=<script>").text
    assert "&lt;script&gt;" in nothing
    assert "Show all garments" in nothing


@pytest.mark.parametrize("name", RECIPES)
def test_every_recipe_has_its_pages(client: TestClient, name: str) -> None:
    for path in (f"/table/{name}", f"/steps/{name}/1", f"/print/{name}"):
        answer = client.get(path)
        assert answer.status_code == 200, path
        assert answer.headers["content-type"].startswith("text/html")
    ET.fromstring(client.get(f"/small/{name}.svg").text)  # noqa: S314 - our own writing


@pytest.mark.parametrize(
    "path", ["/table/none", "/draw/none.svg", "/steps/none/1", "/print/none", "/nowhere"]
)
def test_what_is_not_there_is_said_in_a_sentence(client: TestClient, path: str) -> None:
    answer = client.get(f"{path}?chest=56+cm")
    assert answer.status_code == 404
    assert "There is no such page" in answer.text
    assert "56 cm" in answer.text  # what was typed is kept


@pytest.mark.parametrize("name", ["..%2f..%2fetc%2fpasswd", "..", ".", "%00", "a" * 300, "bib%0d%0aX: y"])
def test_no_name_of_a_recipe_reaches_the_disk(client: TestClient, name: str) -> None:
    assert client.get(f"/table/{name}").status_code in {404, 307, 200}
    assert "root:" not in client.get(f"/table/{name}").text


def test_the_small_drawing_stands_in_no_other_file(client: TestClient) -> None:
    text = client.get("/small/bib.svg").text
    assert "http" not in text.replace("http://www.w3.org/2000/svg", "")


def test_the_table_shows_tape_slips_findings_and_back(client: TestClient) -> None:
    text = client.get("/table/casing-top?chest=56+cm&for-size=104").text
    for part in ("Chest girth", "Ease round the chest", "Findings", "Pieces to cut", "Turn the sheet over"):
        assert part in text
    assert re.search(r'name="chest" value="56 cm"', text)
    assert "measured" in text
    assert "size 104" in text


def test_a_form_is_answered_by_the_link_that_means_the_same(client: TestClient) -> None:
    answer = client.get("/table/casing-top?bare-numbers=in&chest=22&ease=4.5&neck=25+cm&in-units=in")
    assert answer.status_code == 303
    where = answer.headers["location"]
    assert where == "/table/casing-top?chest=22+in&ease=4.5+in&neck=25+cm&in-units=in"
    record = client.get(where.replace("/table/casing-top", "/table/casing-top.json")).json()
    assert record["measurements"]["chest"] == {"mm": pytest.approx(22 * 25.4), "origin": "given"}
    assert record["choices"]["ease"] == pytest.approx(4.5 * 25.4)


def test_an_element_tells_how_the_amounts_of_its_formula_came_about(client: TestClient) -> None:
    told = client.get("/table/casing-top/told.json?chest=560&ease=120").json()
    point = told["elements"]["body.C"]
    assert point["formula"] == "width = 17 cm"
    assert point["workings"] == ["width = (chest + ease) / 4 = (56 cm + 12 cm) / 4"]


@pytest.mark.parametrize("typed", ["22 1/4", "22\u00bc", "22.25", "22,25", "22-1/4"])
def test_a_bare_fraction_of_a_form_has_the_unit_of_its_tape(client: TestClient, typed: str) -> None:
    fields = {"bare-numbers": "in", "chest": typed, "ease": "4 1/2", "in-units": "in"}
    where = client.get("/table/casing-top", params=fields).headers["location"]
    record = client.get(where.replace("/table/casing-top", "/table/casing-top.json")).json()
    assert record["measurements"]["chest"]["mm"] == pytest.approx(22.25 * 25.4)
    assert record["choices"]["ease"] == pytest.approx(4.5 * 25.4)


def test_a_bare_number_of_a_link_is_shown_with_its_unit(client: TestClient) -> None:
    text = client.get("/table/yoke-frock?chest=560&yoke_share=0.5").text
    assert 'name="chest" value="56 cm"' in text
    assert 'name="yoke_share" value="0.5"' in text  # a share has no unit


def test_what_is_not_understood_is_said_at_its_field_and_kept(client: TestClient) -> None:
    text = client.get("/table/casing-top?chest=lots&ease=900+cm&neck=0").text
    assert 'value="lots"' in text
    assert "is not understood as a length" in text
    assert 'aria-invalid="true"' in text
    assert "more than nothing" in text
    assert "sheet-drawing" in text  # the rest is drafted


def test_the_data_of_a_draft_is_its_record(client: TestClient) -> None:
    record = client.get("/table/bodice.json?chest=560").json()
    assert record["format"] == "littlefold-draft/1"
    assert record["measurements"]["chest"]["mm"] == 560


def test_a_step_is_told_in_its_own_link(client: TestClient) -> None:
    told = client.get("/steps/casing-top/3.json?chest=560&ease=120").json()
    # step 3 of the recipe: point C right of A by (chest + ease) / 4 = 17 cm
    assert "17 cm" in told["sentence"]
    page = client.get("/steps/casing-top/3?chest=560&ease=120").text
    assert told["sentence"] in page
    assert 'rel="next" href="/steps/casing-top/4?chest=56+cm&amp;ease=12+cm"' in page


def test_a_step_beyond_the_last_leads_to_the_last(client: TestClient) -> None:
    last = client.get("/steps/bib/1.json").json()["of"]
    answer = client.get("/steps/bib/999?for-size=86")
    assert answer.status_code == 303
    assert answer.headers["location"] == f"/steps/bib/{last}?for-size=86"
    assert client.get("/steps/bib/999.json").status_code == 404


def test_all_steps_print_on_one_page(client: TestClient) -> None:
    text = client.get("/steps/bib").text
    assert text.count('class="littlefold"') == client.get("/steps/bib/1.json").json()["of"]


def test_every_printed_page_can_be_seen_and_every_file_taken(client: TestClient) -> None:
    text = client.get("/print/bib").text
    seen = sorted(set(re.findall(r'src="(/print/bib/pages/\d+\.svg[^"]*)"', text)))
    assert seen
    for path in seen:
        root = ET.fromstring(client.get(path.replace("&amp;", "&")).text)  # noqa: S314 - our own writing
        assert {root.get("width"), root.get("height")} == {"210mm", "297mm"}  # A4, ISO 216
    files = re.findall(r'href="(/print/bib/[a-z-]+\.(?:pdf|svg)[^"]*)"', text)
    assert len(files) >= 5
    for path in files:
        answer = client.get(path.replace("&amp;", "&"))
        assert answer.status_code == 200
        assert answer.content.startswith(b"%PDF" if ".pdf" in path else b"<svg")
        assert answer.headers["content-disposition"].startswith('inline; filename="bib-')


def test_paper_is_remembered(client: TestClient) -> None:
    answer = client.post("/print/bib/paper", data={"paper": "US Letter", "query": "chest=560"})
    assert answer.headers["location"] == "/print/bib?chest=560"
    assert "of US Letter" in client.get("/print/bib").text


def test_paper_that_is_none_is_said(client: TestClient, room: Room) -> None:
    answer = client.post("/print/bib/paper", data={"paper": "parchment"})
    assert answer.status_code == 422
    assert "parchment" in answer.text
    assert room.preferences.paper == "A4"
    assert client.get("/print/bib?on-paper=parchment").status_code == 422
    assert client.get("/print/bib/pages.pdf?on-paper=parchment").status_code == 422


def test_no_line_break_gets_into_a_link(client: TestClient) -> None:
    answer = client.post("/print/bib/paper", data={"paper": "A4", "query": "a=1\r\nSet-Cookie: b=2"})
    assert "set-cookie" not in answer.headers


def test_a_sheet_that_is_not_there_is_none(client: TestClient) -> None:
    assert client.get("/print/bib/other.pdf").status_code == 404
    assert client.get("/print/bib/pages/99.svg").status_code == 404


def test_what_is_told_of_the_table_is_complete(client: TestClient) -> None:
    told = client.get("/table/bodice/told.json?chest=560&ease=80").json()
    assert set(told) == {"drawing", "elements", "findings", "in_trouble", "back", "readings", "refused"}
    assert told["drawing"] == client.get("/draw/bodice.svg?chest=560&ease=80").text
    assert told["elements"]["back.shoulder"]["length"].endswith(" cm")
    assert told["readings"]["chest"] == {"mm": 560, "said": "56 cm", "origin": "measured"}
    assert "Pieces to cut" in told["back"]
    json.dumps(told)


@pytest.mark.parametrize("sheet", ["", "back", "front", "all-pieces"])
def test_what_is_drawn_while_something_moves_is_the_drawing_without_findings(
    client: TestClient, sheet: str
) -> None:
    words = f"chest=560&hip=75+cm&on-sheet={sheet}"
    whole, moving = (client.get(f"/draw/bloomers{way}.svg?{words}") for way in ("", "/moving"))
    assert moving.headers["content-type"] == "image/svg+xml"
    assert 'class="line"' in moving.text
    assert moving.text == re.sub('<g class="findings">.*</g>(?=</svg>)', "", whole.text)
    assert 'class="findings"' not in moving.text
    assert client.get("/draw/attic/moving.svg").status_code == 404


def test_nothing_moves_from_one_step_to_the_next(client: TestClient) -> None:
    boxes: dict[str, set[str | None]] = {}
    for number in range(1, client.get("/steps/casing-top/1.json").json()["of"] + 1):
        told = client.get(f"/steps/casing-top/{number}.json").json()
        root = ET.fromstring(told["picture"])  # noqa: S314 - our own writing
        boxes.setdefault(told["sheet"], set()).add(root.get("viewBox"))
    assert {sheet: len(seen) for sheet, seen in boxes.items()} == dict.fromkeys(boxes, 1)
