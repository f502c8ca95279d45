"""All pieces on one sheet, beside each other; what is measured on the finished garment; what a link carries."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from xml.etree import ElementTree as ET

import pytest

from littlefold.pipeline import Workroom, on_the_shelf
from littlefold.recipe.shelf import shipped_names
from littlefold.web.all_pieces import ALL, draw_all
from littlefold.web.asked import understand
from littlefold.web.finished import finished
from littlefold.web.preferences import Preferences

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

SVG = "{http://www.w3.org/2000/svg}"


def outcome_of(name: str, **fields: str):
    recipe = on_the_shelf(name)
    assert recipe is not None
    return Workroom().fulfil(understand(recipe, fields, Preferences()).wish)


@pytest.mark.parametrize("name", shipped_names())
def test_pieces_lie_beside_each_other_on_the_sheet(name: str) -> None:
    pattern = outcome_of(name).pattern
    svg = ET.fromstring(draw_all(pattern.pieces, "Title"))  # noqa: S314 - our own writing
    left, top, width, height = map(float, svg.attrib["viewBox"].split())
    boxes = []
    for piece, group in zip(pattern.pieces, svg.findall(f"{SVG}g"), strict=True):
        over, down = map(float, re.findall(r"-?[\d.]+", group.attrib["transform"]))
        box = piece.unfolded.cut.bounds()
        boxes.append((box.left + over, down - box.top, box.right + over, down - box.bottom))
        names = {one.attrib["data-name"] for one in group.iter(f"{SVG}path")}
        assert {f"{piece.name}.{edge.name}" for edge in piece.edges} <= names
    for one in boxes:
        assert left < one[0]
        assert top < one[1]
        assert one[2] < left + width
        assert one[3] < top + height
    for k, one in enumerate(boxes):
        for other in boxes[k + 1 :]:
            apart = one[2] < other[0] or other[2] < one[0] or one[3] < other[1] or other[3] < one[1]
            assert apart, (one, other)


def test_the_sheet_of_all_pieces_is_offered_where_there_are_several(client: TestClient) -> None:
    page = client.get("/table/casing-top").text
    assert f'data-sheet="{ALL}"' in page
    drawn = client.get(f"/draw/casing-top.svg?on-sheet={ALL}").text
    assert "all pieces" in drawn
    assert ">Front<" in drawn
    assert client.get(f"/compare/casing-top?on-sheet={ALL}&or-ease=20+cm").text.count('class="was"') > 3


def test_the_finished_chest_is_what_the_recipe_makes_it() -> None:
    asked = understand(on_the_shelf("casing-top"), {"chest": "56 cm", "ease": "14 cm"}, Preferences())
    rows = {row["title"]: row for row in finished(Workroom().fulfil(asked.wish).pattern, asked.speech)}
    assert rows["Round the chest"]["value"] == "70 cm"  # a quarter of chest and ease, four times
    assert "drawn in" in rows["Round the neck"]["remark"]


def test_a_seam_inside_is_no_finished_measurement() -> None:
    asked = understand(on_the_shelf("pinafore"), {}, Preferences())
    titles = [row["title"] for row in finished(outcome_of("pinafore").pattern, asked.speech)]
    assert "Round the waist" not in titles  # its bodice and skirt meet there
    assert "Round the hem" in titles


def test_what_a_recipe_does_not_ask_for_goes_along(client: TestClient) -> None:
    asked = understand(on_the_shelf("bib"), {"stature": "98", "bare-numbers": "cm"}, Preferences())
    assert asked.wish.measurements.get("stature").mm == 980
    assert asked.query() == "stature=98+cm"
    page = client.get("/table/bib?stature=98+cm&chest=57+cm").text
    assert '<input type="hidden" name="stature" value="98 cm">' in page
    assert "suits statures of" in page  # a check looks at more than the draft does


def test_language_and_age_go_along(client: TestClient) -> None:
    asked = understand(on_the_shelf("bodice"), {"in-language": "de", "for-age": "50"}, Preferences())
    assert (asked.wish.language, asked.speech.language) == ("de", "de")
    assert asked.wish.measurements.age_months == 50
    assert understand(on_the_shelf("bib"), {"in-language": "xx"}, Preferences()).wish.language == "en"
    told = client.get("/steps/bodice/2.json?in-language=de").json()["sentence"]
    assert told != client.get("/steps/bodice/2.json").json()["sentence"]
    page = client.get("/table/bodice?in-language=de&for-age=50").text
    assert '<input type="hidden" name="in-language" value="de">' in page
    assert '<input type="hidden" name="for-age" value="50">' in page
