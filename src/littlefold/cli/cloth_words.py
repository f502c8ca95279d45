"""What `littlefold cloth` says: the ways compared, the chalk table, the shopping list; and the same as one document."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from rich.table import Table

from littlefold.booklet.record import problem_record
from littlefold.lay import spoken
from littlefold.lay.account import lay_values, row_values
from littlefold.lay.chalk import chalk_table, lower_edge
from littlefold.lay.leftover import fitting, leftovers
from littlefold.lay.sheet import amount, bought_name, cautions_of
from littlefold.lay.stripes_told import told

if TYPE_CHECKING:
    from collections.abc import Iterable

    from rich.console import Console

    from littlefold.draft.model import Draft
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.sheet import LayPlan
    from littlefold.lay.stripes import Met
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
    "repeat": None,
    "verified": False,
    "placements": [],
}
"""The fields of a lay where there is none."""


def said_lay(lay: Lay) -> str:
    """A better lay in one line, as the search goes on."""
    return (
        f"{lay.spread.way:<20} {lay.cloth.width / 10:4g} cm wide {lay.cloth_length / 10:6.1f} cm long "
        f"{lay.share_used:4.0%} used   ({lay.maker})"
    )


def print_plan(plan: LayPlan | None, rows: tuple[Row, ...], console: Console) -> None:
    """Prints the ways compared, and the lay with its table and shopping list where there is one."""
    if len(rows) > 1 or (rows and plan is not None):
        console.print(_ways(rows, plan))
    for row in rows if len(rows) > 1 else ():
        if row.lay is None:
            console.print(_not_so(row), style="dim", markup=False)
    if plan is None:
        console.print("There is no way to cut these pieces from this cloth.")
        return
    _print_lay(plan, console)
    console.print(_shopping(plan))
    fits = ", ".join(f"{count} x {name}" for name, count in fitting(leftovers(plan.lay)) if count)
    console.print(f"From what is left could be cut, each taken alone: {fits or 'nothing usual'}.")
    for caution in cautions_of(plan):
        console.print(caution, style="bold", markup=False)


def print_other(plan: LayPlan, console: Console) -> None:
    """Prints the lay of a further cloth of the garment."""
    if len(plan.rows) > 1:
        console.print(_ways(plan.rows, plan))
    _print_lay(plan, console)


def _print_lay(plan: LayPlan, console: Console) -> None:
    lay, units = plan.lay, plan.units
    console.print(
        f"{plan.title}: {lay.cloth.name} {lay.spread.way}, {spoken.tape(lay.cloth_length, units)} long on cloth "
        f"{spoken.width(lay.cloth.width, units)} wide, {lay.share_used:.0%} used. Verified: no overlap, grain, folds "
        "and numbers are right.",
        markup=False,
    )
    for words in told(lay, plan.stripes):
        console.print(words, markup=False)
    console.print(_chalk(plan))


def _not_so(row: Row) -> str:
    """Why a way does not go: the first reason, and how many more there are."""
    more = f" (and {len(row.problems) - 1} more of its kind)" if len(row.problems) > 1 else ""
    return (
        f"Not {row.way}: {row.problems[0].message if row.problems else 'no lay was found that holds.'}{more}"
    )


def _ways(rows: tuple[Row, ...], plan: LayPlan | None) -> Table:
    currency = "" if plan is None else plan.shopping.currency
    units: spoken.Units = "cm" if plan is None else plan.units
    table = Table(title="Ways to lay it", title_justify="left", pad_edge=False)
    shop = "m" if units == "cm" else "yd"
    for name in (
        "Way",
        "Width",
        f"Lay {units}",
        f"Buy {shop}",
        "Used",
        f"Price {currency}".strip(),
        "Bound",
        "",
    ):
        table.add_column(name, justify="left" if name in ("Way", "Bound", "") else "right")
    taken = None if plan is None else plan.lay
    for row in rows:
        table.add_row(*_way(row, units), "taken" if row.lay is taken and taken is not None else "")
    return table


def _way(row: Row, units: spoken.Units) -> tuple[str, ...]:
    wide = spoken.width(row.width, units)
    if row.lay is None or row.to_buy is None or row.bounds is None:
        return (str(row.way), wide, "", "does not go", "", "", "")
    price = "" if row.price is None else f"{row.price:.2f}"
    least = spoken.tape(row.bounds.most * row.lay.spread.sheets, units)
    length = spoken.figure(row.lay.cloth_length, units)
    bought = spoken.cloth(row.to_buy, units).rsplit(" ", 1)[0]
    used = f"{row.lay.share_used:.0%}"
    return (str(row.way), wide, length, bought, used, price, f"{row.bounds.binding}, {least} at least")


def _chalk(plan: LayPlan) -> Table:
    title = f"Chalk: {plan.units} from the cut end / from {lower_edge(plan.lay)}"
    table = Table(title=title, title_justify="left", pad_edge=False)
    for name in ("No.", "Piece", "Cut", "Tail of the arrow", "Head of the arrow"):
        table.add_column(name, justify="right" if "arrow" in name or name == "No." else "left")
    for row in chalk_table(plan.lay):
        ends = (spoken.spot(point, plan.units) for point in (row.start, row.end))
        table.add_row(str(row.number), row.title, row.cut, *ends)
    return table


def _shopping(plan: LayPlan) -> Table:
    shopping = plan.shopping
    table = Table(title="To buy", title_justify="left", pad_edge=False)
    for name in ("What", "How much", "Price", ""):
        table.add_column(name, justify="right" if name in ("How much", "Price") else "left")
    for line in shopping.lines:
        price = "" if line.price is None else f"{line.price:.2f} {shopping.currency}".strip()
        table.add_row(
            bought_name(line), amount(line, plan.units), price, " ".join((line.remark, *line.steps))
        )
    if any(line.price is not None for line in shopping.lines):
        remark = "" if shopping.complete else "without what has no price"
        table.add_row("together", "", f"{shopping.total:.2f} {shopping.currency}".strip(), remark)
    return table


def cloth_record(
    draft: Draft, plans: tuple[LayPlan, ...], rows: tuple[Row, ...], problems: Iterable[Problem]
) -> Json:
    """The one document: the lay, its bounds, the ways compared, table, left-overs, shopping list, findings.

    Further cloths of the garment stand in `others`, each with its lay and tables.
    """
    plan = plans[0] if plans else None
    taken = next((row for row in rows if plan is not None and row.lay is plan.lay), None)
    return {
        "format": FORMAT,
        "recipe": {"name": draft.recipe, "title": draft.title, "hash": draft.recipe_hash},
        **(NO_LAY if plan is None else lay_values(plan.lay)),
        "bounds": None if taken is None or taken.bounds is None else _bounds(taken),
        "comparison": [row_values(row) for row in rows],
        **({"chalk": [], "leftovers": [], "stripes": []} if plan is None else _tables(plan)),
        "others": [{**lay_values(other.lay), **_tables(other)} for other in plans[1:]],
        "shopping": None if plan is None else asdict(plan.shopping),
        "cautions": [] if plan is None else list(cautions_of(plan)),
        "problems": [problem_record(problem) for problem in problems],
    }


def _tables(plan: LayPlan) -> Json:
    return {
        "chalk": [asdict(row) for row in chalk_table(plan.lay)],
        "leftovers": [asdict(rest) for rest in leftovers(plan.lay)],
        "stripes": [_seam(met) for met in plan.stripes],
    }


def _seam(met: Met) -> Json:
    """What becomes of the stripes in a seam."""
    return {
        "seam": [list(met.first), list(met.second)],
        "along_off_mm": met.along,
        "across_off_mm": met.across,
        "not_matched_because": met.hindrance or None,
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
        "stripes": [],
        "others": [],
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
        "wide_pieces_mm": row.bounds.in_a_row,
        "beside_fold_mm": row.bounds.beside_fold,
        "most_mm": row.bounds.most,
        "binds": row.bounds.binding,
    }
