"""What a search has found outlives the workroom: kept as it is found, verified again, bounded, gone with the child."""

from __future__ import annotations

import json
import time
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
from fastapi.testclient import TestClient

from littlefold.web import kept_lays
from littlefold.web.app import make_app
from littlefold.web.asked import understand
from littlefold.web.kept_lays import KeptLays
from littlefold.web.pages.cloth_laid import best_lay, first_of, improving, on_cloths
from littlefold.web.recent import forget_child
from littlefold.web.room import Room
from littlefold.web.visitor import Visitor
from tests.web.conftest import HOME

if TYPE_CHECKING:
    from pathlib import Path

    from littlefold.lay.lay import Lay
    from littlefold.web.pages.cloth_laid import OnCloth

QUERY = {"cloth-way": "open", "for-name": "Mina"}
SAME = 0.01
"""Settling anew moves the pieces by less than this [mm]."""


def laid_on(room: Room, fields: dict[str, str], name: str = "drawers") -> OnCloth:
    recipe = room.recipe(name)
    assert recipe is not None
    asked = understand(recipe, fields, room.preferences)
    return on_cloths(room.fulfil(asked.wish), fields, "cm")[0]


def searched(room: Room, on: OnCloth, moves: int = 30) -> Lay:
    """The best lay of a short search, kept as a search keeps it."""
    left = iter(range(moves))
    work = room.lays.keeping(on.who, on.question, improving(on))
    return list(work(lambda: next(left, None) is not None))[-1]


def opened_anew(room: Room) -> TestClient:
    return TestClient(make_app(Room(room.folder, today=room.today)), base_url=HOME, follow_redirects=False)


def files(room: Room) -> list[Path]:
    return sorted((room.folder / "lays").glob("*.json"))


def test_after_a_restart_the_best_lay_found_is_there_and_can_be_gone_on_from(room: Room) -> None:
    on = laid_on(room, QUERY)
    first, best = first_of(on).lay, searched(room, on)
    assert first is not None
    assert best.length < first.length
    anew = opened_anew(room)
    page = anew.get("/cloth/drawers", params=QUERY | {"search": "of-yesterday"}).text
    assert "This search ended when the workroom was closed. The best lay that it had found was kept" in page
    assert "<button>Search on</button>" in page
    again = Room(room.folder).lays.find(on.who, on.question)
    assert again is not None
    assert again.length == best.length
    started = anew.post(
        "/cloth/drawers/search", data={"query": "cloth-way=open&for-name=Mina", "seconds": "10"}
    )
    name = parse_qs(urlsplit(started.headers["location"]).query)["search"][0]
    anew.post(f"/cloth/drawers/search/{name}/stop", data={"query": "cloth-way=open&for-name=Mina"})
    on_disk = room.lays.find(on.who, on.question)
    assert on_disk is not None
    assert on_disk.length <= best.length  # a search that goes on loses nothing


def test_a_search_goes_on_from_the_lay_that_was_kept(room: Room) -> None:
    on = laid_on(room, QUERY)
    best = searched(room, on)
    lengths = [lay.length for lay in improving(on, start=best, seed=9)(lambda: False)]
    assert lengths[0] == pytest.approx(best.length, abs=SAME)


def test_with_nothing_better_found_that_is_said(room: Room) -> None:
    page = opened_anew(room).get("/cloth/drawers", params={"search": "of-yesterday"}).text
    assert "before it had found a better lay" in page
    assert "Search on" not in page
    ways = (
        opened_anew(room).get("/cloth/drawers", params={"search": "of-yesterday", "search-of": "ways"}).text
    )
    assert "This comparison ended when the workroom was closed" in ways
    assert "search-of" not in ways


def test_a_price_or_the_cloth_in_hand_does_not_lose_the_lay_but_another_cloth_does(room: Room) -> None:
    on = laid_on(room, QUERY)
    best = searched(room, on)
    priced = laid_on(room, QUERY | {"cloth-price": "9,50", "cloth-length": "2 m"})
    assert priced.question == on.question
    found = best_lay(priced, [best])
    assert found is not None
    assert (found.length, found.cloth.in_hand) == (best.length, 2000.0)
    for changed in (
        {"cloth-width": "150 cm"},
        {"cloth-nap": "yes"},
        {"cloth-gap": "1 cm"},
        {"cloth-spots": "9 x 9 cm + 5 x 5 cm"},
        {"cloth-kept": "leg = 50 x 60 cm"},
        {"cloth-way": "folded"},
    ):
        other = laid_on(room, QUERY | changed)
        assert other.question != on.question, changed
        shown = best_lay(other, [best])
        assert shown is None or shown.placements != best.placements, changed
    sizes = {laid_on(room, {"for-size": size}, "trousers").question for size in ("98", "104")}
    assert len(sizes) == 2  # other pieces


