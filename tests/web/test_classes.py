"""A class: the same draft for all, every pupil with her own numbers."""

from __future__ import annotations

import io
import re
import time
import zipfile
from html import unescape
from threading import Event
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
from fastapi.testclient import TestClient

from littlefold.store import CardBox, ClassBook, SewingClass
from littlefold.web.app import make_shared
from littlefold.web.keys import keep_keys, make_keys
from littlefold.web.long_work import LongWork
from littlefold.web.pages.children_box import Cards
from littlefold.web.pages.class_drafts import numbers_beside, pupil_drafts, steps_together
from littlefold.web.passphrase import Cost
from tests.web.conftest import HOME
from tests.web.test_hostile_names import HOSTILE, harmless, in_recipe

if TYPE_CHECKING:
    from httpx import Response

    from littlefold.web.room import Room

PATIENCE = 60.0
pytestmark = pytest.mark.usefixtures("_pupils")


@pytest.fixture
def _pupils(client: TestClient) -> None:
    """Two pupils whose chests differ by 4 cm, and one not measured."""
    for name, chest in (("Mina", "54"), ("Otto", "58"), ("Bo", "")):
        client.post("/children", data={"name": name, "born": "2022-03-01"})
        if chest:
            told = {"name": name, "day": "2026-03-01", "stature": "104", "chest": chest, "head": "50"}
            told |= {"neck": "25", "back_waist": "25"}
            assert client.post("/child/measure", data=told).status_code == 303


def make(client: TestClient, name: str = "Monday", recipe: str = "casing-top", **more: object) -> str:
    answer = client.post("/classes", data={"name": name, "recipe": recipe, "pupil": ["Mina", "Otto"], **more})
    assert answer.status_code == 303, answer.text
    return str(answer.headers["location"])


def test_every_pupil_has_her_own_numbers(client: TestClient, room: Room) -> None:
    make(client, ease="14 cm")
    box = Cards(room).box()
    assert isinstance(box, CardBox)
    one, recipe = ClassBook(box.engine).one("Monday"), room.recipe("casing-top")
    assert isinstance(one, SewingClass)
    assert recipe is not None
    rows = {
        row["title"]: [value for value, _ in row["cells"]]
        for row in numbers_beside(pupil_drafts(room, box, one, recipe))
    }
    assert rows["Chest girth"] == ["54 cm", "58 cm"]
    assert rows["Quarter width at the chest"] == ["17 cm", "18 cm"]  # (54 + 14) / 4, (58 + 14) / 4
    assert rows["Ease round the chest"] == ["14 cm", "14 cm"]


def test_the_page_leads_to_each_pupils_table_steps_and_sheets(client: TestClient) -> None:
    page = unescape(client.get(make(client)).text)
    for kind in ("table", "steps", "print"):
        links = re.findall(rf'href="(/{kind}/casing-top[^"]*for-name=(\w+)[^"]*)"', page)
        assert [name for _, name in links] == ["Mina", "Otto"]
        assert client.get(links[1][0]).status_code == 200
    assert "chest=58" in page


def test_a_step_is_told_once_where_all_do_the_same(client: TestClient, room: Room) -> None:
    make(client)
    box, recipe = Cards(room).box(), room.recipe("casing-top")
    assert isinstance(box, CardBox)
    assert recipe is not None
    one = ClassBook(box.engine).one("Monday")
    assert isinstance(one, SewingClass)
    drafts = pupil_drafts(room, box, one, recipe)
    told = steps_together(drafts)
    assert len(told) == len(drafts[0].outcome.draft.steps)
    for step in told:
        named = [name for _, names in step["said"] for name in names]
        assert sorted(named) == ["Mina", "Otto"]
    widths = next(step["said"] for step in told if "mark C" in step["said"][0][0])
    assert [("17 cm" in sentence, "18 cm" in sentence) for sentence, _ in widths] == [
        (True, False),
        (False, True),
    ]
    page = client.get("/class/steps?name=Monday")
    assert page.status_code == 200
    assert page.text.count('class="all"') == sum(len(step["said"]) == 1 for step in told)


