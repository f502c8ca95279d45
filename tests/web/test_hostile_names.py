"""A recipe is anybody's text, and so is what stands in a link: nothing of it may become markup."""

from __future__ import annotations

from html.parser import HTMLParser
from typing import TYPE_CHECKING
from urllib.parse import quote
from xml.etree import ElementTree as ET

import pytest

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

HOSTILE = [
    "<script>alert(1)</script>",
    "</title><img src=x onerror=alert(1)>",
    "'><svg onload=alert(1)>",
    '" onmouseover="alert(1)',
    "]]><!--",
    "&lt;b&gt; &amp;",
    "{{ 7 * 7 }}",
    "\u202eright to left",
]
RECIPE = """recipe mine
title "{title}"
suits stature 62 cm to 134 cm
garment top
source "{title}"

measure chest

choice ease = 14 cm, 8 cm .. 28 cm "{title}"

drawing body "{title}"
point A at the fold "{title}"
point B below A by 30 cm
point C right of A by (chest + ease) / 4
point D right of B by (chest + ease) / 4
line top from A to C
line side from C to D
line hemline from B to D

piece front "{title}" from body cut 1 on fold
edges A-B as middle fold, hemline hem 2 cm, side seam 1.25 cm, top seam 1 cm
grain along A-B
work "{title}"
"""


class Tags(HTMLParser):
    """The elements of a page, with their attributes."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))


def harmless(text: str) -> None:
    """No element and no attribute on the page that our templates do not make."""
    for tag, attributes in Tags(text).found:
        assert not any(name.startswith("on") for name in attributes), (tag, attributes)
        assert attributes.get("src") != "x"
        if tag == "script":
            assert (attributes.get("src") or "").startswith("/static/") or attributes[
                "type"
            ] == "application/json"


def in_recipe(words: str) -> str:
    return RECIPE.format(title=words.replace('"', "”"))


@pytest.mark.parametrize("words", HOSTILE)
def test_words_of_a_recipe_stay_words(client: TestClient, room: Room, words: str) -> None:
    assert room.own.save("mine", in_recipe(words), "new") is None
    for path in ("/garments", "/table/mine", "/steps/mine/1", "/steps/mine", "/print/mine"):
        answer = client.get(path)
        assert answer.status_code == 200, path
        harmless(answer.text)
    told = client.get("/table/mine/told.json").json()
    harmless(told["findings"])
    harmless(told["back"])
    for path in ("/draw/mine.svg", "/small/mine.svg", "/print/mine/pages/1.svg"):
        root = ET.fromstring(client.get(path).text)  # noqa: S314 - our own writing
        names = {element.tag.rpartition("}")[2] for element in root.iter()}
        assert names <= {"svg", "g", "path", "circle", "text", "title", "style"}
        for element in root.iter():
            assert not any(name.startswith("on") for name in element.attrib)


@pytest.mark.parametrize("words", HOSTILE)
def test_words_of_a_link_stay_words(client: TestClient, words: str) -> None:
    said = quote(words)
    query = f"chest={said}&ease={said}&for-name={said}&on-sheet={said}&{said}={said}&in-units={said}&on-tape={said}"
    for path in ("/table/casing-top", "/steps/casing-top/1", "/print/casing-top", "/table/none"):
        harmless(client.get(f"{path}?{query}").text)
    assert client.get(f"/draw/casing-top.svg?{query}").status_code == 200
    harmless(client.get(f"/garments?look={said}&tall={said}").text)


def test_a_link_may_not_be_endless(client: TestClient) -> None:
    many = "&".join(f"x{k}=1" for k in range(2000))
    assert client.get(f"/table/bib?{many}").status_code == 200
    assert client.get("/draw/bib.svg?for-name=" + "x" * 10_000).status_code == 200
