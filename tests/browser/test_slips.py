"""Slips: each at its side, off the letters, its thread at its point; those that act elsewhere lead there."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import Locator

    from tests.browser.conftest import Served, Visit

MOST_ELEMENTS = 40
"""No sheet of a bodice has so many points and lines."""


def test_a_slip_that_acts_elsewhere_leads_to_its_sheet(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/sleeve?for-size=104")
    page = made.page
    name = "cap_ease"
    tab = page.locator(f".slip[data-slip={name}]").get_by_role(
        "button", name="Acts on the sheet sleeve: turn to it"
    )
    expect(page.locator(f".threads path[data-thread={name}]")).to_have_count(0)
    tab.focus()
    page.keyboard.press("Enter")
    page.locator(f".threads path[data-thread={name}]").wait_for(state="attached")
    page.wait_for_function("name => document.activeElement.dataset.for === `c-${name}`", arg=name)
    expect(page.locator(f".slip[data-slip={name}] .to-sheet")).not_to_be_visible()
    assert made.complaints == []


@pytest.mark.parametrize("width", [1280, 820])
def test_slips_do_not_cover_the_letters_of_the_drawing(
    served: Served, visit: Callable[..., Visit], width: int
) -> None:
    for recipe in ("pinafore", "circle-skirt", "sleeve"):
        made = visit(f"{served.address}/table/{recipe}?for-size=86", width, 1000)
        page = made.page
        page.locator(".slips.pinned").wait_for()
        made.come_to_rest()
        slips = [box(slip) for slip in page.locator(".slip").all()]
        letters = [box(letter) for letter in page.locator("draft-drawing .letter").all()]
        assert letters
        assert slips
        assert not [(one, other) for one in letters for other in slips if overlap(one, other)], recipe


def test_a_thread_ends_at_the_point_of_this_child(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/casing-top?for-size=80")
    made.come_to_rest()
    page = made.page
    thread = page.locator(".threads path[data-thread=flare]")
    thread.wait_for(state="attached")
    end = thread.get_attribute("d").split()[-2:]
    place = page.evaluate("document.querySelector('draft-drawing').seenPoint('body.D')")
    assert [float(one) for one in end] == pytest.approx([place["x"], place["y"]], abs=0.5)


def test_slips_make_room_for_the_unfolded_piece(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/bodice?for-size=104")
    page = made.page
    made.come_to_rest()
    page.get_by_label("unfolded").check()
    whole = page.locator("draft-drawing .unfolded .whole")
    expect(whole).to_be_visible()
    made.come_to_rest()
    slips = [box(slip) for slip in page.locator(".slip").all()]
    assert slips
    assert not [one for one in slips if overlap(one, box(whole))]


def test_the_tape_lies_along_a_line(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/bodice?for-size=104&back_waist=260&scye_depth=140")
    page = made.page
    made.come_to_rest()
    page.get_by_label("a tape").check()
    left, top, right, low = box(page.locator("draft-drawing .touch[data-name='back.side']"))
    page.mouse.click((left + right) / 2, (top + low) / 2)
    expect(page.locator("#told")).to_have_text("Along side: 12 cm")  # from the scye to the waist: 26 - 14
    page.mouse.click(
        (left + right) / 2, top + (right - left) / 2
    )  # at its end the tape takes hold of a point
    expect(page.locator("#told")).to_have_text("From E to …")
    page.locator("draft-drawing").focus()
    page.keyboard.press("Escape")
    for _ in range(MOST_ELEMENTS):
        page.keyboard.press("n")
        if page.locator("#told").inner_text().startswith("side"):
            break
    page.keyboard.press("t")
    expect(page.locator("#told")).to_have_text("Along side: 12 cm")
    assert made.complaints == []


def test_opened_findings_push_no_slip_under_the_tape(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/collar?for-size=104&on-sheet=front")
    page = made.page
    made.come_to_rest()
    page.locator(".findings-slip summary").click()
    expect(page.locator("#findings")).to_be_visible()
    made.come_to_rest()
    edge = box(page.locator(".tape"))[3]
    slips = [box(slip) for slip in page.locator(".slip").all()]
    assert min(top for _, top, _, _ in slips) >= edge
    found = box(page.locator(".findings-slip"))
    assert not [one for one in slips if overlap(one, found)]


@pytest.mark.parametrize("width", [1280, 820])
def test_names_of_all_pieces_lie_on_nothing(served: Served, visit: Callable[..., Visit], width: int) -> None:
    made = visit(f"{served.address}/table/a-line-frock?for-size=104&on-sheet=all-pieces", width)
    made.come_to_rest()
    names = [box(name) for name in made.page.locator("draft-drawing .piece-title").all()]
    assert len(names) > 3
    assert not [
        (one, other) for k, one in enumerate(names) for other in names[k + 1 :] if overlap(one, other)
    ]


def box(one: Locator) -> tuple[float, float, float, float]:
    """Left, top, right, lower edge [px]."""
    found = one.bounding_box()
    assert found is not None
    return found["x"], found["y"], found["x"] + found["width"], found["y"] + found["height"]


def overlap(one: tuple[float, float, float, float], other: tuple[float, float, float, float]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
