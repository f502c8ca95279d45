"""Every page by the rules of WCAG 2.2 AA: wide and narrow, in daylight and in the dark room; printed; without motion."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.browser.axe import grave_faults
from tests.browser.conftest import wait_told

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import Page

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

PAGES = [
    "/",
    "/garments",
    "/garments?look=nothing+of+the+kind",
    "/table/casing-top?chest=56+cm&for-name=Mina",
    "/table/bodice?ease=2+cm&on-sheet=front",
    "/table/casing-top#back",
    "/table/trousers?on-sheet=all-pieces",
    "/steps/casing-top/9",
    "/steps/casing-top",
    "/compare/bodice?ease=60&or-ease=120",
    "/print/casing-top",
    "/cloth/bib",
    "/recipes",
    "/recipes/bodice",
    "/recipes/bib/change",
    "/write",
    "/children",
    "/child/measure?name=Mina&at=chest",
    "/child/measure?name=Mina&at=all&stature=104&chest=23",
    "/child?name=Mina",
    "/child/garments?name=Mina",
    "/child/erase?name=Mina",
    "/settings",
    "/nowhere",
]
"""The pages of a child speak of Mina, whose card is made first."""
MOST_TABS = 90


@pytest.fixture(autouse=True)
def _own_box(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)


@pytest.fixture
def mina(served: Served, window: Callable[..., Page]) -> str:
    """A workroom in which Mina has a card; its address."""
    page = window()
    page.goto(f"{served.address}/children")
    page.get_by_label("Name or nickname").fill("Mina")
    page.get_by_label("Born").fill("2022-08-14")
    page.get_by_role("button", name="Make the card").click()
    page.get_by_role("heading", name="Mina", exact=True).wait_for()
    page.close()
    return served.address


def darken(page: Page) -> None:
    """The dark room, as the settings make it, without waiting for colours to change."""
    page.evaluate(
        "document.documentElement.className = document.documentElement.className.replace('day', 'dark')"
    )
    expect(page.locator("html")).to_have_class(re.compile(r"\bdark\b"))


def lighten(page: Page) -> None:
    """Daylight again."""
    page.evaluate(
        "document.documentElement.className = document.documentElement.className.replace('dark', 'day')"
    )


def test_the_looking_itself_finds_faults(window: Callable[..., Page]) -> None:
    page = window()
    page.set_content(
        "<html lang=en><title>x</title><main><input><p style='color:#bbb'>pale</p></main></html>"
    )
    found = grave_faults(page)
    assert {fault.partition(":")[0] for fault in found} == {"label", "color-contrast"}


def test_no_page_has_a_grave_fault(mina: str, visit: Callable[..., Visit]) -> None:
    made = visit(f"{mina}/")
    page, faults = made.page, {}
    for path in PAGES:
        page.set_viewport_size({"width": 1280, "height": 800})
        page.goto(mina + path)
        made.come_to_rest()
        found = grave_faults(page)
        darken(page)
        found += [f"dark: {fault}" for fault in grave_faults(page, only="color-contrast")]
        page.set_viewport_size({"width": 390, "height": 844})
        made.come_to_rest()
        found += [f"narrow and dark: {fault}" for fault in grave_faults(page, only="color-contrast")]
        lighten(page)
        found += [f"narrow: {fault}" for fault in grave_faults(page)]
        if found:
            faults[path] = found
    assert faults == {}


@pytest.mark.parametrize(
    "path", ["/steps/casing-top", "/table/casing-top", "/table/casing-top#back", "/recipes/bib"]
)
def test_what_the_dark_room_prints_is_dark_on_white(
    served: Served, visit: Callable[..., Visit], path: str
) -> None:
    page = visit(served.address + path).page
    darken(page)
    assert luminance(page, "h2, h1", "color") > 0.7  # light letters on the screen
    page.emulate_media(media="print")
    expect(page.locator(".top nav")).not_to_be_visible()
    for where, what, low, high in [("body", "background-color", 0.95, 1.0), ("h2, h1", "color", 0.0, 0.1)]:
        assert low <= luminance(page, where, what) <= high, where
    if page.locator("draft-drawing .line").count():
        assert luminance(page, "draft-drawing .line", "stroke") < 0.1


def luminance(page: Page, where: str, what: str) -> float:
    """How light a colour is, 0 black to 1 white; of the first element found."""
    said = page.locator(where).first.evaluate(f"one => getComputedStyle(one).getPropertyValue('{what}')")
    red, green, blue = (int(part) / 255 for part in re.findall(r"\d+", said)[:3])
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def test_a_printed_table_shows_the_drawing_alone(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/table/casing-top").page
    page.emulate_media(media="print")
    expect(page.locator("draft-drawing svg")).to_be_visible()
    for gone in (".tape", ".slip", ".findings-slip", ".edge"):
        expect(page.locator(gone).first, gone).not_to_be_visible()


@pytest.mark.parametrize("wish", ["reduce", "no-preference"])
def test_nothing_moves_for_those_who_asked_for_rest(
    served: Served, window: Callable[..., Page], wish: str
) -> None:
    page = window(reduced_motion=wish)
    page.goto(f"{served.address}/steps/casing-top/8")
    page.get_by_role("link", name="Next").click()
    page.locator("#number", has_text="9").wait_for()
    moved = page.evaluate("document.getAnimations().length")  # they are there after their end, too
    assert (moved > 0) == (wish == "no-preference")


def test_from_home_to_the_printed_pattern_by_keyboard_alone(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(served.address)
    page = made.page
    made.come_to_rest()
    tab_to(page, "Garments")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("/garments"))
    tab_to(page, "Loose top with a casing neck")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("/table/casing-top"))
    wait_told(page)
    tab_to(page, "Chest girth")
    page.keyboard.type("56 cm")
    tab_to(page, "Ease round the chest")
    page.keyboard.press("ArrowUp")
    page.wait_for_url(re.compile(r"chest=56\+cm.*ease=14.5\+cm"))
    tab_to(page, "back")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("on-sheet=back"))
    tab_to(page, "Turn the sheet over")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Pieces to cut").wait_for()
    tab_to(page, "Turn the sheet over")
    page.keyboard.press("Enter")
    page.locator("draft-drawing").wait_for()
    tab_to(page, "Print")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Print", exact=True).wait_for()
    tab_to(page, "Pattern to join")
    assert "chest=56" in page.evaluate("document.activeElement.href")
    assert made.complaints == []


def tab_to(page: Page, name: str) -> None:
    """Presses Tab until what is called so has the focus."""
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        if page.evaluate(CALLED).strip().startswith(name):
            return
    raise AssertionError(f"{name!r} is not reached by Tab")


CALLED = """() => { const one = document.activeElement;
    return one.labels?.[0]?.textContent ?? one.getAttribute("aria-label") ?? one.textContent; }"""


@pytest.mark.parametrize("width", [1280, 820, 390])
def test_whatever_has_the_focus_is_seen_to_have_it(
    served: Served, visit: Callable[..., Visit], width: int
) -> None:
    page = visit(f"{served.address}/table/casing-top?for-name=Mina", width, 800).page
    wait_told(page)
    seen = 0
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        told = page.evaluate(FOCUSED)
        if told is None:
            break
        seen += 1
        assert told["outlined"], told
        assert told["inside"], told
    assert seen > 20


FOCUSED = """() => { const one = document.activeElement;
    if (one === document.body) return null;
    const style = getComputedStyle(one);
    const box = one.getBoundingClientRect();
    return {what: one.outerHTML.slice(0, 200),
      outlined: (style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2) || style.boxShadow !== "none",
      inside: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth}; }"""
