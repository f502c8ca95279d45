"""What `littlefold cloth` says: the ways compared, the chalk table, the shopping list; and the same as one document."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from rich.table import Table

from littlefold.booklet.record import problem_record
from littlefold.lay.account import lay_values, row_values
from littlefold.lay.chalk import chalk_table, lower_edge
from littlefold.lay.leftover import fitting, leftovers
from littlefold.lay.sheet import amount, bought_name, cautions_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from rich.console import Console

    from littlefold.draft.model import Draft
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.sheet import LayPlan
    from littlefold.problem import Problem

FORMAT = "littlefold-cloth/1"

Json = dict[str, Any]

NO_LAY: Json = {
    "cloth": None,
    "width_mm": None,
    "usable_width_mm": None,
    "way": None,
    "length_mm": None,
    "length_to_buy_mm": None,
    "price": None,
    "share_used": None,
    "gap_mm": None,
    "maker": None,
    "shrinkage": None,
    "verified": False,
    "placements": [],
}
"""The fields of a lay where there is none."""


def said_lay(lay: Lay) -> str:
    """A better lay in one line, as the search goes on."""
    return (
        f"{lay.spread.way:<20} {lay.cloth_length / 10:6.1f} cm   {lay.share_used:4.0%} used   ({lay.maker})"
    )


def print_plan(plan: LayPlan | None, rows: tuple[Row, ...], console: Console) -> None:
    """Prints the ways compared, and the lay with its table and shopping list where there is one."""
    currency = "" if plan is None else plan.shopping.currency
    if plan is not None or len(rows) > 1:
        console.print(_ways(rows, None if plan is None else plan.lay, currency))
    for row in rows if len(rows) > 1 else ():
        for problem in row.problems if row.lay is None else ():
            console.print(f"Not {row.way}: {problem.message}", style="dim", markup=False)
    if plan is None:
        console.print("There is no way to cut these pieces from this cloth.")
        return
    lay = plan.lay
    console.print(
        f"{plan.title}: {lay.spread.way}, {lay.cloth_length / 10:.1f} cm long on cloth {lay.cloth.width / 10:g} cm "
        f"wide, {lay.share_used:.0%} used. Verified: no overlap, grain, folds and numbers are right.",
        markup=False,
    )
    console.print(_chalk(lay))
    console.print(_shopping(plan))
    fits = ", ".join(f"{count} x {name}" for name, count in fitting(leftovers(lay)) if count)
    console.print(f"From what is left could be cut, each taken alone: {fits or 'nothing usual'}.")
    for caution in cautions_of(plan):
        console.print(caution, style="bold", markup=False)


def _ways(rows: tuple[Row, ...], taken: Lay | None, currency: str) -> Table:
    table = Table(title="Ways to lay it", title_justify="left", pad_edge=False)
    for name in ("Way", "Lay cm", "Buy m", "Used", f"Price {currency}".strip(), "Bound", ""):
        table.add_column(name, justify="left" if name in ("Way", "Bound", "") else "right")
    for row in rows:
        table.add_row(*_way(row), "taken" if row.lay is taken and taken is not None else "")
    return table


def _way(row: Row) -> tuple[str, ...]:
    if row.lay is None or row.to_buy is None or row.bounds is None:
        return (str(row.way), "", "does not go", "", "", "")
    price = "" if row.price is None else f"{row.price:.2f}"
    bound = f"{row.bounds.binding}, {row.bounds.most * row.lay.spread.sheets / 10:.1f} cm at least"
    figures = (f"{row.lay.cloth_length / 10:.1f}", f"{row.to_buy / 1000:.2f}", f"{row.lay.share_used:.0%}")
    return (str(row.way), *figures, price, bound)


def _chalk(lay: Lay) -> Table:
    edge = lower_edge(lay)
    table = Table(title=f"Chalk: cm from the cut end / from {edge}", title_justify="left", pad_edge=False)
    for name in ("No.", "Piece", "Cut", "Tail of the arrow", "Head of the arrow"):
        table.add_column(name, justify="right" if "arrow" in name or name == "No." else "left")
    for row in chalk_table(lay):
        ends = (f"{point.x / 10:.1f} / {point.y / 10:.1f}" for point in (row.start, row.end))
        table.add_row(str(row.number), row.title, row.cut, *ends)
    return table


def _shopping(plan: LayPlan) -> Table:
    shopping = plan.shopping
    table = Table(title="To buy", title_justify="left", pad_edge=False)
    for name in ("What", "How much", "Price", ""):
        table.add_column(name, justify="right" if name in ("How much", "Price") else "left")
    for line in shopping.lines:
        price = "" if line.price is None else f"{line.price:.2f} {shopping.currency}".strip()
        table.add_row(bought_name(line, plan), amount(line), price, " ".join((line.remark, *line.steps)))
    if any(line.price is not None for line in shopping.lines):
        remark = "" if shopping.complete else "without what has no price"
        table.add_row("together", "", f"{shopping.total:.2f} {shopping.currency}".strip(), remark)
    return table


def cloth_record(
    draft: Draft, plan: LayPlan | None, rows: tuple[Row, ...], problems: Iterable[Problem]
) -> Json:
    """The one document: the lay, its bounds, the ways compared, table, left-overs, shopping list, findings."""
    taken = next((row for row in rows if plan is not None and row.lay is plan.lay), None)
    return {
        "format": FORMAT,
        "recipe": {"name": draft.recipe, "title": draft.title, "hash": draft.recipe_hash},
        **(NO_LAY if plan is None else lay_values(plan.lay)),
        "bounds": None if taken is None or taken.bounds is None else _bounds(taken),
        "comparison": [row_values(row) for row in rows],
        "chalk": [] if plan is None else [asdict(row) for row in chalk_table(plan.lay)],
        "leftovers": [] if plan is None else [asdict(rest) for rest in leftovers(plan.lay)],
        "shopping": None if plan is None else asdict(plan.shopping),
        "cautions": [] if plan is None else list(cautions_of(plan)),
        "problems": [problem_record(problem) for problem in problems],
    }


def empty_cloth_record(problems: Iterable[Problem], recipe: str = "") -> Json:
    """The document of a lay that could not be begun: the same shape, with nothing in it."""
    return {
        "format": FORMAT,
        "recipe": {"name": recipe, "title": "", "hash": ""},
        **NO_LAY,
        "bounds": None,
        "comparison": [],
        "chalk": [],
        "leftovers": [],
        "shopping": None,
        "cautions": [],
        "problems": [problem_record(problem) for problem in problems],
    }


def _bounds(row: Row) -> Json:
    assert row.bounds is not None, "asked only where there are bounds"  # noqa: S101 - our own mistake
    return {
        "area_mm": row.bounds.area,
        "fold_row_mm": row.bounds.fold_row,
        "longest_mm": row.bounds.longest,
        "most_mm": row.bounds.most,
        "binds": row.bounds.binding,
    }
