"""Front and back cut at once from four layers, as one more way of laying; the lay drawn for narrow screens too."""

from __future__ import annotations

import re
from html import unescape
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
from fastapi.testclient import TestClient

from littlefold.lay.ways import Way
from littlefold.web.app import make_app
from littlefold.web.asked import understand
from littlefold.web.pages.cloth_asked import AT_ONCE
from littlefold.web.pages.cloth_compared import TOGETHER, remarks_on
from littlefold.web.pages.cloth_laid import first_of, on_cloths
from littlefold.web.pages.cloth_prices import read_prices
from littlefold.web.pages.cloth_printed import plan_of, to_buy
from littlefold.web.pages.cloth_said import lay_words
from littlefold.web.room import Room
from tests.web.conftest import HOME

if TYPE_CHECKING:
    from littlefold.lay.lay import Lay
    from littlefold.web.pages.cloth_laid import OnCloth

QUERY = {"cloth-way": AT_ONCE}
PARTED = '"front" is cut together with "back" by the outline of "back".'
MM = re.compile(r'<svg[^>]* width="([\d.]+)mm"')


def laid_on(room: Room, name: str, fields: dict[str, str]) -> OnCloth:
    recipe = room.recipe(name)
    assert recipe is not None
    return on_cloths(room.fulfil(understand(recipe, fields, room.preferences).wish), fields, "cm")[0]


def lay_of(on: OnCloth) -> Lay:
    lay = first_of(on).lay
    assert lay is not None
    return lay


def test_the_form_offers_it_and_the_page_says_how_they_are_parted(client: TestClient) -> None:
    plain = unescape(client.get("/cloth/casing-top", params={"cloth-way": "four layers"}).text)
    assert "Buy <b>" not in plain  # one of each on the fold leaves two layers over
    assert PARTED not in plain
    settled = client.get("/cloth/casing-top", params=QUERY | {"bare-numbers": "cm"}).headers["location"]
    assert parse_qs(urlsplit(settled).query)["cloth-way"] == [AT_ONCE]
    page = unescape(client.get(settled).text)
    assert f'<option value="{AT_ONCE}" selected>' in page
    assert "Buy <b>" in page
    assert PARTED in page


def test_both_come_from_one_cut_through_all_four_layers(room: Room) -> None:
    lay = lay_of(laid_on(room, "casing-top", QUERY))
    assert lay.spread.way is Way.FOUR_LAYERS
    assert [(one.piece, one.layers) for one in lay.placements if one.half] == [("back", 4)]
    assert "front" not in {one.piece for one in lay.placements}


def test_the_sheet_to_follow_says_it_too(room: Room) -> None:
    on = laid_on(room, "casing-top", QUERY)
    lay = lay_of(on)
    shopping = to_buy(on.outcome, (lay,), read_prices({}, on.outcome, "cm"), "cm")
    assert any(words.startswith(PARTED) for words in plan_of(on, lay, (), shopping, "cm").cautions)


@pytest.mark.parametrize("name", ["trousers", "bib"])
def test_where_no_two_pieces_are_alike_enough_the_field_says_so(client: TestClient, name: str) -> None:
    page = unescape(client.get(f"/cloth/{name}", params=QUERY).text)
    assert re.search(
        r'<select name="cloth-way" aria-invalid="true" aria-describedby="wrong-cloth-way">', page
    )
    assert re.search(r'id="wrong-cloth-way">No two pieces on the fold differ only at the neck', page)
    assert f'<option value="{AT_ONCE}" selected>' in page  # what was chosen stays
    assert "is cut together with" not in page


def test_a_lay_that_was_kept_is_shown_after_a_restart_and_says_how_they_are_parted(room: Room) -> None:
    on = laid_on(room, "casing-top", QUERY)
    assert on.question != laid_on(room, "casing-top", {"cloth-way": "four layers"}).question
    room.lays.keep(on.who, on.question, lay_of(on))
    again = Room(room.folder, today=room.today)
    assert again.lays.find(on.who, on.question) == lay_of(on)
    page = TestClient(make_app(again), base_url=HOME).get("/cloth/casing-top", params=QUERY)
    assert PARTED in unescape(page.text)


def test_a_comparison_says_that_they_are_cut_at_once_in_each_row(room: Room) -> None:
    assert remarks_on(laid_on(room, "casing-top", QUERY)) == (TOGETHER,)
    assert remarks_on(laid_on(room, "casing-top", {})) == ()


def test_a_piece_that_is_cut_with_its_twin_cannot_be_kept_at_a_place(client: TestClient) -> None:
    page = unescape(client.get("/cloth/casing-top", params=QUERY | {"cloth-kept": "front = 10 x 10 cm"}).text)
    assert re.search(r'id="wrong-cloth-kept">[^<]*There is no piece', page)


@pytest.mark.parametrize("way", ["open", "folded", AT_ONCE])
def test_the_lay_is_drawn_for_a_narrow_screen_too_with_every_cut(room: Room, way: str) -> None:
    lay = lay_of(laid_on(room, "casing-top", {"cloth-way": way}))
    told = lay_words(lay, "cm")
    small, large = told["small_drawing"], told["drawing"]
    widths = [MM.search(one) for one in (small, large)]
    assert all(widths)
    small_width, large_width = (float(one[1]) for one in widths if one)
    assert small_width <= large_width
    assert (
        small_width <= 100.0
    )  # hardly wider than a screen of 390 px, 103 mm at 96 px an inch; CSS does the rest
    assert small.count('class="line cut"') == large.count('class="line cut"')
