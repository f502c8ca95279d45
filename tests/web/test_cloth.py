from __future__ import annotations

import re
import time
from html import unescape
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest

from littlefold.lay.ways import Way
from littlefold.web.asked import understand
from littlefold.web.long_work import AT_ONCE, LongWorks
from littlefold.web.pages.cloth_asked import read_cloth
from littlefold.web.pages.cloth_laid import first_of, improving, on_cloths
from littlefold.web.pages.cloth_said import bought
from tests.web.test_hostile_names import HOSTILE, harmless

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from fastapi.testclient import TestClient

    from littlefold.pipeline import Outcome
    from littlefold.web.pages.cloth_laid import OnCloth
    from littlefold.web.room import Room

PATIENCE = 60.0
QUERY = "cloth-way=open"
"""Open cloth leaves the search much to try."""

WISHED = {
    "cloth-tilt": "2 mm",
    "cloth-spots": "30 x 20 cm + 5 x 4 cm; 60x1cm+10x10cm",
    "cloth-kept": "Front = 12 x 30 cm",
    "cloth-notches": "front = 2; back = 0",
}


def laid_on(outcome: Outcome, fields: dict[str, str]) -> OnCloth:
    """The pieces of a garment of one cloth, as a link asks for them."""
    (on,) = on_cloths(outcome, fields, "cm")
    return on


def found_by(client: TestClient, started: str) -> dict[str, object]:
    """What a search has found when it is over."""
    name = parse_qs(urlsplit(started).query)["search"][0]
    recipe, query = urlsplit(started).path.rpartition("/")[2], urlsplit(started).query
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        told = client.get(f"/cloth/{recipe}/search/{name}.json?{query}").json()
        if told["over"]:
            return dict(told)
        time.sleep(0.1)
    pytest.fail("the search did not end")


def test_a_lay_is_there_at_once_with_what_to_buy(client: TestClient) -> None:
    page = client.get("/cloth/bib?cloth-width=140+cm&cloth-price=8")
    assert page.status_code == 200
    assert 'class="line cut"' in page.text  # the pieces on the cloth
    assert "Shopping list" in page.text
    assert "<b>4.00</b>" in page.text  # 0.5 m at 8 a metre
    assert "<b>0.5 m</b>" in page.text


def test_the_form_is_answered_by_a_link_that_means_the_same(client: TestClient) -> None:
    settled = client.get("/cloth/bib?bare-numbers=cm&cloth-width=112&chest=54")
    assert settled.status_code == 303
    assert parse_qs(urlsplit(settled.headers["location"]).query)["cloth-width"] == ["112"]
    assert client.get(settled.headers["location"]).status_code == 200


@pytest.mark.parametrize(
    ("field", "text", "sentence"),
    [
        ("cloth-width", "wide", "not understood as a length"),
        ("cloth-width", "3 cm", "cm wide"),
        ("cloth-price", "dear", "is not a price"),
        ("cloth-price", "-1", "is not a price"),
        ("cloth-price", "nan", "is not a price"),
    ],
)
def test_what_is_not_understood_is_said_and_stays_in_its_field(
    client: TestClient, field: str, text: str, sentence: str
) -> None:
    page = client.get("/cloth/bib", params={field: text})
    assert page.status_code == 200
    assert sentence in unescape(page.text)
    assert f'value="{text}"' in page.text


def test_nap_forbids_folding_across(client: TestClient) -> None:
    page = client.get("/cloth/bib", params={"cloth-way": "folded crosswise", "cloth-nap": "yes"})
    assert page.status_code == 200
    assert "upside down" in page.text
    assert "Buy <b>" not in page.text


def test_cloth_that_shrinks_is_bought_longer_or_cut_larger_but_not_both() -> None:
    washed = read_cloth({"cloth-fibre": "denim"}, "main", "cm").cloth
    larger = read_cloth({"cloth-fibre": "denim", "cloth-wash": "enlarge"}, "main", "cm").cloth
    assert washed.length_to_buy(1000.0) == 1100.0  # (1000 + 20) / 0.95 = 1073.7, in tenths of a metre
    assert larger.length_to_buy(1000.0) == 1100.0  # 1020, in tenths of a metre
    assert washed.usable_width < larger.usable_width


