"""A garment of several cloths: a slip, a lay, a length and a price for each, and one shopping list."""

from __future__ import annotations

import re
from html import unescape
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
import shapely

from littlefold.lay.cloth import YARD
from littlefold.lay.ways import Way
from littlefold.web.asked import understand
from littlefold.web.pages.cloth_asked import read_cloth, words_of
from littlefold.web.pages.cloth_laid import first_of, on_cloths
from tests.lined import LINED
from tests.web.test_cloth import found_by
from tests.web.test_hostile_names import HOSTILE, harmless

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room


@pytest.fixture
def bag(room: Room) -> str:
    """The path of the bag's cloth."""
    (room.folder / "recipes").mkdir(parents=True)
    (room.folder / "recipes" / "lined-bag.recipe").write_text(LINED, encoding="utf-8")
    return "/cloth/lined-bag"


def listed(page: str) -> dict[str, tuple[str, str]]:
    """Amount and price of each line of the shopping list, and of its sum."""
    rows = re.findall(
        r'<tr><th scope="row">([^<]*)<?.*?</th><td>(.*?)</td><td[^>]*>(.*?)</td></tr>', page, re.DOTALL
    )
    return {name: (amount, price) for name, amount, price in rows}


def test_each_cloth_has_its_own_width_way_and_price_and_the_list_adds_up(
    client: TestClient, bag: str
) -> None:
    query = {
        "cloth-price": "10",
        "cloth-way.lining": "open",
        "cloth-width.lining": "60 cm",
        "cloth-price.lining": "5,50",
        "price-thread": "2.05",
    }
    page = unescape(client.get(bag, params=query).text)
    assert 'name="cloth-width" value="140 cm"' in page
    assert 'name="cloth-width.lining" value="60 cm"' in page
    assert 'name="cloth-price.lining" value="5,50"' in page
    found = listed(page)
    assert found["main cloth"] == ("0.5 m", "5.00")  # both at once through two layers: 44 + 2 cm
    assert found["lining"] == (
        "0.9 m",
        "4.95",
    )  # 58 cm of 60 can be used: one after the other, 2 x 42 + gap + 2 cm
    assert found["thread"][1] == "2.05"
    assert found["Together"][1] == "12.00"


def test_a_form_with_all_its_fields_is_answered_by_a_link_that_means_the_same(
    client: TestClient, bag: str
) -> None:
    page = client.get(bag).text
    names = re.findall(r'<(?:input|select)[^>]* name="([^"]+)"', page)
    assert "cloth-nap.lining" in names
    sent = dict.fromkeys(dict.fromkeys(names), "") | {"bare-numbers": "cm", "cloth-width.lining": "90"}
    settled = client.get(bag, params=sent)
    assert settled.status_code == 303
    assert parse_qs(urlsplit(settled.headers["location"]).query) == {"cloth-width.lining": ["90"]}


def test_nap_and_wash_are_those_of_one_cloth_alone(room: Room, bag: str) -> None:
    assert bag
    recipe = room.recipe("lined-bag")
    assert recipe is not None
    outcome = room.fulfil(understand(recipe, {}, room.preferences).wish)
    said = {"cloth-nap.lining": "yes", "cloth-fibre": "denim", "cloth-way.lining": "folded crosswise"}
    main, lining = on_cloths(outcome, said, "cm")
    assert (main.name, main.asked.cloth.nap, main.asked.way) == ("main", False, Way.FOLDED)
    assert (lining.name, lining.asked.cloth.nap, lining.asked.way) == ("lining", True, Way.CROSSWISE)
    assert (main.asked.cloth.shrinkage.along, lining.asked.cloth.shrinkage.along) == (0.05, 0.0)
    assert first_of(main).lay is not None
    assert "upside down" in first_of(lining).problems[0].message


def test_what_is_not_understood_of_one_cloth_is_told_at_its_field(client: TestClient, bag: str) -> None:
    page = unescape(client.get(bag, params={"cloth-width.lining": "wide", "price-thread": "dear"}).text)
    wrong = re.findall(
        r'name="([^"]+)" value="([^"]*)"[^>]*aria-invalid="true" aria-describedby="([^"]+)"', page
    )
    assert [(name, text) for name, text, _ in wrong] == [
        ("cloth-width.lining", "wide"),
        ("price-thread", "dear"),
    ]
    for _, _, told in wrong:
        assert re.search(rf'<p class="warn" role="alert" id="{re.escape(told)}">“(wide|dear)” is not', page)


def test_a_search_for_one_cloth_changes_its_lay_and_the_list(client: TestClient, bag: str) -> None:
    query = "cloth-way.lining=open&cloth-width.lining=90+cm"
    started = client.post(f"{bag}/search", data={"query": query, "seconds": "10", "cloth": "lining"})
    assert started.headers["location"].endswith("#lay-lining")
    told = found_by(client, f"{started.headers['location'].partition('#')[0]}&on-cloth=lining")
    assert "on-cloth=lining" in str(told["html"])
    assert "on-cloth=main" not in str(told["html"])
    assert listed(str(told["list"]))["lining"][0] == "0.5 m"  # side by side: 42 + 2 cm


