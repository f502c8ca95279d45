"""A newcomer's first draft, sizes, a class, a fitting, the sample put away: what a maker and teacher does in a day."""

from __future__ import annotations

import io
import re
import zipfile
from threading import Event
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import expect

from littlefold.web import size_run
from littlefold.web.room import Room
from tests.browser.axe import grave_faults
from tests.browser.conftest import DAY, opened

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from playwright.sync_api import Page

    from littlefold.grading import SizeRun
    from littlefold.web.size_run import AskedRun
    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

WIDTHS = [1280, 820, 390]
PRINTED = b"%PDF"
NEVER_SO_LONG = 240
"""More than a run of sizes takes on a slow machine [s]."""


@pytest.fixture(autouse=True)
def _own_box(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)


@pytest.fixture
def playgroup(tmp_path: Path) -> Iterator[str]:
    """A workroom on its first start, with the sample in it."""
    with opened(Room(tmp_path / "own", today=lambda: DAY, with_sample=True)) as address:
        yield address


def test_a_newcomer_comes_from_the_first_page_to_printed_sheets(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(served.address)
    page = made.page
    page.get_by_role("link", name="Loose top with a casing neck").click()
    page.get_by_label("How tall is the child?").fill("very")
    page.keyboard.press("Enter")
    page.get_by_role("alert").wait_for()
    expect(page.get_by_label("How tall is the child?")).to_have_value("very")
    page.get_by_label("How tall is the child?").fill("98")
    page.get_by_label(re.compile("A name")).fill("Bo")
    page.get_by_role("button", name="Draw it").click()
    page.get_by_role("heading", name="Loose top with a casing neck for Bo").wait_for()
    page.wait_for_load_state()
    assert page.locator(".drawing svg path.line").count() > 3
    page.get_by_role("link", name="Print it").click()
    page.get_by_role("heading", name="Three things at the printer").wait_for()
    for name in ("Printer check", "Pattern to join, A4", "Instructions"):
        href = page.get_by_role("link", name=name).get_attribute("href")
        assert "for-size=98" in (href or "")
        assert page.request.get(f"{served.address}{href}").body().startswith(PRINTED)
    page.goto(served.address)  # it is on her table, for the next time
    page.get_by_role("link", name=re.compile("Loose top with a casing neck for Bo")).click()
    page.wait_for_url(re.compile("/table/casing-top.*for-size=98"))
    assert made.only_here()
    assert [said for said in made.complaints if "422" not in said] == []


def test_a_size_run_is_drawn_and_printed(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/trousers?hip_ease=8+cm")
    page = made.page
    page.get_by_role("link", name="Print").first.click()
    page.get_by_role("link", name=re.compile("in several sizes")).click()
    page.get_by_label("From size").select_option("92")
    page.locator("[name=to-size]").select_option("110")
    page.get_by_role("button", name="Draw them").click()
    page.get_by_role("heading", name="All sizes together").wait_for()
    assert parse_qs(urlsplit(page.url).query)["hip_ease"] == ["8 cm"]
    stacked = page.locator(".stacked img")
    stacked.evaluate("image => image.decode()")
    assert stacked.evaluate("image => image.naturalWidth") > 0
    href = page.get_by_role("link", name=re.compile("All sizes to join")).get_attribute("href")
    assert page.request.get(f"{served.address}{href}").body().startswith(PRINTED)
    page.get_by_role("link", name="Size 98").click()
    page.get_by_role("heading", name="Print", exact=True).wait_for()
    assert "for-size=98" in page.url
    assert made.complaints == []


def test_a_long_size_run_shows_how_far_it_is_and_is_stopped(
    served: Served, visit: Callable[..., Visit], monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn, stopped = size_run._drawn, Event()

    def halting(asked: AskedRun, size: int) -> SizeRun:
        if size > 74:  # three of them are drawn
            stopped.wait(NEVER_SO_LONG)
        return drawn(asked, size)

    monkeypatch.setattr(size_run, "_drawn", halting)
    made = visit(f"{served.address}/sizes/a-line-frock?from-size=62&to-size=134")
    page = made.page
    page.get_by_text("are not drawn yet").wait_for()
    page.get_by_role("button", name="Draw them").click()
    page.wait_for_function("() => document.querySelector('progress')?.value > 0.05")
    page.get_by_role("button", name="Stop").click()
    page.get_by_text("are not drawn yet").wait_for()
    assert parse_qs(urlsplit(page.url).query)["to-size"] == ["134"]
    stopped.set()
    page.get_by_label("From size").select_option("104")
    page.get_by_role("button", name="Draw them").click()
    page.get_by_role("heading", name="All sizes together").wait_for(timeout=NEVER_SO_LONG * 1000)
    page.wait_for_load_state()
    assert page.locator(".takings").last.get_by_role("link").count() == 6  # 104, 110 ... 134
    assert made.complaints == []


def test_the_sample_is_put_away_with_one_click_and_does_not_come_again(
    playgroup: str, visit: Callable[..., Visit], tmp_path: Path
) -> None:
    made = visit(playgroup)
    page = made.page
    page.get_by_role("link", name="Runa", exact=True).click()
    page.get_by_role("heading", name="How Runa grows").wait_for()
    page.go_back()
    page.get_by_role("button", name="Put the sample away").click()
    page.get_by_text("The room is yours").wait_for()
    page.wait_for_load_state()
    assert page.get_by_role("link", name="Runa").count() == 0
    with opened(Room(tmp_path / "own", today=lambda: DAY, with_sample=True)) as again:
        page.goto(f"{again}/children")
        page.get_by_text("The box is empty").wait_for()
    assert made.complaints == []


def test_a_changed_child_of_the_sample_is_asked_about_and_stays(
    playgroup: str, visit: Callable[..., Visit]
) -> None:
    page = visit(f"{playgroup}/child?name=Bo").page
    page.get_by_label("A few words").fill("Likes yellow")
    page.get_by_role("button", name="Note it").click()
    page.get_by_text("Likes yellow").wait_for()
    page.goto(playgroup)
    page.get_by_role("button", name="Put the sample away").click()
    page.get_by_text("You have changed Bo").wait_for()
    page.get_by_role("button", name=re.compile("keep what I changed")).click()
    page.get_by_text("The room is yours").wait_for()
    page.goto(f"{playgroup}/children")
    expect(page.locator(".index-card h2")).to_have_text(["Bo"])


def test_a_class_draws_the_same_with_each_pupils_own_numbers(
    playgroup: str, visit: Callable[..., Visit]
) -> None:
    made = visit(f"{playgroup}/classes")
    page = made.page
    page.get_by_label("Name of the class").fill("Friday class")
    page.get_by_label("All draw").select_option("bloomers")
    for pupil in ("Bo", "Mina"):
        page.get_by_role("checkbox", name=pupil).check()
    page.get_by_role("button", name="Make the class").click()
    page.get_by_role("heading", name="Friday class").wait_for()
    hips = page.get_by_role("row", name=re.compile("^Hip girth")).get_by_role("cell")
    expect(hips).to_have_text(["45.5 cm", "49.5 cm"])  # as on their cards
    page.get_by_role("link", name="Draw together, step by step").click()
    page.locator(".class-steps li").first.wait_for()
    told = page.locator(".class-steps dl").first
    expect(told).to_contain_text("Bo")
    expect(told).to_contain_text("Mina")
    page.go_back()
    page.get_by_role("button", name=re.compile("All sheets to print")).click()
    href = page.get_by_role("link", name="Take the sheets along").get_attribute("href")
    with zipfile.ZipFile(io.BytesIO(page.request.get(f"{playgroup}{href}").body())) as together:
        assert {name.partition("/")[0] for name in together.namelist()} == {"01 Bo", "02 Mina"}
        assert all(together.read(name).startswith(PRINTED) for name in together.namelist())
    page.get_by_role("link", name="Back to the class").click()
    page.get_by_role("heading", name="Friday class").wait_for()
    page.get_by_role("link", name="The table").nth(1).click()
    page.wait_for_url(re.compile("/table/bloomers.*for-name=Mina"))
    assert made.only_here()
    assert made.complaints == []


def test_what_a_fitting_showed_becomes_the_next_draft(playgroup: str, visit: Callable[..., Visit]) -> None:
    made = visit(f"{playgroup}/child/draft/1?name=Wanda")
    page = made.page
    page.get_by_label("It showed that").fill("the skirt is short")
    page.get_by_label(re.compile("Length of the skirt")).fill("30 cm")
    page.get_by_role("button", name="Keep it").click()
    page.get_by_text(re.compile("Draft 2 on Wanda.s card.*after the fitting of draft 1")).wait_for()
    expect(page.get_by_label(re.compile("Length of the skirt"))).to_have_attribute("placeholder", "30 cm")
    href = page.get_by_role("link", name=re.compile("Pattern to join")).get_attribute("href")
    assert page.request.get(f"{playgroup}{href}").body().startswith(PRINTED)
    assert made.complaints == []


def test_a_child_is_measured_for_one_garment(playgroup: str, visit: Callable[..., Visit]) -> None:
    made = visit(f"{playgroup}/child/garments?name=Wanda")
    page = made.page
    page.get_by_role("link", name="measure for Trousers with an elastic waist").click()
    page.get_by_text(re.compile("of 6, for: Trousers")).wait_for()
    page.get_by_label("Body rise", exact=True).fill("19")
    page.get_by_role("button", name="Look at all, and keep").click()
    page.get_by_label("Foot length").fill("17.5")
    page.get_by_role("button", name="Keep these readings").click()
    page.get_by_text("The readings are on the card").wait_for()
    newest = page.get_by_role("row", name=re.compile("^Chest girth")).first.get_by_role("cell").first
    expect(newest).to_have_text("56 cm")  # what was not taken again stays
    assert made.complaints == []


def test_what_is_typed_and_not_sent_outlives_a_reload(playgroup: str, visit: Callable[..., Visit]) -> None:
    made = visit(f"{playgroup}/child/measure?name=Otto&at=all")
    page = made.page
    page.get_by_label("Waist girth", exact=True).fill("49")
    page.locator("[data-said=waist]", has_text="49 cm").wait_for()
    page.wait_for_url(re.compile("waist=49"))
    page.reload()
    expect(page.get_by_label("Waist girth", exact=True)).to_have_value("49")
    page.goto(f"{playgroup}/child/draft/1?name=Wanda")
    page.get_by_label("It showed that").fill("half a sentence")
    page.get_by_label(re.compile("Length of the skirt")).fill("30 cm")
    page.reload()
    expect(page.get_by_label("It showed that")).to_have_value("half a sentence")
    expect(page.get_by_label(re.compile("Length of the skirt"))).to_have_value("30 cm")
    page.get_by_role("button", name="Keep it").click()
    page.get_by_text(re.compile("Draft 2 on Wanda")).wait_for()
    page.goto(f"{playgroup}/child/draft/1?name=Wanda")
    assert page.get_by_label("It showed that").input_value() == ""  # it was sent
    page.goto(f"{playgroup}/classes")
    page.get_by_role("checkbox", name="Bo").check()
    page.get_by_label("Name of the class").fill("Friday")
    page.reload()
    expect(page.get_by_role("checkbox", name="Bo")).to_be_checked()
    expect(page.get_by_label("Name of the class")).to_have_value("Friday")
    assert made.complaints == []


def test_a_class_needs_no_javascript(playgroup: str, window: Callable[..., Page]) -> None:
    page = window(java_script_enabled=False)
    page.goto(f"{playgroup}/class?name=Tuesday+class%3A+the+loose+top")
    page.get_by_text("Change the class").click()
    page.get_by_label("Ease round the chest").fill("16")
    page.get_by_role("checkbox", name="Jonte").uncheck()
    page.get_by_role("button", name="Keep the class").click()
    eases = page.get_by_role("row", name=re.compile("^Ease round the chest")).get_by_role("cell")
    expect(eases).to_have_text(["16 cm"] * 3)
    page.goto(f"{playgroup}/garments")
    page.get_by_label(re.compile("Child.s height")).fill("80 cm")
    page.get_by_label("Kind").select_option("bib")
    page.get_by_role("button", name="Show").click()
    expect(page.locator(".card-title")).to_have_text(["Bib"])
    page.goto(f"{playgroup}/cloth/bib")
    page.get_by_label("In hand").fill("1 m")
    page.get_by_role("button", name="Lay", exact=True).click()
    expect(page.locator(".to-buy")).to_contain_text("are enough")


PAGES = (
    "/",
    "/first",
    "/first/casing-top",
    "/first/casing-top/drawn?for-size=98&for-name=Bo",
    "/first/casing-top/print?for-size=98",
    "/garments",
    "/children",
    "/child?name=Runa",
    "/child/garments?name=Runa",
    "/child/draft/1?name=Runa",
    "/child/measure?name=Runa&for=trousers",
    "/classes",
    "/class?name=Tuesday+class%3A+the+loose+top",
    "/class/steps?name=Tuesday+class%3A+the+loose+top",
    "/print/casing-top",
    "/sizes/trousers?from-size=92&to-size=116",
    "/cloth/bib?cloth-way=scraps&cloth-scraps=60x50cm",
    "/sample",
)


@pytest.mark.parametrize("width", WIDTHS)
def test_no_page_of_these_is_wider_than_its_screen(
    playgroup: str, visit: Callable[..., Visit], width: int
) -> None:
    made = visit(playgroup, width, 844)
    for path in PAGES:
        made.page.goto(playgroup + path)
        made.come_to_rest()
        assert made.page.evaluate("document.documentElement.scrollWidth") <= width, path
    assert made.complaints == []
    assert made.only_here()


def test_none_of_these_pages_has_a_grave_fault(playgroup: str, visit: Callable[..., Visit]) -> None:
    made = visit(playgroup)
    page, faults = made.page, {}
    for path in PAGES:
        page.set_viewport_size({"width": 1280, "height": 800})
        page.goto(playgroup + path)
        made.come_to_rest()
        found = grave_faults(page)
        page.set_viewport_size({"width": 390, "height": 844})
        found += [f"narrow: {fault}" for fault in grave_faults(page)]
        page.evaluate("document.documentElement.className = 'dark'")
        found += [f"dark: {fault}" for fault in grave_faults(page, only="color-contrast")]
        if found:
            faults[path] = found
    assert faults == {}