@pytest.mark.parametrize("spoilt", ["cut short", "pieces on each other", "no lay"])
def test_what_no_longer_holds_is_not_shown_and_thrown_away(room: Room, spoilt: str) -> None:
    on = laid_on(room, QUERY)
    searched(room, on)
    (file,) = files(room)
    told = json.loads(file.read_text())
    for place in told["placements"]:
        place["x"], place["y"] = 0.0, 0.0
    texts = {
        "cut short": file.read_text()[:-100],
        "pieces on each other": json.dumps(told),
        "no lay": '{"format": "littlefold-lay/1"}',
    }
    file.write_text(texts[spoilt])
    page = opened_anew(room).get("/cloth/drawers", params=QUERY)
    assert page.status_code == 200
    assert "Search on" not in page.text
    assert files(room) == []


def test_only_so_many_are_kept_and_none_that_is_too_large(
    room: Room, monkeypatch: pytest.MonkeyPatch
) -> None:
    lay = first_of(laid_on(room, {}, "bib")).lay
    assert lay is not None
    questions = [f"{number:064x}" for number in range(kept_lays.MOST + 3)]
    (room.folder / "lays").mkdir(parents=True)
    (room.folder / "lays" / "tmpbroken").write_text("half")
    for question in questions:
        room.lays.keep("", question, lay)
    assert len(list((room.folder / "lays").iterdir())) == kept_lays.MOST
    assert room.lays.find("", questions[-1]) is not None
    monkeypatch.setattr(kept_lays, "LARGEST", 100)
    room.lays.keep("", "f" * 64, lay)
    assert not (room.folder / "lays" / f"{'f' * 64}.json").exists()
    assert len(files(room)) == kept_lays.MOST


def test_the_lays_of_an_erased_child_go_with_her(room: Room) -> None:
    searched(room, laid_on(room, QUERY))
    searched(room, laid_on(room, {"cloth-way": "open", "for-name": "Jonte"}))
    assert len(files(room)) == 2
    forget_child(room.folder, " MINA ")
    assert len(files(room)) == 1
    assert room.lays.find("Mina", laid_on(room, QUERY).question) is None


def test_a_class_keeps_its_lays_apart(room: Room) -> None:
    pupils = Room(room.folder, visitor=Visitor.PUPIL)
    on = laid_on(room, {"cloth-way": "open"})
    searched(pupils, on)
    assert files(room) == []
    assert pupils.lays.find(on.who, on.question) is not None
    assert room.lays.find(on.who, on.question) is None


def test_a_folder_that_cannot_be_written_stops_no_search(tmp_path: Path, room: Room) -> None:
    (tmp_path / "file").write_text("no folder")
    on = laid_on(room, QUERY)
    left = iter(range(20))
    work = KeptLays(tmp_path / "file").keeping(on.who, on.question, improving(on))
    assert list(work(lambda: next(left, None) is not None))


def test_a_search_that_goes_on_while_a_child_is_erased_leaves_nothing(room: Room, client: TestClient) -> None:
    client.post("/children", data={"name": "Mina"})
    started = client.post(
        "/cloth/drawers/search", data={"query": "cloth-way=open&for-name=Mina", "seconds": "120"}
    )
    name = parse_qs(urlsplit(started.headers["location"]).query)["search"][0]
    going = room.searches.find(name)
    assert going is not None
    until = time.monotonic() + 60.0
    while not files(room) and time.monotonic() < until:
        time.sleep(0.05)
    assert files(room)  # something that has to go
    erased = client.post("/child/erase", data={"name": "Mina", "written": "Mina"})
    assert erased.headers["location"].endswith("done=erased")
    assert going.wait(10.0)
    assert files(room) == []
    assert room.searches.find(name) is None