@pytest.mark.parametrize(
    ("mm", "units", "said"),
    [(900.0, "cm", "0.9 m"), (914.4, "in", "1 yd"), (1143.0, "in", "1 1/4 yd"), (114.3, "in", "1/8 yd")],
)
def test_cloth_is_asked_for_as_it_is_sold(mm: float, units: str, said: str) -> None:
    assert bought(mm, units) == said


def test_a_search_goes_on_beside_the_pages_until_it_is_stopped(client: TestClient) -> None:
    started = client.post("/cloth/drawers/search", data={"query": QUERY, "seconds": "30"})
    assert started.status_code == 303
    name = parse_qs(urlsplit(started.headers["location"]).query)["search"][0]
    going = client.get(started.headers["location"].partition("#")[0])
    assert "Good enough: stop" in going.text
    assert 'http-equiv="refresh"' in going.text  # goes on without JavaScript too
    stopped = client.post(f"/cloth/drawers/search/{name}/stop", data={"query": f"{QUERY}&search={name}"})
    assert stopped.status_code == 303
    told = found_by(client, started.headers["location"].partition("#")[0])
    assert told["count"] >= 1
    assert told["share"] == 1.0
    assert 'class="line cut"' in told["html"]
    after = client.get(stopped.headers["location"].partition("#")[0])
    assert "Good enough: stop" not in after.text


def test_a_search_that_ended_with_the_workroom_is_told_and_keeps_what_was_typed(client: TestClient) -> None:
    page = client.get("/cloth/drawers?cloth-width=112+cm&search=of-yesterday").text
    assert "This search ended when the workroom was closed" in page
    assert 'value="112 cm"' in page
    assert "of-yesterday" not in page.partition('id="found"')[0]  # it is not asked for again
    assert "This search ended" not in client.get("/cloth/drawers?cloth-width=112+cm").text


def test_each_lay_that_a_search_finds_is_shorter_than_the_one_before(room: Room) -> None:
    recipe = room.recipe("casing-top")
    assert recipe is not None
    outcome = room.fulfil(understand(recipe, {}, room.preferences).wish)
    on = laid_on(outcome, {"cloth-way": "open"})
    left = iter(range(40))
    lengths = [lay.length for lay in improving(on)(lambda: next(left, None) is not None)]
    assert len(lengths) > 1
    assert lengths == sorted(lengths, reverse=True)
    first = first_of(on).lay
    assert first is not None
    assert lengths[-1] < first.length


def test_a_row_on_the_fold_that_decides_the_length_is_told(client: TestClient) -> None:
    assert "Fold the cloth another way" in client.get("/cloth/casing-top?cloth-way=folded").text


def test_ways_and_widths_are_compared_and_the_least_cloth_is_marked(client: TestClient) -> None:
    started = client.post("/cloth/bib/search", data={"query": "cloth-price=10", "kind": "ways"})
    told = found_by(client, started.headers["location"].partition("#")[0])
    assert told["html"].count("least cloth") == 1
    for way in ("open", "folded", "folded crosswise", "four layers"):
        assert f'<th scope="row">{way}</th>' in told["html"]
    assert "112 cm wide" in told["html"]


def test_too_many_searches_at_once_are_refused_and_a_place_comes_free() -> None:
    searches = LongWorks()

    def endless(keep_going: Callable[[], bool]) -> Iterator[int]:
        yield 1
        while keep_going():
            time.sleep(0.01)
            yield 1

    going = [searches.start(endless, 4 * PATIENCE) for _ in range(AT_ONCE)]
    assert searches.start(endless, 4 * PATIENCE) is None
    searches.stop_all()
    assert all(one is not None and one.wait(PATIENCE) for one in going)
    last = searches.start(endless, 0.05)
    assert last is not None
    assert last.wait(PATIENCE)  # ends by itself when its time is over
    assert last.found


