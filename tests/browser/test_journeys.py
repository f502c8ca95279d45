"""What a maker does, from the first page to the printed pattern, in a real browser."""

from __future__ import annotations

import re
import time
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import expect

from littlefold.web.room import Room
from tests.browser.conftest import DAY, opened, wait_told

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from playwright.sync_api import Page

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

STORM = 60
BETWEEN_KEYS = 0.03
"""As in the comparison that chose this way of redrawing [s]."""
MOST_AFTER_THE_STORM = 2
"""Drawings asked for after the last key: the one of which one hears late, and the last wish; never a queue of them."""


MOST_POINTS = 60
"""Of a sheet; one presses no oftener to come to one of them."""


def drawn(page: Page) -> dict[str, list[str]]:
    """What the drawing on the table was drawn for."""
    return parse_qs(page.locator("draft-drawing").get_attribute("data-drawn") or "")


def test_from_the_first_page_to_a_pdf(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(served.address)
    page = made.page
    page.get_by_role("link", name="Start with a garment").click()
    page.get_by_role("link", name="Loose top with a casing neck").click()
    page.get_by_label("Chest girth").first.fill("56 cm")
    page.wait_for_function(
        "() => document.querySelector('draft-drawing').dataset.drawn?.includes('chest=56')"
    )
    page.locator("[data-reading=chest].given").wait_for()
    page.wait_for_url(re.compile("chest=56"))
    page.get_by_role("link", name="Print").click()
    page.get_by_role("heading", name="Print", exact=True).wait_for()
    href = page.get_by_role("link", name=re.compile("^Pattern to join")).get_attribute("href")
    assert "chest=56" in href
    pdf = page.request.get(served.address + href)
    assert pdf.status == 200
    assert pdf.body().startswith(b"%PDF")
    assert made.only_here()
    assert made.complaints == []


@pytest.mark.parametrize("seconds", [0.0, 0.08])
def test_a_storm_on_the_slider_ends_at_the_last_value(
    served: Served, visit: Callable[..., Visit], seconds: float
) -> None:
    made = visit(f"{served.address}/table/bodice?chest=530")
    page = made.page
    slider = page.locator("input[type=range][data-for=m-chest]")
    made.come_to_rest()
    slider.focus()
    served.drafts_take(seconds)
    start = int(slider.input_value())
    for _ in range(STORM):
        page.keyboard.press("ArrowRight")
        time.sleep(BETWEEN_KEYS)
    said = f"{(start + STORM) / 10:g} cm"
    assert int(slider.input_value()) == start + STORM
    asked_before = len(made.asked)
    page.wait_for_function(
        "said => new URLSearchParams(document.querySelector('draft-drawing').dataset.drawn).get('chest') === said",
        arg=said,
    )
    made.come_to_rest()  # nothing older may come after it
    assert drawn(page)["chest"] == [said]
    assert page.get_by_label("Chest girth").first.input_value() == said
    late = [link for link in made.asked[asked_before:] if "/draw/" in link]
    assert len(late) <= MOST_AFTER_THE_STORM, late
    served.drafts_take(0.0)
    answer = page.request.get(f"{served.address}/draw/bodice.svg?chest={(start + STORM)}")
    seen = page.locator("draft-drawing svg path.line").evaluate_all(
        "lines => lines.map(line => line.getAttribute('d'))"
    )
    assert seen == re.findall(r'class="line" d="([^"]*)"', answer.text())
    assert made.complaints == []


def test_the_view_stays_where_it_was_while_it_is_redrawn(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/bodice")
    page = made.page
    made.come_to_rest()  # what is told may make room on the page
    page.locator("draft-drawing").focus()
    page.keyboard.press("+")
    page.keyboard.press("ArrowLeft")
    before = page.locator("draft-drawing svg").get_attribute("viewBox")
    page.get_by_label("Ease round the chest").first.fill("9 cm")
    page.wait_for_function("() => document.querySelector('draft-drawing').dataset.drawn?.includes('ease=9')")
    assert page.locator("draft-drawing svg").get_attribute("viewBox") == before


def test_steps_by_keyboard_alone(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/steps/casing-top/1?chest=560")
    page = made.page
    first = page.locator("#sentence").inner_text()
    page.keyboard.press("ArrowRight")
    page.wait_for_url(re.compile(r"/steps/casing-top/2\?chest=56"))
    second = page.locator("#sentence").inner_text()
    assert second != first
    page.keyboard.press("End")
    page.wait_for_function("() => board.dataset.number === board.dataset.of")
    assert page.locator("#on").get_attribute("aria-disabled") == "true"
    page.keyboard.press("Home")
    page.wait_for_url(re.compile(r"/steps/casing-top/1\?"))
    page.keyboard.press(" ")
    page.get_by_role("button", name="Pause").wait_for()
    page.wait_for_url(re.compile(r"/steps/casing-top/[23]\?"), timeout=20_000)
    page.keyboard.press(" ")
    page.get_by_role("button", name="Draw on").wait_for()
    page.reload()
    expect(page.locator("#sentence")).not_to_have_text(first)
    assert made.complaints == []


PAGES = (
    "/",
    "/garments",
    "/table/bodice",
    "/table/bodice#back",
    "/steps/bodice/16",
    "/steps/bib",
    "/print/bib",
    "/compare/bodice?or-ease=120",
    "/recipes",
    "/recipes/bodice",
    "/recipes/bodice/change",
    "/settings",
)


@pytest.mark.parametrize("width", [390, 820, 1280])
def test_nothing_hangs_over_the_edge(served: Served, visit: Callable[..., Visit], width: int) -> None:
    made = visit(served.address, width, 844)
    for path in PAGES:
        made.page.goto(served.address + path)
        made.come_to_rest()
        assert made.page.evaluate("document.documentElement.scrollWidth") <= width, path
        links = made.page.locator(".top nav a").all()
        ends = [box["x"] + box["width"] for link in links if (box := link.bounding_box())]
        assert len(ends) == len(links), path
        assert max(ends) <= width, path  # every way out is seen without moving anything sideways
    assert made.complaints == []
    assert made.only_here()


def test_hostile_names_run_nothing(served: Served, visit: Callable[..., Visit]) -> None:
    words = "</script><img src=x onerror=window.hurt=1><svg onload=window.hurt=1>"
    text = f'recipe mine\ntitle "{words}"\nmeasure chest\nchoice ease = 4 cm, 1 cm .. 9 cm "{words}"\n'
    text += f'drawing body "{words}"\npoint A at the fold\npoint B below A by chest + ease\nline side from A to B\n'
    assert served.room.own.save("mine", text, "new") is None
    for path in ("/garments", f"/table/mine?for-name={words}", f"/steps/mine/1?chest={words}", "/print/mine"):
        made = visit(served.address + path)
        made.come_to_rest()
        assert made.page.evaluate("window.hurt") is None
        assert made.only_here()
        assert made.complaints == []


def test_the_keys_go_from_element_to_element(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/table/bodice?on-sheet=front").page
    wait_told(page)
    page.locator("draft-drawing").focus()
    page.keyboard.press("n")
    expect(page.locator("#told")).to_have_text(re.compile("^A"))
    page.keyboard.press("n")
    expect(page.locator("draft-drawing .point.lit")).to_have_count(1)


def test_the_sheet_is_turned_over_and_back(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/table/bodice").page
    page.get_by_role("link", name="Turn the sheet over").first.click()
    expect(page.get_by_role("heading", name="Pieces to cut")).to_be_visible()
    page.go_back()
    expect(page.locator("draft-drawing")).to_be_visible()
    expect(page.get_by_role("heading", name="Pieces to cut")).not_to_be_visible()


def test_another_sheet_lies_on_top_without_a_new_page(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/table/casing-top").page
    page.get_by_role("link", name="back", exact=True).click()
    page.wait_for_function(
        "() => document.querySelector('draft-drawing').dataset.drawn?.includes('on-sheet=back')"
    )
    page.wait_for_url(re.compile("on-sheet=back"))
    page.reload()
    expect(page.locator(".corners [aria-current]")).to_have_text("back")
    assert urlsplit(page.url).path == "/table/casing-top"


def test_without_a_script_everything_but_moving_works(served: Served, window: Callable[..., Page]) -> None:
    page = window(java_script_enabled=False)
    page.goto(f"{served.address}/table/casing-top")
    page.get_by_label("Chest girth").first.fill("58")
    page.get_by_role("button", name="Draw it").click()
    page.wait_for_url(re.compile(r"chest=58\+cm"))
    assert page.locator("draft-drawing svg path.line").count() > 3
    page.get_by_role("link", name="Step by step").click()
    page.get_by_role("link", name="Next").click()
    page.wait_for_url(re.compile(r"/steps/casing-top/2\?.*chest=58"))


def test_a_mistake_in_a_recipe_is_told_and_mended(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/recipes/bib/change")
    page = made.page
    text = page.locator("textarea").input_value()
    assert "my-bib" in page.get_by_label("Name").input_value()
    page.locator("textarea").fill(text.replace("recipe bib", "recipe my-bib") + "point ZZ belo A by 3 cm\n")
    page.locator("#messages .error", has_text="below").wait_for()
    page.locator("textarea").fill(text.replace("recipe bib", "recipe my-bib"))
    page.locator("#messages .error").wait_for(state="detached")
    page.get_by_role("button", name="Save as my own").click()
    page.wait_for_url(re.compile("/recipes/my-bib$"))
    assert served.room.own.names() == ("my-bib",)
    assert made.complaints == []


def test_two_windows_do_not_save_over_each_other(served: Served, visit: Callable[..., Visit]) -> None:
    assert served.room.own.save("mine", 'recipe mine\ntitle "Mine"\n', "new") is None
    first, second = (visit(f"{served.address}/recipes/mine/change").page for _ in range(2))
    for number, page in enumerate((first, second), start=1):
        page.locator("textarea").fill(f'recipe mine\ntitle "Window {number}"\n')
    first.get_by_role("button", name="Save as my own").click()
    first.wait_for_url(re.compile("/recipes/mine$"))
    second.get_by_role("button", name="Save as my own").click()
    second.get_by_role("alert").wait_for()
    assert "Window 2" in second.locator("textarea").input_value()
    assert "Window 1" in (served.room.own.text("mine") or "")


def test_a_line_and_what_it_draws_light_each_other(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/recipes/bodice").page
    page.locator("#lines li", has_text="line shoulder from N to S").first.hover()
    expect(page.locator('draft-drawing .line.lit[data-name="back.shoulder"]')).to_have_count(1)
    page.locator('draft-drawing .touch[data-name="back.armhole"]').dispatch_event("pointerover")
    expect(page.locator("#lines li.lit")).to_contain_text("curve armhole")


def test_what_moves_and_the_tape(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/casing-top?chest=560&ease=120")
    page = made.page
    page.get_by_label("what moves").check()
    page.get_by_label("Ease round the chest").first.fill("16 cm")
    page.wait_for_function("() => document.querySelector('draft-drawing').dataset.drawn?.includes('ease=16')")
    wait_told(page, "ease=16")  # in which order the points are drawn is told
    assert page.locator(".before .was").count() > 3
    assert "1 cm" in page.locator(".before .by").all_text_contents()  # a quarter of 4 cm
    page.get_by_label("a tape").check()
    page.locator("draft-drawing").focus()
    for key in "nt":
        page.keyboard.press(key)
    for _ in range(MOST_POINTS):
        if "C" in page.locator("#told").inner_text().split(",")[0].split("\n")[0]:
            break
        page.keyboard.press("n")
    page.keyboard.press("t")
    expect(page.locator("#told")).to_have_text("A to C: 18 cm")  # (56 + 16) / 4
    assert made.complaints == []


def test_work_survives_a_restart_of_the_server(
    visit: Callable[..., Visit], tmp_path: Path, kept_port: int
) -> None:
    room = Room(tmp_path / "own", today=lambda: DAY)
    with opened(room, kept_port) as address:
        made = visit(f"{address}/table/bodice")
        made.page.get_by_label("Chest girth").first.fill("57 cm")
        made.page.wait_for_url(re.compile("chest=57"))
    made.page.get_by_label("Chest girth").first.fill("58 cm")
    made.page.locator("#told", has_text="does not answer").wait_for()
    with opened(room, kept_port):
        made.page.get_by_label("Chest girth").first.fill("59 cm")
        made.page.wait_for_function(
            "() => document.querySelector('draft-drawing').dataset.drawn?.includes('chest=59')"
        )
        made.page.wait_for_url(re.compile("chest=59"))
        made.page.reload()
        expect(made.page.get_by_label("Chest girth").first).to_have_value("59 cm")
