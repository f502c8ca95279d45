"""What is asked of single pieces and places on the cloth: spots, kept places, a little tilt, chosen notches."""

from __future__ import annotations

import re
from html import unescape
from typing import TYPE_CHECKING

import pytest
import shapely

from littlefold.web.asked import understand
from littlefold.web.pages.cloth_asked import read_cloth
from littlefold.web.pages.cloth_laid import first_of
from tests.web.test_cloth import WISHED, laid_on

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room


def test_spots_kept_places_tilt_and_notches_are_read() -> None:
    found = read_cloth(WISHED, "main", "cm")
    assert found.refused == {}
    assert found.wished.tilt == 2.0
    assert [spot.bounds for spot in found.wished.spots] == [(300, 200, 350, 240), (600, 10, 700, 110)]
    assert [(one.piece, one.at.x, one.at.y) for one in found.wished.kept] == [("front", 120.0, 300.0)]
    assert found.wished.notches == (("front", 2), ("back", 0))
    seam = read_cloth({"cloth-notches": "front skirt = side"}, "main", "cm").wished
    assert seam.notches == (("front_skirt", "side"),)


@pytest.mark.parametrize(
    ("field", "text"),
    [
        ("cloth-tilt", "4 mm"),  # 3 mm at most (lay/asked.py names the source)
        ("cloth-tilt", "a little"),
        ("cloth-spots", "30 x 20 cm"),
        ("cloth-spots", "30 x 20 cm + 0 x 4 cm"),
        ("cloth-kept", "front = 12 cm"),
        ("cloth-notches", "front = 2.5"),
    ],
)
def test_what_is_not_understood_of_them_is_told_at_its_field(
    client: TestClient, field: str, text: str
) -> None:
    assert list(read_cloth({field: text}, "main", "cm").refused) == [field]
    page = unescape(client.get("/cloth/bib", params={field: text}).text)
    assert re.search(rf'name="{field}" value="{re.escape(text)}"[^>]*aria-invalid="true"', page)


def test_no_piece_is_laid_on_a_damaged_spot(room: Room) -> None:
    recipe = room.recipe("drawers")
    assert recipe is not None
    outcome = room.fulfil(understand(recipe, {}, room.preferences).wish)
    spoilt = {"cloth-way": "open", "cloth-spots": "20 x 20 cm + 8 x 8 cm"}
    for fields, is_spoilt in [({"cloth-way": "open"}, False), (spoilt, True)]:
        on = laid_on(outcome, fields)
        lay = first_of(on).lay
        assert lay is not None
        spot = shapely.box(200, 200, 280, 280)
        covered = any(lay.shape(one).intersection(spot).area > 1.0 for one in lay.placements)
        assert covered is not is_spoilt  # without the spot a piece lies there


def test_a_kept_piece_lies_where_it_was_asked_for(client: TestClient, room: Room) -> None:
    recipe = room.recipe("bib")
    assert recipe is not None
    outcome = room.fulfil(understand(recipe, {}, room.preferences).wish)
    first = laid_on(outcome, {"cloth-way": "open"})
    name = first.pieces[0].name
    on = laid_on(outcome, {"cloth-way": "open", "cloth-kept": f"{name} = 30 x 40 cm"})
    lay = first_of(on).lay
    assert lay is not None
    tails = [one.affine.apply(on.pieces[0].arrow[0]) for one in lay.placements if one.piece == name]
    assert any((round(tail.x), round(tail.y)) == (300, 400) for tail in tails)
    assert "There is no piece" in client.get("/cloth/bib?cloth-kept=sleeve+%3D+1+x+1+cm").text


def test_spots_on_scraps_are_told_to_be_unheeded(client: TestClient) -> None:
    told = {"cloth-way": "scraps", "cloth-scraps": "60 x 50 cm", "cloth-spots": "1 x 1 cm + 1 x 1 cm"}
    assert "On scraps no spots" in client.get("/cloth/bib", params=told).text


def test_why_a_kept_piece_cannot_lie_there_is_said(client: TestClient) -> None:
    striped = {"cloth-way": "open", "cloth-along": "3 cm", "cloth-across": "2 cm"}
    kept = {"cloth-kept": "front = 20 x 60 cm"}
    both = {"cloth-way": "open", "cloth-kept": "front = 30 x 60 cm; back = 30 x 61 cm"}
    assert "its stripes may not meet" in client.get("/cloth/casing-top", params=striped | kept).text
    assert "may lie on each other" in client.get("/cloth/casing-top", params=both).text
    assert "Buy <b>" in client.get("/cloth/casing-top", params={"cloth-way": "open"} | kept).text