def test_a_search_with_nothing_left_to_try_says_so(client: TestClient) -> None:
    started = client.post("/cloth/bib/search", data={"query": "cloth-way=open", "seconds": "120"})
    told = found_by(
        client, started.headers["location"].partition("#")[0]
    )  # long before the two minutes are over
    assert "cannot take noticeably less" in told["html"]


def test_a_search_that_breaks_is_over_and_keeps_what_it_found() -> None:
    def breaking(_: Callable[[], bool]) -> Iterator[int]:
        yield 7
        raise ZeroDivisionError

    search = LongWorks().start(breaking, PATIENCE)
    assert search is not None
    assert search.wait(PATIENCE)
    assert search.found == [7]
    assert isinstance(search.fault, ZeroDivisionError)


@pytest.mark.parametrize(
    "path",
    ["/cloth/no-such", "/cloth/bib/search/none.json", "/cloth/no-such/search/none.json", "/cloth/..%2Fbib"],
)
def test_what_is_not_there_is_told(client: TestClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_searches_from_another_site_are_not_begun(client: TestClient) -> None:
    for path in ("/cloth/bib/search", "/cloth/bib/search/x/stop"):
        assert (
            client.post(path, data={"query": ""}, headers={"sec-fetch-site": "cross-site"}).status_code == 403
        )
    assert client.post("/cloth/bib/search/x/stop", data={"query": ""}).status_code == 404
    assert client.post("/cloth/no-such/search", data={"query": ""}).status_code == 404


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_stay_words(client: TestClient, words: str) -> None:
    fields = dict.fromkeys(
        ("for-name", "cloth-width", "cloth-price", "cloth-name", "cloth-way", "search", *WISHED), words
    )
    page = client.get("/cloth/bib?" + urlencode(fields))
    assert page.status_code == 200
    harmless(page.text)


def test_every_garment_can_be_laid_in_some_way(client: TestClient, room: Room) -> None:
    for recipe in room.recipes():
        page = client.get(f"/cloth/{recipe.file}", params={"cloth-way": Way.OPEN})
        assert page.status_code == 200
        assert "Buy <b>" in page.text, recipe.file


def test_a_test_square_tells_what_the_wash_takes() -> None:
    told = {"cloth-fibre": "test square", "cloth-washed-along": "19 cm", "cloth-washed-across": "19.8 cm"}
    found = read_cloth(told, "main", "cm")
    assert found.refused == {}
    assert found.cloth.shrinkage.along == pytest.approx(0.05)  # 20 cm before: 1 - 19 / 20
    assert found.cloth.shrinkage.across == pytest.approx(0.01)
    sides = {"cloth-square": "50 cm", "cloth-washed-along": "47.5 cm", "cloth-washed-across": "49.5 cm"}
    larger = read_cloth(told | sides, "main", "cm")
    assert larger.cloth.shrinkage.along == pytest.approx(0.05)
    wrong = read_cloth(told | {"cloth-washed-along": "10 cm"}, "main", "cm")
    assert "30 %" in wrong.refused["cloth-square"]
    assert wrong.cloth.shrinkage.along == 0.0


def test_a_tube_is_laid_as_a_tube_on_a_width_of_its_own(client: TestClient) -> None:
    found = read_cloth({"cloth-way": "tube", "cloth-width": "140 cm"}, "main", "cm").cloth
    assert (found.tube, found.width, found.selvedge) == (True, 750.0, 0.0)
    assert read_cloth({"cloth-way": "tube", "cloth-width": "60 cm"}, "main", "cm").cloth.width == 600.0
    assert "Buy <b>" in client.get("/cloth/bloomers?cloth-way=tube").text


@pytest.mark.parametrize(("length", "told"), [("2 m", "<b>are enough</b>"), ("30 cm", "<b>not enough</b>")])
def test_the_cloth_in_hand_is_enough_or_not(client: TestClient, length: str, told: str) -> None:
    page = client.get("/cloth/bib", params={"cloth-length": length}).text
    assert told in page
    assert "Buy <b>" not in page


def test_stripes_are_matched_on_the_cloth_that_is_asked_for(client: TestClient) -> None:
    found = read_cloth({"cloth-along": "4 cm", "cloth-across": "3 cm"}, "main", "cm").cloth
    assert found.repeat is not None
    assert (found.repeat.along, found.repeat.across) == (40.0, 30.0)
    assert read_cloth({}, "main", "cm").cloth.repeat is None
    assert client.get("/cloth/trousers?cloth-along=4+cm").status_code == 200


def test_stripes_may_be_ticked_as_uneven(client: TestClient) -> None:
    striped = {"cloth-way": "open", "cloth-along": "4 cm", "cloth-across": "3 cm"}
    ticked = striped | {"cloth-uneven-across": "yes"}
    found = read_cloth(ticked, "main", "cm").cloth.repeat
    assert found is not None
    assert (found.uneven_along, found.uneven_across) == (False, True)
    page = client.get("/cloth/trousers", params=ticked).text
    assert "run on round the body" in page
    assert 'name="cloth-uneven-across" value="yes" checked' in page
    assert 'name="cloth-uneven-along" value="yes">' in page
    assert "run on round the body" not in client.get("/cloth/trousers", params=striped).text


def test_a_tick_without_a_repeat_is_told_at_the_repeat() -> None:
    asked = read_cloth({"cloth-uneven-along": "yes", "cloth-across": "3 cm"}, "main", "cm")
    assert "repeat along" in asked.refused["cloth-along"]
    assert asked.cloth.repeat is not None
    assert not asked.cloth.repeat.uneven_along
    wrong = read_cloth({"cloth-uneven-along": "yes", "cloth-along": "wide"}, "main", "cm")
    assert "wide" in wrong.refused["cloth-along"]


def test_pieces_come_from_scraps_or_it_is_said_that_they_do_not(client: TestClient) -> None:
    query = {"cloth-way": "scraps", "cloth-scraps": "60 x 50 cm; 50 x 50 cm"}
    enough = client.get("/cloth/bib", params=query).text
    assert "All of it comes from the scraps" in enough
    assert "Compare ways" not in enough
    assert not re.search(r'<th scope="row">cloth', enough)  # nothing is to be bought of it
    small = unescape(client.get("/cloth/bib", params=query | {"cloth-scraps": "10 x 10 cm"}).text)
    assert "All of it comes" not in small
    assert 'class="warn"' in small
    unclear = unescape(client.get("/cloth/bib", params=query | {"cloth-scraps": "a rag"}).text)
    assert "Write each scrap" in unclear
    assert 'value="a rag"' in unclear


def test_scraps_without_a_unit_are_in_the_makers_own() -> None:
    bare, said = (
        read_cloth({"cloth-way": "scraps", "cloth-scraps": one}, "main", "cm")
        for one in ("60x40", "600 mm x 40 cm")
    )
    assert bare.scraps == said.scraps
    assert {(point.x, point.y) for point in bare.scraps[0]} == {(0, 0), (600, 0), (600, 400), (0, 400)}


def test_the_lay_is_printed_to_follow_and_at_full_size(client: TestClient) -> None:
    page = unescape(client.get("/cloth/bib?cloth-width=112+cm").text)
    links = re.findall(r'href="(/cloth/bib/\w+\.pdf[^"]*)"', page)
    assert len(links) == 2
    for link in links:
        assert "cloth-width=112" in link
        assert client.get(link).content.startswith(b"%PDF")
    assert client.get("/cloth/bib/lay.pdf?cloth-way=scraps").status_code == 404


def test_names_of_pieces_are_read_as_words(client: TestClient) -> None:
    page = unescape(client.get("/cloth/yoke-frock", params={"cloth-width": "40 cm"}).text)
    assert '"front skirt" is' in page
    assert "front_skirt" not in page.partition('id="lays"')[2]
    assert re.search(r'action="/cloth/yoke-frock/search" hidden>', page)  # there is nothing to shorten