def sheets_of(client: TestClient, name: str) -> Response:
    """The sheets of a class, when they are made."""
    begun = client.post("/class/sheets", data={"name": name})
    assert begun.status_code == 303, begun.text
    link = begun.headers["location"]
    until = time.monotonic() + PATIENCE
    shares = [0.0]
    while not (told := client.get(link.replace("/sheets?", "/sheets.json?")).json())["over"]:
        assert time.monotonic() < until
        shares.append(told["share"])
        time.sleep(0.05)
    assert shares == sorted(shares)
    assert "/class/sheets.zip?" in client.get(link).text
    return client.get(link.replace("/sheets?", "/sheets.zip?"))


def test_making_the_sheets_is_stopped_and_forgotten_with_a_child(
    client: TestClient, room: Room, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen, ordinary = Event(), LongWork.run
    monkeypatch.setattr(
        LongWork, "run", lambda self, work: ordinary(self, work) if seen.wait(PATIENCE) else None
    )
    make(client, recipe="bib")
    begun = client.post("/class/sheets", data={"name": "Monday"}).headers["location"]
    page = client.get(begun).text
    assert "<progress" in page
    assert 'action="/class/sheets/stop"' in page
    work = parse_qs(urlsplit(begun).query)["work"][0]
    stopped = client.post("/class/sheets/stop", data={"name": "Monday", "work": work})
    assert stopped.headers["location"] == "/class?name=Monday"
    seen.set()
    going = room.making.find(work)
    assert going is not None
    assert going.wait(PATIENCE)
    assert not going.is_spent
    assert client.get(begun.replace("/sheets?", "/sheets.zip?")).headers["location"] == "/class?name=Monday"
    client.post("/child/erase", data={"name": "Mina", "written": "Mina"})
    assert room.making.find(work) is None
    assert client.get(begun).headers["location"] == "/class?name=Monday"


def test_the_sheets_of_all_pupils_come_in_one_file(client: TestClient) -> None:
    make(client, recipe="bib")
    answer = sheets_of(client, "Monday")
    with zipfile.ZipFile(io.BytesIO(answer.content)) as together:
        assert together.testzip() is None
        assert [one for one in together.namelist() if one.endswith("pages.pdf")] == [
            "01 Mina/pages.pdf",
            "02 Otto/pages.pdf",
        ]
        for name in together.namelist():
            assert together.read(name).startswith(b"%PDF"), name


def test_a_class_is_changed_without_losing_what_was_not_said(client: TestClient) -> None:
    make(client)
    told = {"was": "Monday", "name": "Tuesday", "recipe": "casing-top", "pupil": ["Otto", "Bo"], "ease": "16"}
    changed = client.post("/class", data=told)
    assert changed.headers["location"] == "/class?name=Tuesday"
    page = client.get("/class?name=Tuesday").text
    assert 'name="ease" value="16 cm"' in page
    assert "Mina</h2>" not in page
    assert client.get("/class?name=Monday").status_code == 404
    client.post("/class", data={"was": "Tuesday", "name": "Tuesday", "recipe": "bib", "pupil": ["Otto"]})
    page = client.get("/class?name=Tuesday").text
    assert "Bib" in page
    assert 'value="16 cm"' not in page


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"name": " ", "recipe": "bib"}, "1 to 80 letters"),
        ({"name": "Tuesday", "recipe": ""}, "Choose the garment"),
        ({"name": "Tuesday", "recipe": "no-such"}, "Choose the garment"),
        ({"name": "Tuesday", "recipe": "bib", "pupil": ["Nobody"]}, "no card of"),
        ({"name": "MONDAY", "recipe": "bib"}, "There is a class"),
    ],
)
def test_what_cannot_be_a_class_is_told_and_what_was_typed_stays(
    client: TestClient, fields: dict[str, object], told: str
) -> None:
    make(client)
    answer = client.post("/classes", data={"pupil": ["Mina"], **fields})
    assert answer.status_code == 422
    assert told in answer.text
    assert f'value="{fields["name"]}"'.strip() in answer.text or fields["name"] == " "


