"""The workroom shared in a class, backed up and put back, and closed in the middle of work."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import expect

from littlefold.web.app import make_shared
from littlefold.web.keys import keep_keys, make_keys
from littlefold.web.own_recipes import NEW
from littlefold.web.passphrase import Cost
from littlefold.web.room import Room
from tests.browser.axe import grave_faults
from tests.browser.conftest import DAY, open_door, opened, wait_told

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from playwright.sync_api import Page

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

TEACHER, CLASS = "blue kettle on a ladder", "seven paper boats"


@pytest.fixture
def shared(tmp_path: Path) -> Iterator[str]:
    room = Room(tmp_path / "own", today=lambda: DAY, with_sample=True)
    keep_keys(room.folder, make_keys(TEACHER, CLASS, Cost(2**4)))
    with open_door(make_shared(room)) as address:
        yield address


def come_in(page: Page, passphrase: str) -> None:
    page.get_by_label(re.compile("passphrase", re.IGNORECASE)).fill(passphrase)
    page.get_by_role("button", name="Come in").click()


def test_a_pupil_drafts_and_never_sees_a_card(shared: str, window: Callable[..., Page]) -> None:
    page = window(viewport={"width": 390, "height": 844})
    page.goto(f"{shared}/table/casing-top?chest=56+cm")
    assert urlsplit(page.url).path == "/door"
    assert "plain http" in page.locator("main").inner_text()
    come_in(page, "seven paper bats")
    expect(page.get_by_role("alert")).to_contain_text("not a passphrase")
    come_in(page, CLASS)
    page.wait_for_url(re.compile(rf"{shared}/table/casing-top.*chest=56"))  # where one wanted to go
    page.goto(f"{shared}/steps/casing-top/3?chest=56+cm")
    assert page.get_by_role("link", name="Next").is_visible()
    for path in ("/children", "/child?name=Mina", "/settings", "/write", "/recipes/casing-top/change"):
        answer = page.goto(shared + path)
        assert answer is not None
        assert answer.status == 403, path
        expect(page.get_by_role("alert")).to_contain_text("the teacher's")
    assert page.get_by_role("link", name="Children").count() == 0
    assert "Mina" not in page.goto(f"{shared}/").text()


def test_the_teacher_sees_the_cards_and_goes_out_again(shared: str, window: Callable[..., Page]) -> None:
    page = window()
    page.goto(f"{shared}/children")
    come_in(page, TEACHER)
    page.wait_for_url(f"{shared}/children")
    expect(page.get_by_role("link", name="Mina").first).to_be_visible()
    assert page.evaluate("document.cookie") == ""  # no script can read it
    page.get_by_role("link", name="Go out").click()
    page.get_by_role("button", name="Go out").click()
    expect(page.get_by_role("button", name="Go out")).to_have_count(0)
    page.goto(f"{shared}/children")
    assert urlsplit(page.url).path == "/door"


def test_who_is_in_stays_in_when_the_server_is_started_anew(
    tmp_path: Path, window: Callable[..., Page], kept_port: int
) -> None:
    room = Room(tmp_path / "own", today=lambda: DAY, with_sample=True)
    keep_keys(room.folder, make_keys(TEACHER, CLASS, Cost(2**4)))
    page = window()
    with open_door(make_shared(room), kept_port) as address:
        page.goto(f"{address}/children")
        come_in(page, TEACHER)
        page.wait_for_url(f"{address}/children")
    with open_door(make_shared(room), kept_port):
        page.reload()
        expect(page.get_by_role("link", name="Mina").first).to_be_visible()


def test_what_is_on_the_table_outlives_the_session(shared: str, window: Callable[..., Page]) -> None:
    page = window()
    page.goto(f"{shared}/table/casing-top")
    come_in(page, CLASS)
    page.wait_for_url(f"{shared}/table/casing-top")
    wait_told(page)
    page.context.clear_cookies()
    page.get_by_label("Chest girth").first.fill("57 cm")
    page.locator("#told", has_text="Come in again in another window").wait_for()
    other = page.context.new_page()
    other.goto(f"{shared}/door")
    come_in(other, CLASS)
    other.wait_for_url(f"{shared}/")
    page.get_by_label("Chest girth").first.fill("58 cm")
    page.wait_for_url(re.compile("chest=58"))


@pytest.mark.parametrize("width", [390, 820, 1280])
def test_door_and_settings_hang_over_no_edge(shared: str, window: Callable[..., Page], width: int) -> None:
    page = window(viewport={"width": width, "height": 844})
    page.goto(f"{shared}/settings")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    come_in(page, TEACHER)
    page.get_by_role("button", name="Back up now").click()
    page.get_by_role("status").wait_for()
    page.wait_for_load_state()
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_the_door_has_no_grave_fault(shared: str, window: Callable[..., Page]) -> None:
    page = window(viewport={"width": 390, "height": 844})
    for light, width in [("day", 390), ("dark", 390), ("day", 1280)]:
        page.set_viewport_size({"width": width, "height": 844})
        page.goto(f"{shared}/door")
        come_in(page, "not this")
        page.get_by_text("not a passphrase").wait_for()
        page.wait_for_load_state()
        page.evaluate("light => { document.documentElement.className = light; }", light)
        assert grave_faults(page) == []


def test_the_step_player_leads_back_through_the_door(shared: str, window: Callable[..., Page]) -> None:
    page = window()
    page.goto(f"{shared}/steps/casing-top/3?chest=57+cm")
    come_in(page, CLASS)
    page.locator("#number", has_text="3").wait_for()
    page.reload()  # no step was fetched beforehand
    page.context.clear_cookies()
    page.keyboard.press("ArrowRight")
    page.locator("#sentence", has_text="Your time in the workroom is over").wait_for()
    page.get_by_role("link", name="Come in again").click()
    come_in(page, CLASS)
    page.wait_for_url(re.compile(rf"{shared}/steps/casing-top/4\?.*chest=57"))


def test_backed_up_changed_and_put_back(served: Served, visit: Callable[..., Visit], tmp_path: Path) -> None:
    assert served.room.own.save("mine", 'recipe mine\ntitle "Before"\n', NEW) is None
    made = visit(f"{served.address}/settings")
    page = made.page
    page.get_by_label("to a seam").fill("1.5 cm")
    page.get_by_role("button", name="Keep these settings").click()
    page.get_by_role("status").wait_for()
    page.get_by_role("button", name="Back up now").click()
    with page.expect_download() as download:
        page.get_by_role("link", name=re.compile("^Take littlefold-")).click()
    taken = tmp_path / "taken.zip"
    download.value.save_as(taken)

    page.goto(f"{served.address}/settings")
    page.get_by_label("to a seam").fill("3 cm")
    page.get_by_role("button", name="Keep these settings").click()
    page.get_by_role("status").wait_for()
    (served.room.folder / "recipes" / "mine.recipe").write_text("lost")

    page.get_by_label("A file").set_input_files(
        {"name": "a.zip", "mimeType": "", "buffer": b"PK\3\4 nonsense"}
    )
    page.get_by_label("shall be replaced").check()
    page.get_by_role("button", name="Put it back").click()
    expect(page.get_by_role("alert")).to_contain_text("not a whole backup")
    assert served.room.preferences.seam == 30.0

    page.get_by_label("A file").set_input_files(taken)
    page.get_by_label("shall be replaced").check()
    page.get_by_role("button", name="Put it back").click()
    page.get_by_text("The backup was put back").wait_for()
    expect(page.get_by_label("to a seam")).to_have_value("1.5 cm")
    assert served.room.own.text("mine") == 'recipe mine\ntitle "Before"\n'
    assert [one for one in made.complaints if "422" not in one] == []


def test_a_recipe_that_is_being_written_outlives_the_server(
    visit: Callable[..., Visit], tmp_path: Path, kept_port: int
) -> None:
    room = Room(tmp_path / "own", today=lambda: DAY)
    text = 'recipe mine\ntitle "Half written"\n# the rest tomorrow\n'
    with opened(room, kept_port) as address:
        page = visit(f"{address}/write").page
        page.locator("textarea").fill(text)
        page.get_by_label("Name").fill("mine")
    with opened(room, kept_port):
        page.get_by_role("button", name="Save as my own").click()
        page.wait_for_url(re.compile("/recipes/mine$"))
    assert room.own.text("mine") == text
