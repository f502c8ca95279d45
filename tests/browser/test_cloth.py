"""The cloth of a lined garment in the browser: a slip for each cloth, a search that outlives the workroom."""

from __future__ import annotations

import re
import time
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.browser.axe import grave_faults
from tests.browser.conftest import opened
from tests.lined import LINED

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import Page

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

WIDTHS = (1280, 820, 390)
PATH = "/cloth/lined-bag"


@pytest.fixture
def bag(served: Served) -> str:
    """The address of the bag's cloth."""
    folder = served.room.folder / "recipes"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "lined-bag.recipe").write_text(LINED, encoding="utf-8")
    return served.address + PATH


def test_each_cloth_has_its_slip_by_keyboard_and_what_is_wrong_is_told_there(
    bag: str, visit: Callable[..., Visit]
) -> None:
    made = visit(bag)
    page, lining = made.page, made.page.get_by_role("group", name=re.compile("^Lining"))
    lining.get_by_label("Width", exact=True).fill("ninety")
    lining.get_by_label("Price a metre").fill("5,50")
    page.keyboard.press("Enter")
    page.get_by_text("“ninety” is not understood").wait_for()
    wrong = lining.get_by_label("Width", exact=True)
    expect(wrong).to_have_value("ninety")
    assert (
        page.locator(f"[id='{wrong.get_attribute('aria-describedby')}']").inner_text().startswith("“ninety”")
    )
    expect(lining.get_by_label("Price a metre")).to_have_value("5,50")
    wrong.fill("60 cm")
    lining.get_by_label("Laid").select_option("open")
    page.get_by_role("link", name="Prices of thread").click()  # unfolds them
    page.get_by_label("Thread, a reel").fill("2.05")
    page.keyboard.press("Enter")
    row = page.get_by_role("row", name=re.compile("^lining"))
    row.get_by_text("4.95").wait_for()
    assert page.get_by_role("region", name="Lining", exact=True).locator(".to-buy b").all_inner_texts() == [
        "0.9 m",
        "4.95",
    ]
    expect(page.locator(".shopping tfoot td.newest")).to_have_text("7.00")
    assert made.complaints == []
    assert made.only_here()


def test_a_search_that_the_workroom_did_not_outlive_is_gone_on_from(
    served: Served, visit: Callable[..., Visit], kept_port: int
) -> None:
    with opened(served.room, kept_port) as address:
        page = visit(f"{address}/cloth/drawers?cloth-way=open").page
        page.get_by_label(re.compile("shorter lay")).select_option("120")
        page.get_by_role("button", name="Search").click()
        page.locator("progress").wait_for()
        page.wait_for_function("() => Number(document.querySelector('.going').dataset.count) >= 2")
        until = time.monotonic() + 30.0
        while not list((served.room.folder / "lays").glob("*.json")) and time.monotonic() < until:
            time.sleep(0.05)
    served.room.searches.end_all(10.0)
    with opened(
        served.room, kept_port
    ):  # the page asks on, hears that its search is gone, and is loaded again
        page.get_by_text("has been checked again; search on if you like").wait_for()
        kept = page.locator(".to-buy").inner_text()
        page.get_by_role("button", name="Search on").click()
        page.locator("progress").wait_for()
        page.get_by_role("button", name="Good enough: stop").click()
        page.wait_for_url(lambda url: "search=" not in url)
        page.get_by_role("button", name="Compare ways and widths").wait_for()
        assert laid(page.locator(".to-buy").inner_text()) <= laid(kept)


def laid(told: str) -> float:
    """The length that is laid, as the page tells it [cm]."""
    found = re.search(r"([\d.]+) cm are laid", told)
    assert found, told
    return float(found[1])


@pytest.mark.parametrize("width", WIDTHS)
def test_the_page_of_several_cloths_has_no_grave_fault_and_is_no_wider_than_its_screen(
    bag: str, visit: Callable[..., Visit], width: int
) -> None:
    made = visit(f"{bag}?cloth-width.lining=wide&cloth-spots=here&price-thread=dear", width, 844)
    assert made.page.evaluate("document.documentElement.scrollWidth") <= width
    found = grave_faults(made.page)
    made.page.evaluate("document.documentElement.className = 'dark'")
    found += [f"dark: {fault}" for fault in grave_faults(made.page, only="color-contrast")]
    assert found == []


def test_several_cloths_need_no_javascript(bag: str, window: Callable[..., Page]) -> None:
    page = window(java_script_enabled=False)
    page.goto(bag)
    page.get_by_role("group", name=re.compile("^Lining")).get_by_label("In hand").fill("1 m")
    page.get_by_role("button", name="Lay", exact=True).click()
    lining = page.get_by_role("region", name="Lining", exact=True)
    expect(lining.locator(".to-buy")).to_contain_text("are enough")
    lining.get_by_role("button", name="Compare ways and widths").click()
    page.wait_for_url(re.compile("search="))
    lining.get_by_text("least cloth").wait_for()  # the page loads itself again until the table is there


@pytest.mark.parametrize("width", WIDTHS)
def test_the_lay_is_drawn_once_and_on_a_telephone_whole(
    served: Served, visit: Callable[..., Visit], width: int
) -> None:
    page = visit(f"{served.address}/cloth/trousers?cloth-way=open&cloth-width=90+cm", width, 844).page
    drawn = page.locator(".lay-drawn svg:visible")
    expect(drawn).to_have_count(1)
    box = drawn.bounding_box()
    assert box is not None
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= width
    assert box["height"] > box["width"] / 2  # 88 cm across and 72 cm long, with its figures


def test_front_and_back_are_cut_at_once_without_javascript(
    served: Served, window: Callable[..., Page]
) -> None:
    page = window(java_script_enabled=False)
    page.goto(f"{served.address}/cloth/casing-top")
    page.get_by_label("Laid").select_option("four layers, front and back at once")
    page.get_by_role("button", name="Lay", exact=True).click()
    expect(page.locator("#lay-main")).to_contain_text("cut away what it does not cover")
    expect(page.locator("#lay-main .to-buy")).to_contain_text("Buy")
