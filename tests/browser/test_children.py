"""A child is measured, a wrong reading caught, her card erased; a lay gets shorter while one looks on."""

from __future__ import annotations

import re
import time
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import Page

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

WIDTHS = [1280, 820, 390]
COMPARED = 180_000
"""Until every way to lay a garment was tried, on a slow machine [ms]."""


@pytest.fixture(autouse=True)
def _own_box(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)


def new_card(made: Visit, name: str) -> None:
    page = made.page
    page.get_by_label("Name or nickname").fill(name)
    page.get_by_label("Born").fill("2022-08-14")
    page.get_by_label("girls").check()
    page.get_by_role("button", name="Make the card").click()
    page.get_by_role("heading", name=name, exact=True).wait_for()


def keep_readings(page: Page) -> None:
    page.get_by_role("button", name="Keep these readings").click()
    page.get_by_text("The readings are on the card").wait_for()
    page.wait_for_load_state()


def test_a_wrong_reading_is_caught_while_it_is_typed(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/children")
    page = made.page
    new_card(made, "Mina")
    page.get_by_role("link", name="Measure", exact=True).click()
    page.get_by_label("Height").fill("104")
    page.keyboard.press("Enter")
    page.get_by_label("Head girth").fill("50.5")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("head=50.5"))
    page.get_by_role("button", name=re.compile("^Chest girth")).click()
    chest = page.get_by_label("Chest girth", exact=True)
    chest.fill("23")
    page.get_by_text("23 looks like inches").wait_for()  # without any button
    page.reload()
    page.get_by_role("button", name="Look at all, and keep").wait_for()
    assert "head=50.5" in page.url  # nothing typed before is lost
    chest.fill("23")
    page.get_by_role("button", name="Look at all, and keep").click()
    page.get_by_role("button", name="Keep these readings").click()
    page.get_by_text("Nothing was kept yet").wait_for()
    page.get_by_label("Chest girth", exact=True).fill("58,5")
    page.locator("[data-said=chest]", has_text="58.5 cm").wait_for()
    page.locator("#confirm").wait_for(state="hidden")
    keep_readings(page)
    chest = page.get_by_role("row", name=re.compile("Chest girth")).first.get_by_role("cell").first
    expect(chest).to_have_text("58.5 cm")
    assert made.only_here()
    assert [said for said in made.complaints if "422" not in said] == []


def test_a_wrong_day_is_told_where_it_is_typed(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/children")
    page = made.page
    new_card(made, "Mina")
    page.get_by_role("link", name="Measure", exact=True).click()
    day, told = page.get_by_label("Measured on"), page.locator("#s-day")
    day.fill("2020-01-01")
    expect(told).to_contain_text("was born on 2022-08-14")  # without any button
    day.fill("2026-02-20")
    expect(told).to_be_empty()
    page.get_by_label("Height").fill("104")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("day=2026-02-20.*at=head"))
    expect(day).to_have_value("2026-02-20")
    assert made.complaints == []


def test_a_child_is_erased_after_two_questions(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/children")
    page = made.page
    new_card(made, "Otis")
    page.get_by_role("link", name="Erase this card").click()
    page.get_by_role("link", name=re.compile("go on to erase")).click()
    page.get_by_label(re.compile("write the name")).fill("Otis")
    page.get_by_role("button", name="Erase for good").click()
    page.get_by_text("Nothing is left of the card").wait_for()
    page.wait_for_load_state()
    assert page.get_by_role("link", name="Otis").count() == 0
    assert made.complaints == []


def test_a_garment_begins_with_her_readings(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/children")
    page = made.page
    new_card(made, "Wanda")
    page.goto(f"{served.address}/child/measure?name=Wanda&stature=104&chest=57&at=all")
    keep_readings(page)
    page.get_by_role("link", name="Draw a garment").click()
    page.get_by_role("link", name=re.compile("^Loose top with a casing neck")).click()
    page.wait_for_url(re.compile("/table/casing-top"))
    expect(page.get_by_label("Chest girth").first).to_have_value("57 cm")
    page.get_by_role("link", name="Print").click()
    page.get_by_role("button", name="Keep", exact=True).click()
    page.get_by_role("heading", name="Print it again exactly").wait_for()
    href = page.get_by_role("link", name=re.compile("^Pattern to join")).get_attribute("href")
    assert page.request.get(f"{served.address}{href}").body().startswith(b"%PDF")
    assert made.complaints == []


def test_a_lay_gets_better_while_one_looks_on_and_stops_when_told(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(f"{served.address}/cloth/drawers?cloth-way=open&cloth-width=140+cm")
    page = made.page
    first = page.locator(".to-buy").inner_text()
    page.get_by_label(re.compile("shorter lay")).select_option("120")
    began = time.monotonic()
    page.get_by_role("button", name="Search").click()
    going = page.locator("progress")
    going.wait_for()
    page.wait_for_function("() => Number(document.querySelector('.going').dataset.count) >= 2")
    share = float(going.evaluate("bar => bar.value"))
    assert 0 <= share <= (time.monotonic() - began) / 120  # of two minutes
    page.get_by_role("button", name="Good enough: stop").click()
    page.wait_for_url(lambda url: "search=" not in url)
    page.get_by_role("button", name="Compare ways and widths").wait_for()
    page.wait_for_load_state()
    better = page.locator(".to-buy").inner_text()
    assert laid(better) < laid(first)
    page.get_by_role("button", name="Compare ways and widths").click()
    page.get_by_text("least cloth").wait_for(timeout=COMPARED)
    assert made.only_here()
    assert made.complaints == []


def laid(told: str) -> float:
    """The length that is laid, as the page tells it [cm]."""
    found = re.search(r"([\d.]+) cm are laid", told)
    assert found, told
    return float(found[1])


@pytest.mark.parametrize("width", WIDTHS)
def test_no_page_is_wider_than_its_screen(served: Served, visit: Callable[..., Visit], width: int) -> None:
    made = visit(f"{served.address}/children", width, 800)
    page = made.page
    new_card(made, "Mina")
    page.goto(f"{served.address}/child/measure?name=Mina&stature=104&chest=57&waist=53&at=all")
    keep_readings(page)
    for path in (
        "/children",
        "/child?name=Mina",
        "/child/measure?name=Mina&at=chest",
        "/child/garments?name=Mina",
    ):
        page.goto(served.address + path)
        made.come_to_rest()
        assert page.evaluate("document.documentElement.scrollWidth") <= width, path
    page.goto(f"{served.address}/cloth/bib")
    made.come_to_rest()
    assert page.locator("main").evaluate("main => main.scrollWidth") <= width  # the lay scrolls by itself


def test_measuring_needs_no_javascript(served: Served, window: Callable[..., Page]) -> None:
    page = window(java_script_enabled=False)
    page.goto(f"{served.address}/children")
    page.get_by_label("Name or nickname").fill("Bo")
    page.get_by_role("button", name="Make the card").click()
    page.get_by_role("link", name="Measure", exact=True).click()
    page.get_by_label("Height").fill("104")
    page.keyboard.press("Enter")
    page.get_by_label("Head girth").fill("fifty")
    page.get_by_role("button", name="Next", exact=True).click()
    expect(page.locator("#said")).to_contain_text("not understood as a length")
    expect(page.get_by_label("Head girth")).to_have_value("fifty")
    page.get_by_label("Head girth").fill("50")
    page.get_by_role("button", name="Look at all, and keep").click()
    keep_readings(page)