def test_each_cloth_is_printed_by_itself(client: TestClient, bag: str) -> None:
    links = re.findall(r'href="(/cloth/lined-bag/\w+\.pdf[^"]*)"', unescape(client.get(bag).text))
    assert [parse_qs(urlsplit(one).query)["on-cloth"] for one in links] == [["main"]] * 2 + [["lining"]] * 2
    made = [client.get(one).content for one in links]
    assert all(one.startswith(b"%PDF") for one in made)
    assert len(set(made)) == len(made)


def test_cloth_in_hand_that_is_enough_is_not_bought(client: TestClient, bag: str) -> None:
    found = listed(client.get(bag, params={"cloth-length.lining": "1 m", "cloth-length": "30 cm"}).text)
    assert "lining" not in found
    assert found["main cloth"][0] == "0.5 m"


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_stay_words(client: TestClient, bag: str, words: str) -> None:
    fields = (
        "cloth-width.lining",
        "cloth-way.lining",
        "cloth-price.lining",
        f"cloth-width.{words}",
        "price-thread",
        "on-cloth",
    )
    page = client.get(bag, params=dict.fromkeys(fields, words))
    assert page.status_code == 200
    harmless(page.text)


def test_thread_goes_by_the_stitches_that_are_chosen(client: TestClient) -> None:
    def thread(**fields: str) -> str:
        page = client.get("/cloth/trousers", params=fields).text
        found = re.search(r"(\d+) m, reels of 100 m", page)
        assert found
        return found[1]

    usual = thread()
    assert thread(**{"cloth-sewn": "301"}) != usual
    page = unescape(client.get("/cloth/trousers", params={"cloth-sewn": "301+606"}).text)
    assert 'aria-invalid="true" aria-describedby="wrong-sewn"' in page
    assert 'There is no stitch class "606"' in page
    assert '<option value="301+606" selected>' in page
    assert f"{usual} m, reels" in page


def test_prices_of_notions_are_those_of_the_shop(client: TestClient) -> None:
    page = client.get("/cloth/trousers", params={"price-elastic": "1,20"}).text
    amount, price = listed(page)["elastic"]
    assert price == f"{1.2 * float(amount.removesuffix(' cm')) / 100:.2f}"
    assert "Together, as far as prices are known" in page


def test_words_of_another_cloth_are_not_those_of_the_first() -> None:
    said = {
        "cloth-width": "90 cm",
        "cloth-width.lining": "60 cm",
        "cloth-nap.lining": "yes",
        "chest": "56 cm",
    }
    assert words_of(said, "") == {"cloth-width": "90 cm"}
    assert words_of(said, "lining") == {"cloth-width": "60 cm", "cloth-nap": "yes"}
    assert words_of(said, "ing") == {}


def test_cloth_in_hand_may_be_said_in_yards() -> None:
    assert read_cloth({"cloth-length": "1 1/2 yd"}, "main", "in").cloth.in_hand == pytest.approx(1.5 * YARD)
    assert read_cloth({"cloth-length": "2 yards"}, "main", "cm").cloth.in_hand == pytest.approx(2 * YARD)
    assert "cloth-length" in read_cloth({"cloth-length": "many yards"}, "main", "in").refused


def test_what_a_label_says_is_lost_in_the_wash_is_taken() -> None:
    said = {"cloth-fibre": "test square", "cloth-washed-along": "5 %", "cloth-washed-across": "1,5%"}
    found = read_cloth(said, "main", "cm")
    assert found.refused == {}
    assert (found.cloth.shrinkage.along, found.cloth.shrinkage.across) == pytest.approx((0.05, 0.015))
    for wrong in ("40 %", "some %", "-3 %"):
        assert list(read_cloth(said | {"cloth-washed-along": wrong}, "main", "cm").refused) == [
            "cloth-washed-along"
        ]


def test_selvedge_and_gap_are_left(room: Room, bag: str) -> None:
    assert bag
    recipe = room.recipe("lined-bag")
    assert recipe is not None
    outcome = room.fulfil(understand(recipe, {}, room.preferences).wish)
    main, _ = on_cloths(outcome, {"cloth-way": "open", "cloth-gap": "2 cm", "cloth-selvedge": "3 cm"}, "cm")
    lay = first_of(main).lay
    assert lay is not None
    assert lay.cloth.usable_width == 1340.0
    first, second = (lay.shape(one) for one in lay.placements)
    assert shapely.distance(first, second) >= 20.0 - 1e-6
    wrong = read_cloth({"cloth-gap": "9 cm", "cloth-selvedge": "half"}, "main", "cm")
    assert set(wrong.refused) == {"cloth-gap", "cloth-selvedge"}
    assert (wrong.gap, wrong.cloth.selvedge) == (3.0, 10.0)


def test_a_scrap_may_be_told_by_its_corners() -> None:
    found = read_cloth({"cloth-way": "scraps", "cloth-scraps": "0x0 60x0 40x50 cm; 30 x 35 cm"}, "main", "cm")
    areas = [shapely.Polygon([(p.x, p.y) for p in scrap]).area for scrap in found.scraps]
    assert areas == [600 * 500 / 2, 300 * 350]
    for wrong in ("0x0 60x0 cm", "0x0 60x0 60x0 cm", "0x0 50x50 50x0 0x50 cm", "0x0 60x0 40x50 cm more"):
        assert (
            "cloth-scraps" in read_cloth({"cloth-way": "scraps", "cloth-scraps": wrong}, "main", "cm").refused
        )
