"""The lay on paper: the page to follow with the scissors, and the marker at full size."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from littlefold.booklet.bundle import cautions
from littlefold.lay.sewn import thread_of
from littlefold.lay.sheet import LayPlan, lay_sheet, marker
from littlefold.lay.shopping import shopping_list
from littlefold.lay.stripes import stripes_met
from littlefold.problem import Problem
from littlefold.sheet.paper import read_paper

if TYPE_CHECKING:
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.shopping import ShoppingList
    from littlefold.pipeline import Outcome
    from littlefold.web.pages.cloth_laid import OnCloth
    from littlefold.web.pages.cloth_prices import Prices
    from littlefold.web.preferences import Units
    from littlefold.web.room import Room


def to_buy(outcome: Outcome, lays: tuple[Lay, ...], prices: Prices, units: Units) -> ShoppingList:
    """What to buy for a garment with one lay for each of its cloths."""
    thread = thread_of(outcome.pattern, prices.stitching)
    return shopping_list(lays, outcome.draft.notions, thread, prices.known, units)


def plan_of(on: OnCloth, lay: Lay, rows: tuple[Row, ...], shopping: ShoppingList, units: Units) -> LayPlan:
    """All that the page to follow tells of a lay."""
    outcome, met = on.outcome, stripes_met(lay, on.seams)
    title = ", ".join(filter(None, (outcome.draft.title, outcome.draft.measurements.nickname)))
    told = (*cautions(outcome.pattern, outcome.problems), *on.together)
    return LayPlan(title, lay, rows, shopping, told, units, met)


def printed(plan: LayPlan, room: Room, sheet: Literal["lay", "marker"]) -> bytes | None:
    """A sheet of a lay; None where no page is that long."""
    if sheet == "marker":
        return marker(plan.lay, room.today(), plan.units)
    paper = read_paper(room.preferences.paper)
    assert not isinstance(paper, Problem)  # noqa: S101 - only papers are kept
    return lay_sheet(plan, paper, room.today())