def test_a_draft_is_taken_to_a_class_with_its_choices_and_without_its_child(client: TestClient) -> None:
    page = unescape(client.get("/print/casing-top?ease=16+cm&chest=57+cm&for-name=Mina").text)
    link = re.search(r'href="(/classes\?[^"]*)"', page)
    assert link
    form = unescape(client.get(link[1]).text)
    assert '<option value="casing-top" selected>' in form
    assert '<input type="hidden" name="ease" value="16 cm">' in form
    assert "57 cm" not in form
    location = make(client, ease="16 cm")
    assert 'value="16 cm"' in client.get(location).text


def test_a_class_is_put_away_and_its_pupils_stay(client: TestClient) -> None:
    make(client)
    assert client.post("/class/away", data={"name": "Monday"}).status_code == 303
    assert client.get("/class?name=Monday").status_code == 404
    assert client.post("/class/away", data={"name": "Monday"}).status_code == 404
    assert "Mina" in client.get("/children").text


def test_a_class_whose_recipe_is_gone_can_be_given_another(client: TestClient, room: Room) -> None:
    assert room.own.save("mine", in_recipe("mine"), "new") is None
    make(client, recipe="mine")
    (room.folder / "recipes" / "mine.recipe").unlink()
    assert "Its recipe is gone" in client.get("/class?name=Monday").text
    assert "its recipe is gone" in client.get("/classes").text
    assert client.get("/class/steps?name=Monday").status_code == 422


@pytest.mark.parametrize("words", HOSTILE[:-1])
def test_words_of_a_class_stay_words(client: TestClient, room: Room, words: str) -> None:
    assert client.post("/children", data={"name": words.strip()}).status_code == 303
    assert room.own.save("mine", in_recipe(words), "new") is None
    told = {"name": words, "recipe": "mine", "pupil": [words], "ease": words}
    made = client.post("/classes", data=told)
    assert made.status_code == 303, made.text
    for path in (
        "/classes",
        made.headers["location"],
        made.headers["location"].replace("/class?", "/class/steps?"),
    ):
        page = client.get(path)
        assert page.status_code == 200
        harmless(page.text)
    sheets = sheets_of(client, parse_qs(urlsplit(made.headers["location"]).query)["name"][0])
    with zipfile.ZipFile(io.BytesIO(sheets.content)) as together:
        for name in together.namelist():
            assert re.fullmatch(r"01[\w -]*/[a-z-]+\.pdf", name), name


def test_the_class_itself_sees_neither_children_nor_classes(client: TestClient, room: Room) -> None:
    make(client)
    client.get("/table/bib?for-name=Mina&for-size=92")
    assert "Mina" in client.get("/").text
    keep_keys(room.folder, make_keys("blue kettle on a ladder", "seven paper boats", Cost(2**4)))
    pupil = TestClient(make_shared(room), base_url=HOME, follow_redirects=False)
    assert pupil.post("/door", data={"passphrase": "seven paper boats"}).status_code == 303
    first = pupil.get("/").text
    assert "Start with a garment" in first
    for hidden in ("Mina", "Start with a child", "Lately", "/classes", "/children"):
        assert hidden not in first
    for path in (
        "/classes",
        "/class?name=Monday",
        "/class/steps?name=Monday",
        "/class/sheets.zip?name=Monday",
        "/class/sheets?name=Monday",
        "/sample",
    ):
        assert pupil.get(path).status_code == 403
    assert pupil.get("/first/casing-top").status_code == 200
    pupil.get("/first/casing-top/drawn?for-name=Pupil&for-size=98")
    assert "Pupil" not in client.get("/").text  # what a pupil draws is not on the maker's table
