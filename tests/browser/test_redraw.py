"""What is found is that of the drawing: faded while something moves, and of the final value when it rests."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import Page, Route

    from tests.browser.conftest import Served, Visit

pytestmark = pytest.mark.browser

STORM = 40
BETWEEN_MOVES = 0.03
"""As fast as a hand moves a slider [s]."""

WIDE_HIPS = "hip=75+cm"
"""With these the bloomers are found to be wrong in places."""

MOVE = """(mm) => {
  const slider = document.querySelector("[data-for=m-hip]");
  slider.value = mm;
  slider.dispatchEvent(new Event("input", { bubbles: true }));
}"""
TOLD = "said => new URLSearchParams(document.getElementById('wish').dataset.told).get('hip') === said"


def at_rest(page: Page, hip: str) -> None:
    page.wait_for_function(TOLD, arg=hip)


def found(page: Page) -> list[str]:
    return [one.strip() for one in page.locator("#findings li p:first-of-type").all_text_contents()]


def pinned(page: Page) -> list[tuple[str, str, str]]:
    """Number and place of every finding on the drawing."""
    return page.locator("draft-drawing .pin").evaluate_all(
        "pins => pins.map(pin => [pin.dataset.finding, ...['cx', 'cy'].map(at => pin.firstChild.getAttribute(at))])"
    )


@pytest.mark.parametrize("seconds", [0.0, 0.08])
def test_after_a_storm_findings_and_drawing_are_of_the_final_value(
    served: Served, visit: Callable[..., Visit], seconds: float
) -> None:
    made = visit(f"{served.address}/table/bloomers?{WIDE_HIPS}")
    page = made.page
    at_rest(page, "75 cm")
    served.drafts_take(seconds)
    for k in range(1, STORM + 1):
        page.evaluate(MOVE, 750 - 3 * k)
        time.sleep(BETWEEN_MOVES)
    last = f"{(750 - 3 * STORM) / 10:g} cm"
    at_rest(page, last)
    made.come_to_rest()  # nothing older may come after it
    after = (
        found(page),
        pinned(page),
        page.locator("draft-drawing .line").evaluate_all(
            "lines => lines.map(line => line.getAttribute('d'))"
        ),
    )
    assert page.locator("#wish.moving").count() == 0
    served.drafts_take(0.0)
    fresh = visit(f"{served.address}/table/bloomers?hip={last.replace(' ', '+')}").page
    at_rest(fresh, last)
    assert after == (
        found(fresh),
        pinned(fresh),
        fresh.locator("draft-drawing .line").evaluate_all(
            "lines => lines.map(line => line.getAttribute('d'))"
        ),
    )
    assert made.complaints == []


def test_while_something_moves_older_findings_stand_on_faded(
    served: Served, visit: Callable[..., Visit]
) -> None:
    made = visit(f"{served.address}/table/bloomers?{WIDE_HIPS}")
    page = made.page
    at_rest(page, "75 cm")
    before = pinned(page)
    assert before
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/told.json*", hold)  # it moves so long as nothing is told
    page.evaluate(MOVE, 700)
    page.wait_for_function("() => document.querySelector('draft-drawing').dataset.drawn.includes('hip=70')")
    assert pinned(page) == before
    opacity = "one => Number(getComputedStyle(one).opacity)"
    assert page.locator("draft-drawing .findings").evaluate(opacity) < 1
    while not held:
        page.wait_for_timeout(20)
    held.pop().continue_()
    at_rest(page, "70 cm")
    assert page.locator("draft-drawing .findings").evaluate(opacity) == 1
    assert made.complaints == []


def test_a_slider_that_comes_back_shows_again_what_was_shown(
    served: Served, visit: Callable[..., Visit]
) -> None:
    page = visit(f"{served.address}/table/bloomers?{WIDE_HIPS}").page
    at_rest(page, "75 cm")
    lines = page.locator("draft-drawing .line")
    before = lines.first.get_attribute("d"), found(page)
    page.evaluate(MOVE, 640)
    at_rest(page, "64 cm")
    assert lines.first.get_attribute("d") != before[0]
    page.evaluate(MOVE, 640.5)
    page.evaluate(MOVE, 750)
    at_rest(page, "75 cm")
    assert (lines.first.get_attribute("d"), found(page)) == before


def test_while_it_moves_only_the_drawing_is_asked_for(served: Served, visit: Callable[..., Visit]) -> None:
    made = visit(f"{served.address}/table/bloomers?{WIDE_HIPS}")
    at_rest(made.page, "75 cm")
    made.asked.clear()
    made.page.evaluate(
        """async () => {
          const slider = document.querySelector("[data-for=m-hip]");
          for (let k = 1; k <= 30; k++) {
            slider.value = 750 - k;
            slider.dispatchEvent(new Event("input", { bubbles: true }));
            await new Promise((done) => setTimeout(done, 20));
          }
        }"""
    )
    at_rest(made.page, "72 cm")
    asked = [link.partition("?")[0].rpartition("/")[2] for link in made.asked]
    assert asked.count("told.json") == 1
    assert asked.count("moving.svg") > 1
    assert set(asked[: asked.index("told.json")]) == {"moving.svg"}


def test_a_workroom_that_fell_silent_while_it_rests_says_so(
    served: Served, visit: Callable[..., Visit]
) -> None:
    page = visit(f"{served.address}/table/bloomers?{WIDE_HIPS}").page
    at_rest(page, "75 cm")
    page.route("**/told.json*", lambda route: route.abort())
    page.evaluate(MOVE, 700)
    page.locator("#told", has_text="does not answer").wait_for()
    assert page.locator("#wish.moving").count() == 1  # what stands there is still that of before
    page.unroute("**/told.json*")
    page.evaluate(MOVE, 690)
    at_rest(page, "69 cm")
    assert page.locator("#wish.moving").count() == 0
