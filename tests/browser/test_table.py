"""The drafting table, the step player and the recipe editor in the hand: cures, switches, touch, taking back."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import wait_told

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import Locator, Page, Route

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

PHONE = {"width": 390, "height": 844}


@pytest.fixture
def phone(window: Callable[..., Page]) -> Page:
    """A page on a telephone, which is touched and has no pointer that hovers."""
    return window(viewport=PHONE, has_touch=True, is_mobile=True)


def wait_drawn(page: Page, words: str) -> None:
    page.wait_for_function(
        "words => document.querySelector('draft-drawing').dataset.drawn?.includes(words)", arg=words
    )


def test_a_cure_is_applied_with_a_click_and_the_drawing_changes(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(f"{served.address}/table/bloomers?hip=75+cm")
    page = made.page
    page.locator(".findings-slip summary").click()
    cure = page.locator("#findings a.cure").first
    cure.wait_for()
    before = page.locator("draft-drawing .line").first.get_attribute("d")
    value = cure.get_attribute("data-value")
    assert f"{value}" in cure.inner_text()
    cure.click()
    wait_drawn(page, "ease=")
    expect(page.get_by_label("Ease round the hips").first).to_have_value(value or "")
    assert page.locator("draft-drawing .line").first.get_attribute("d") != before
    page.locator("#findings .warning").wait_for(state="detached")
    assert made.complaints == []


@pytest.mark.parametrize("garment", ["a-line-frock", "sleeve", "collar", "yoke-frock"])
def test_a_neck_that_may_not_pass_the_head_is_cured_by_a_longer_opening(
    served: Served, visit: Callable[..., Visit], garment: str
) -> None:
    made = visit(f"{served.address}/table/{garment}?for-size=104&on-sheet=back")
    page = made.page
    tight = page.locator("#findings li", has_text="The neck opening is")
    page.locator(".findings-slip summary").click()
    cure = tight.locator("a.cure[data-choice=head_room]")
    cure.wait_for()
    room, before = page.get_by_label("How much wider than the head").first, drawn(page)
    value = cure.get_attribute("data-value") or ""
    assert float(value.removesuffix(" cm")) > 1  # what it is without
    cure.click()
    wait_drawn(page, "head_room=")
    tight.wait_for(state="detached")
    expect(room).to_have_value(value)
    assert drawn(page) != before
    assert page.locator("#findings li.error, #findings li.warning").count() == 0
    assert made.complaints == []


def drawn(page: Page) -> list[str]:
    """All lines of the drawing."""
    return page.locator("draft-drawing path").evaluate_all("lines => lines.map(one => one.getAttribute('d'))")


def test_a_cure_is_asked_for_again_where_the_workroom_was_busy(
    served: Served, visit: Callable[..., Visit]
) -> None:
    page = visit("about:blank").page
    page.route("**/cures.json*", lambda asked: asked.fulfill(status=429), times=1)
    page.goto(f"{served.address}/table/bloomers?hip=75+cm")
    page.locator("#findings a.cure").first.wait_for(state="attached")


def test_a_finding_lights_its_place_on_its_sheet(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/table/bloomers?hip=75+cm&on-sheet=back").page
    page.locator(".findings-slip summary").click()
    page.get_by_role("button", name=re.compile("Show finding 1 on the sheet front")).click()
    page.locator("draft-drawing .glow.lit[data-name=finding-1]").wait_for(state="attached")
    expect(page.locator(".corners [aria-current]")).to_have_text("front")
    expect(page.locator("#findings li").first).to_have_class(re.compile(r"\blit\b"))


def test_switches_show_and_hide(served: Served, visit: Callable[..., Visit]) -> None:
    page = visit(f"{served.address}/table/casing-top").page
    cut, whole = page.locator("draft-drawing .cut"), page.locator("draft-drawing .whole").first
    expect(cut.first).to_be_visible()
    expect(whole).not_to_be_visible()
    page.get_by_label("allowances").uncheck()
    expect(cut.first).not_to_be_visible()
    page.get_by_label("unfolded").check()
    expect(whole).to_be_visible()
    stitch = page.locator("draft-drawing .stitch").first
    expect(stitch).to_have_css("stroke", "rgba(0, 0, 0, 0)")
    page.get_by_label("stitch lines").check()
    expect(stitch).not_to_have_css("stroke", "rgba(0, 0, 0, 0)")


def test_all_pieces_are_seen_together(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/casing-top")
    page = made.page
    page.get_by_role("link", name="all pieces").click()
    wait_drawn(page, "on-sheet=all-pieces")
    wait_told(page, "on-sheet=all-pieces")
    titles = page.locator("draft-drawing .piece-title").all_text_contents()
    assert {"Front", "Back"} <= set(titles)
    page.locator("draft-drawing .line[data-name='front.hemline']").dispatch_event("pointerover")
    expect(page.locator("#told")).to_contain_text("hemline")
    page.wait_for_url(re.compile("on-sheet=all-pieces"))
    page.reload()
    expect(page.locator("draft-drawing .piece-title")).to_have_count(len(titles))
    assert made.complaints == []


@pytest.mark.parametrize("recipe", ["trousers", "yoke-frock"])
@pytest.mark.parametrize("width", [1280, 1000, 820, 740])
def test_slips_are_pinned_and_lie_on_nothing(
    served: Served, visit: Callable[..., Visit], width: int, recipe: str
) -> None:
    made = visit(f"{served.address}/table/{recipe}", width, 800)
    page = made.page
    page.locator(".slips.pinned").wait_for()
    made.come_to_rest()
    boxes = [box(slip) for slip in page.locator(".slip").all()]
    for k, one in enumerate(boxes):
        assert one["x"] >= 0
        assert one["x"] + one["width"] <= width
        for other in boxes[k + 1 :]:
            assert not overlap(one, other), (one, other)
    findings = box(page.locator(".findings-slip"))
    assert not any(overlap(one, findings) for one in boxes)
    assert page.locator(".threads path").count() > 2


def test_on_a_phone_the_numbers_on_the_drawing_lead_to_the_slips(served: Served, phone: Page) -> None:
    phone.goto(f"{served.address}/table/casing-top")
    heads = phone.locator(".heads button")
    heads.first.wait_for()
    names = heads.evaluate_all("all => all.map(one => one.dataset.slip)")
    assert {"ease", "below_waist", "flare"} <= set(names)
    phone.locator(".heads button[data-slip=flare]").tap()
    slip = phone.locator(".slip[data-slip=flare]")
    phone.wait_for_function(
        "() => { const box = document.querySelector('.slip[data-slip=flare]').getBoundingClientRect();"
        " return box.left >= 0 && box.right <= innerWidth; }"
    )
    expect(slip).to_have_class(re.compile(r"\blit\b"))
    slider = slip.locator(".along")
    slider.focus()
    slider.press("ArrowRight")
    wait_drawn(phone, "flare=")
    assert phone.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


def test_on_a_phone_a_tap_tells_and_a_finger_pushes(served: Served, phone: Page) -> None:
    phone.goto(f"{served.address}/table/casing-top")
    phone.locator(".heads button").first.wait_for()
    wait_told(phone)
    before = phone.locator("draft-drawing svg").get_attribute("viewBox")
    armhole = phone.locator("draft-drawing .line[data-name='body.armhole']")
    middle = armhole.evaluate(
        "one => { const at = one.getPointAtLength(one.getTotalLength() / 2).matrixTransform(one.getScreenCTM());"
        " return [at.x, at.y]; }"
    )
    phone.touchscreen.tap(*middle)
    phone.locator("#told", has_text="armhole").wait_for()
    drag(phone, middle, (middle[0] + 60, middle[1] + 40))
    expect(phone.locator("draft-drawing svg")).not_to_have_attribute("viewBox", before or "")


def test_a_draft_is_kept_on_the_card_from_the_table(
    served: Served, visit: Callable[..., Visit], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)
    made = visit(f"{served.address}/children")
    page = made.page
    page.get_by_label("Name or nickname").fill("Wim")
    page.get_by_role("button", name="Make the card").click()
    page.get_by_role("heading", name="Wim", exact=True).wait_for()
    page.goto(f"{served.address}/table/casing-top")
    expect(page.get_by_role("button", name="Keep on the card")).not_to_be_visible()
    page.get_by_label("For", exact=True).fill("Wim")
    page.get_by_label("Chest girth").first.fill("57 cm")
    page.get_by_role("button", name="Keep on the card").click()
    page.wait_for_url(re.compile(r"/child/draft/1\?name=Wim"))
    expect(page.get_by_role("heading", name="Loose top with a casing neck")).to_be_visible()


def wait_painted(page: Page) -> None:
    """Waits until the player stands still on the screen: a key that comes before may be lost."""
    page.get_by_role("button", name="Draw on").click(trial=True)


def test_a_link_clicked_at_once_carries_what_was_just_typed(
    served: Served, visit: Callable[..., Visit]
) -> None:
    page = visit(f"{served.address}/table/bodice").page
    wait_told(page)
    href = page.evaluate("""() => {
        const chest = document.getElementById("m-chest");
        chest.value = "57";
        chest.dispatchEvent(new Event("input", { bubbles: true }));
        return document.querySelector("a[data-carry^='/print/']").href;
    }""")
    assert "chest=57" in href


def test_many_sheets_stay_in_one_row_and_the_one_seen_is_in_sight(
    served: Served, visit: Callable[..., Visit]
) -> None:
    page = visit(f"{served.address}/table/pinafore?on-sheet=armhole_facing", width=390).page
    wait_told(page)
    tabs = page.locator(".corners a")
    assert tabs.count() > 10
    assert len({round(box(tab)["y"]) for tab in tabs.all()}) == 1
    row, seen = (box(page.locator(one)) for one in (".corners", ".corners a[aria-current]"))
    assert row["x"] <= seen["x"]
    assert seen["x"] + seen["width"] <= row["x"] + row["width"]


def test_the_step_player_draws_on_by_itself_and_rests(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit("about:blank")
    page = made.page
    page.clock.install()
    page.goto(f"{served.address}/steps/bib/1")
    wait_painted(page)
    page.keyboard.press(" ")
    page.wait_for_url(re.compile("/steps/bib/2"))
    page.keyboard.press(" ")
    page.get_by_role("button", name="Draw on").wait_for()
    made.come_to_rest()
    number = page.locator("#number").inner_text()
    page.clock.fast_forward("05:00")
    made.come_to_rest()
    expect(page.locator("#number")).to_have_text(number)
    page.keyboard.press("End")
    page.locator("#on[aria-disabled]").wait_for()
    page.reload()
    expect(page.locator("#on[aria-disabled]")).to_have_count(1)  # each step has its own link


def test_a_player_that_is_stopped_while_a_step_is_on_its_way_stays_stopped(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit("about:blank")
    page = made.page
    page.clock.install()
    page.goto(f"{served.address}/steps/bib/1")
    wait_painted(page)
    on_its_way: list[Route] = []
    page.route("**/steps/bib/1.json*", lambda step: on_its_way.append(step))  # noqa: PLW0108 - it is marked
    with page.expect_request("**/steps/bib/1.json*"):
        page.keyboard.press(" ")
    page.keyboard.press(" ")
    page.get_by_role("button", name="Draw on").wait_for()
    while not on_its_way:
        page.wait_for_timeout(20)
    on_its_way.pop().continue_()
    made.come_to_rest()
    page.clock.fast_forward("05:00")
    made.come_to_rest()
    assert urlsplit(page.url).path == "/steps/bib/1"
    expect(page.get_by_role("button", name="Draw on")).to_be_visible()


def test_a_finger_across_the_picture_turns_to_the_next_step(served: Served, phone: Page) -> None:
    phone.goto(f"{served.address}/steps/casing-top/3")
    phone.locator("#play").wait_for()
    drag(phone, (300, 350), (120, 360))
    phone.wait_for_url(re.compile("/steps/casing-top/4"))
    drag(phone, (120, 350), (300, 340))
    phone.wait_for_url(re.compile("/steps/casing-top/3"))


def test_typing_is_taken_back_and_done_again(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/recipes/bib/change")
    page = made.page
    area = page.locator("textarea")
    text = area.input_value()
    area.focus()
    page.keyboard.press("Control+End")
    page.keyboard.type("point ZZ belo A by 3 cm")
    page.locator("#messages .error").first.wait_for()
    while area.input_value() != text:
        before = area.input_value()
        page.get_by_role("button", name="Take back").click()
        assert len(area.input_value()) < len(before)
    page.locator("#messages .error").wait_for(state="detached")
    while not area.input_value().endswith("belo A by 3 cm"):
        before = area.input_value()
        page.get_by_role("button", name="Do again").click()
        assert len(area.input_value()) > len(before)
    page.locator("#messages .error").first.wait_for()
    page.on("dialog", lambda asks: asks.accept())
    page.reload()
    expect(page.locator("textarea")).to_have_value(re.compile("belo A by 3 cm$"))  # nothing is lost
    assert made.complaints == []


def test_in_the_editor_the_sheet_chosen_last_is_shown_though_one_has_just_typed(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(f"{served.address}/recipes/bodice/change")
    page = made.page
    served.drafts_take(0.6)  # longer than the editor waits after a key
    chosen = page.evaluate("""() => {
        const area = document.querySelector("recipe-editor textarea");
        area.value += "\\n";
        area.dispatchEvent(new Event("input", { bubbles: true }));
        const other = document.querySelector("#corners button:not([aria-current])");
        other.click();
        return other.dataset.sheet;
    }""")
    made.come_to_rest()
    expect(page.locator("#corners [aria-current]")).to_have_attribute("data-sheet", chosen)


def test_in_the_editor_lines_and_elements_light_each_other(
    served: Served, visit: Callable[..., Visit]
) -> None:
    page = visit(f"{served.address}/recipes/bib/change").page
    lines = page.locator("textarea").input_value().split("\n")
    number = next(k for k, line in enumerate(lines, start=1) if "curve neckline" in line)
    page.locator('draft-drawing .touch[data-name="bib.neckline"]').dispatch_event("pointerover")
    assert page.evaluate("document.querySelector('recipe-editor').lit") == number
    band, area = box(page.locator(".band")), box(page.locator("textarea"))
    assert area["y"] <= band["y"] <= area["y"] + area["height"]
    page.mouse.move(area["x"] + 60, band["y"] + band["height"] / 2)
    expect(page.locator('draft-drawing .line.lit[data-name="bib.neckline"]')).to_have_count(1)


def test_a_recipe_is_taken_along_as_text_and_taken_in_again(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(f"{served.address}/recipes/bib")
    page = made.page
    with page.expect_download() as taken:
        page.get_by_role("link", name="Take it along as text").click()
    assert taken.value.suggested_filename == "bib.recipe"
    page.goto(f"{served.address}/recipes")
    page.get_by_label("File").set_input_files(taken.value.path())
    page.get_by_role("button", name="Open it").click()
    page.locator("recipe-editor.live").wait_for()
    expect(page.locator("textarea")).to_have_value(re.compile("^recipe bib\n"))
    assert page.locator("draft-drawing .line").count() > 3
    assert made.complaints == []


def box(one: Locator) -> dict[str, float]:
    found = one.bounding_box()
    assert found is not None
    return found


def overlap(one: dict[str, float], other: dict[str, float]) -> bool:
    return all(
        one[at] < other[at] + other[size] and other[at] < one[at] + one[size]
        for at, size in (("x", "width"), ("y", "height"))
    )


def drag(page: Page, begin: tuple[float, float], end: tuple[float, float]) -> None:
    """A finger drawn over the glass."""
    session = page.context.new_cdp_session(page)

    def touch(kind: str, *places: tuple[float, float]) -> None:
        points = [{"x": x, "y": y} for x, y in places]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    touch("touchStart", begin)
    for k in range(1, 6):
        touch("touchMove", (begin[0] + (end[0] - begin[0]) * k / 5, begin[1] + (end[1] - begin[1]) * k / 5))
    touch("touchEnd")
    session.detach()
