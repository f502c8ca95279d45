"""The lay on paper: the page to follow with the scissors, and the marker at full size."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from littlefold.booklet.bundle import cautions
from littlefold.lay.compare import Row
from littlefold.lay.sewn import sewn_lengths
from littlefold.lay.sheet import LayPlan, lay_sheet, marker
from littlefold.lay.shopping import shopping_list
from littlefold.lay.thread import thread_length
from littlefold.problem import Problem
from littlefold.sheet.paper import read_paper
from littlefold.web.pages.cloth_laid import all_lays, best_lay

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.lay import Lay
    from littlefold.web.pages.cloth_laid import OnCloth
    from littlefold.web.preferences import Units
    from littlefold.web.room import Room


def printed(
    on: OnCloth, found: Sequence[object], room: Room, sheet: Literal["lay", "marker"]
) -> bytes | None:
    """A sheet of the best lay that was found; None where nothing can be laid so, or no page is that long."""
    lay = best_lay(on, found)
    if lay is None:
        return None
    if sheet == "marker":
        return marker(lay, room.today(), room.preferences.units)
    paper = read_paper(room.preferences.paper)
    assert not isinstance(paper, Problem)  # noqa: S101 - only papers are kept
    return lay_sheet(_plan(on, lay, found, room.preferences.units), paper, room.today())


def _plan(on: OnCloth, lay: Lay, found: Sequence[object], units: Units) -> LayPlan:
    outcome = on.outcome
    thread = thread_length(sewn_lengths(outcome.pattern))
    assert not isinstance(thread, Problem)  # noqa: S101 - the usual stitches are known
    shopping = shopping_list(all_lays(on, lay), outcome.draft.notions, thread)
    names = filter(None, (outcome.draft.title, outcome.draft.measurements.nickname))
    rows = tuple(one for one in found if isinstance(one, Row))
    warned = cautions(outcome.pattern, outcome.problems)
    return LayPlan(", ".join(names), lay, rows, shopping, warned, units=units)
