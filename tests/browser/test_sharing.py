"""The workroom shared in a class, backed up and put back, and closed in the middle of work."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import pytest

from littlefold.web.app import make_shared
from littlefold.web.keys import keep_keys, make_keys
from littlefold.web.own_recipes import NEW
from littlefold.web.passphrase import Cost
from littlefold.web.room import Room
from tests.browser.axe import grave_faults
from tests.browser.conftest import open_door, opened

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

TEACHER, CLASS = "blue kettle on a ladder", "seven paper boats"


@pytest.fixture
def shared(tmp_path: Path) -> Iterator[str]:
    room = Room(tmp_path / "own", with_sample=True)
    keep_keys(room.folder, make_keys(TEACHER, CLASS, Cost(2**4)))
    with open_door(make_shared(room)) as address:
        yield address


def come_in(page: Page, passphrase: str) -> None:
    page.get_by_label(re.compile("passphrase", re.IGNORECASE)).fill(passphrase)
    page.get_by_role("button", name="Come in").click()


def test_a_pupil_drafts_and_never_sees_a_card(shared: str, browser: Browser) -> None:
    pupil = browser.new_context(viewport={"width": 390, "height": 844})
    page = pupil.new_page()
    page.goto(f"{shared}/table/casing-top?chest=56+cm")
    assert urlsplit(page.url).path == "/door"
    assert "plain http" in page.locator("main").inner_text()
    come_in(page, "seven paper bats")
    assert "not a passphrase" in page.get_by_role("alert").inner_text()
    come_in(page, CLASS)
    page.wait_for_url(re.compile("/table/casing-top.*chest=56"))  # where one wanted to go
    page.goto(f"{shared}/steps/casing-top/3?chest=56+cm")
    assert page.get_by_role("link", name="Next").is_visible()
    for path in ("/children", "/child?name=Mina", "/settings", "/write", "/recipes/casing-top/change"):
        answer = page.goto(shared + path)
        assert answer is not None
        assert answer.status == 403, path
        assert "the teacher's" in page.get_by_role("alert").inner_text()
    assert page.get_by_role("link", name="Children").count() == 0
    assert "Mina" not in page.goto(f"{shared}/").text()
    pupil.close()


def test_the_teacher_sees_the_cards_and_goes_out_again(shared: str, browser: Browser) -> None:
    teacher = browser.new_context()
    page = teacher.new_page()
    page.goto(f"{shared}/children")
    come_in(page, TEACHER)
    page.wait_for_url(f"{shared}/children")
    assert page.get_by_role("link", name="Mina").first.is_visible()
    assert page.evaluate("document.cookie") == ""  # no script can read it
    page.get_by_role("link", name="Go out").click()
    page.get_by_role("button", name="Go out").click()
    page.wait_for_url(re.compile("/door$"))
    page.goto(f"{shared}/children")
    assert urlsplit(page.url).path == "/door"
    teacher.close()


def test_who_is_in_stays_in_when_the_server_is_started_anew(tmp_path: Path, browser: Browser) -> None:
    room = Room(tmp_path / "own", with_sample=True)
    keep_keys(room.folder, make_keys(TEACHER, CLASS, Cost(2**4)))
    context = browser.new_context()
    page = context.new_page()
    with open_door(make_shared(room)) as address:
        port = urlsplit(address).port or 0
        page.goto(f"{address}/children")
        come_in(page, TEACHER)
        page.wait_for_url(f"{address}/children")
    with open_door(make_shared(room), port):
        page.reload()
        assert page.get_by_role("link", name="Mina").first.is_visible()
    context.close()


def test_what_is_on_the_table_outlives_the_session(shared: str, browser: Browser) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{shared}/table/casing-top")
    come_in(page, CLASS)
    page.wait_for_url(re.compile("/table/casing-top"))
    context.clear_cookies()
    page.get_by_label("Chest girth").first.fill("57 cm")
    page.locator("#told", has_text="Come in again in another window").wait_for()
    other = context.new_page()
    other.goto(f"{shared}/door")
    come_in(other, CLASS)
    other.wait_for_url(f"{shared}/")
    page.get_by_label("Chest girth").first.fill("58 cm")
    page.wait_for_url(re.compile("chest=58"))
    context.close()


@pytest.mark.parametrize("width", [390, 820, 1280])
def test_door_and_settings_hang_over_no_edge(shared: str, browser: Browser, width: int) -> None:
    context = browser.new_context(viewport={"width": width, "height": 844})
    page = context.new_page()
    page.goto(f"{shared}/settings")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    come_in(page, TEACHER)
    page.get_by_role("button", name="Back up now").click()
    page.get_by_role("status").wait_for()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    context.close()


def test_the_door_has_no_grave_fault(shared: str, browser: Browser) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 844})
    for light, width in [("day", 390), ("dark", 390), ("day", 1280)]:
        page.set_viewport_size({"width": width, "height": 844})
        page.goto(f"{shared}/door")
        come_in(page, "not this")
        page.get_by_text("not a passphrase").wait_for()
        page.evaluate("light => { document.documentElement.className = light; }", light)
        assert grave_faults(page) == []
    page.close()


def test_the_step_player_leads_back_through_the_door(shared: str, browser: Browser) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{shared}/steps/casing-top/3?chest=57+cm")
    come_in(page, CLASS)
    page.locator("#number", has_text="3").wait_for()
    page.reload()
    context.clear_cookies()
    for _ in range(2):  # the next step was fetched beforehand
        page.keyboard.press("ArrowRight")
        page.wait_for_timeout(200)
    page.locator("#sentence", has_text="Your time in the workroom is over").wait_for()
    page.get_by_role("link", name="Come in again").click()
    come_in(page, CLASS)
    page.wait_for_url(re.compile(r"/steps/casing-top/[45]\?.*chest=57"))
    context.close()


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
    assert "not a whole backup" in page.get_by_role("alert").inner_text()
    assert served.room.preferences.seam == 30.0

    page.get_by_label("A file").set_input_files(taken)
    page.get_by_label("shall be replaced").check()
    page.get_by_role("button", name="Put it back").click()
    page.get_by_text("The backup was put back").wait_for()
    assert page.get_by_label("to a seam").input_value() == "1.5 cm"
    assert served.room.own.text("mine") == 'recipe mine\ntitle "Before"\n'
    assert [one for one in made.complaints if "422" not in one] == []


def test_a_recipe_that_is_being_written_outlives_the_server(
    visit: Callable[..., Visit], tmp_path: Path
) -> None:
    room = Room(tmp_path / "own")
    text = 'recipe mine\ntitle "Half written"\n# the rest tomorrow\n'
    with opened(room) as address:
        port = urlsplit(address).port or 0
        page = visit(f"{address}/write").page
        page.locator("textarea").fill(text)
        page.get_by_label("Name").fill("mine")
    with opened(room, port):
        page.get_by_role("button", name="Save as my own").click()
        page.wait_for_url(re.compile("/recipes/mine$"))
    assert room.own.text("mine") == text
