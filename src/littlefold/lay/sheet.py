"""The lay on one page, to follow with the scissors: drawing to scale, chalk table, shopping list, left-overs, cautions."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from littlefold.drawing import Drawing, Label, Meaning, Stroke, plain
from littlefold.geometry import Bounds, Path, Point
from littlefold.lay.chalk import chalk_table, lower_edge
from littlefold.lay.draw import lay_drawing
from littlefold.lay.leftover import fitting, leftovers
from littlefold.lay.shrink import advice
from littlefold.sheet.furniture import spoken_date
from littlefold.sheet.page import Page
from littlefold.sheet.paper import LONGEST
from littlefold.sheet.pdf import typeset, write_pdf
from littlefold.sheet.reduced import DIVISORS, scale_bar, shrunk
from littlefold.sheet.replay import drawing_as_data, looks_as_data

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date

    from littlefold.drawing import Mark
    from littlefold.lay.chalk import ChalkRow
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.leftover import Leftover
    from littlefold.lay.shopping import Buy, ShoppingList
    from littlefold.sheet.paper import Paper

MARGIN = 12.0
"""Bare paper at each side of the page [mm]."""

HEAD = 24.0
"""What title and figures take above the drawing [mm]."""

ROW = 4.9
"""The height of a row of a table [mm], as the template sets it."""

WIDE = 0.62
"""The share of the page that the chalk table takes beside the shopping list."""

LEAST_DRAWING = 60.0
"""A drawing lower than this [mm] cannot be followed; the tables go on the next page instead."""

LINE = 100
"""Letters of a caution in one line of the page, roughly; only for the room that is kept."""

BORDER = 10.0
"""Bare paper round the marker [mm]."""


@dataclass(frozen=True, slots=True)
class LayPlan:
    """All that the page tells.

    Attributes:
        title: The garment and for whom.
        lay: The lay to cut.
        rows: The ways that were compared; one or none where there was no choice.
        shopping: What to buy.
        cautions: What must be read before anyone cuts or sews.
    """

    title: str
    lay: Lay
    rows: tuple[Row, ...]
    shopping: ShoppingList
    cautions: tuple[str, ...] = ()


def lay_sheet(plan: LayPlan, paper: Paper, made: date) -> bytes:
    """The page as a PDF on a sheet of paper; a roll is taken as A4.

    Where a lay has so many cuts that the tables do not fit below a drawing that can be followed, they go on a
    second page.
    """
    return typeset(_template(), sheet_values(plan, paper, made), made)


def sheet_values(plan: LayPlan, paper: Paper, made: date) -> dict[str, Any]:
    """What the page says, as data for its template."""
    lay, cloth = plan.lay, plan.lay.cloth
    width, height = (paper.width, paper.height) if paper.height is not None else (210.0, 297.0)
    rests = leftovers(lay)
    tables = {
        "chalk": [_chalk(row) for row in chalk_table(lay)],
        "edge": lower_edge(lay),
        "shopping": [_buy(line, plan.shopping.currency) for line in plan.shopping.lines],
        "total": _total(plan.shopping),
        "leftovers": [f"{letter} {_size(rest)}" for letter, rest in lettered(rests)],
        "fitting": [f"{count} x {name}" for name, count in fitting(rests) if count],
        "rows": [_way(row, row.lay is lay, plan.shopping.currency) for row in plan.rows],
        "cautions": [plain(words) for words in cautions_of(plan)],
    }
    room = (width - 2 * MARGIN, max(LEAST_DRAWING, height - 2 * MARGIN - HEAD - _height(tables)))
    return {
        "looks": looks_as_data(),
        "page": {"width": width, "height": height, "margin": MARGIN},
        "title": plain(plan.title),
        "made": spoken_date(made),
        "figures": _figures(plan),
        "wash": _wash(lay),
        "step": f"{cloth.step / 10:.4g} cm",
        "drawing": drawing_as_data(fitted(with_leftovers(lay, rests), *room)),
        **tables,
    }


def marker(lay: Lay, made: date) -> bytes | None:
    """The lay at full size as a PDF of one page for a copy shop; None where no page is that long."""
    drawing = lay_drawing(lay)
    box = (drawing.bounds() or Bounds(0.0, 0.0, 1.0, 1.0)).grown(BORDER)
    if max(box.width, box.height) > LONGEST:
        return None
    page = Page(box.width, box.height, drawing, box, name="marker")
    return write_pdf((page,), drawing.title, made)


def cautions_of(plan: LayPlan) -> tuple[str, ...]:
    """The cautions of the garment, of what is bought, and of scissors, each once."""
    bought = (line.caution for line in plan.shopping.lines if line.caution)
    return tuple(dict.fromkeys((*plan.cautions, *bought, SHARP)))


SHARP = (
    "Scissors and pins are for grown hands: count the pins before and after, and keep both from the children."
)


def fitted(drawing: Drawing, width: float, height: float) -> Drawing:
    """The drawing at the largest usual scale at which it fits into a room [mm], with its scale bar."""
    for divisor in DIVISORS:
        small = shrunk(drawing, divisor)
        small = small.with_marks(scale_bar(small, divisor))
        box = small.bounds()
        if box is None or (box.width <= width and box.height <= height):
            return small
    return small


def with_leftovers(lay: Lay, rests: tuple[Leftover, ...]) -> Drawing:
    """The lay drawing with the map of what is left, each rectangle with its letter."""
    return lay_drawing(lay).with_marks(tuple(_map(rests)))


def lettered(rests: tuple[Leftover, ...]) -> tuple[tuple[str, Leftover], ...]:
    """The rectangles that are left, each with a letter."""
    return tuple(zip("ABCDEFGHIJKLMNOPQRSTUVWXYZ", rests, strict=False))


def _map(rests: tuple[Leftover, ...]) -> Iterator[Mark]:
    for letter, rest in lettered(rests):
        right, top = rest.x + rest.length, rest.y + rest.width
        corners = (Point(rest.x, rest.y), Point(right, rest.y), Point(right, top), Point(rest.x, top))
        yield Stroke(Path.line_through(*corners, corners[0]), Meaning.GUIDE, f"left {letter}")
        middle = Point(rest.x + rest.length / 2, rest.y + rest.width / 2)
        yield Label(letter, middle, Meaning.LETTER, anchor="middle", name=f"left {letter}")


def _figures(plan: LayPlan) -> list[list[str]]:
    lay, cloth = plan.lay, plan.lay.cloth
    across = f"{cloth.width / 10:g} cm, {cloth.usable_width / 10:.1f} cm of it used"
    return [
        ["Cloth", f"{cloth.name}, {across}{', with nap: all arrows one way' if cloth.nap else ''}"],
        ["Laid", f"{lay.spread.way}, {lay.cloth_length / 10:.1f} cm long, {lay.share_used:.0%} used"],
        ["Buy", _buying(lay, plan.shopping.currency)],
    ]


def _buying(lay: Lay, currency: str) -> str:
    cost = lay.cloth.cost(lay.cloth_length)
    length = f"{lay.cloth.length_to_buy(lay.cloth_length) / 1000:.2f} m"
    return length if cost is None else f"{length}, {_money(cost, currency)}"


def _wash(lay: Lay) -> str:
    return " ".join(one.message for one in advice(lay.cloth.shrinkage, lay.cloth.treatment))


def _chalk(row: ChalkRow) -> list[str]:
    ends = (row.start.x, row.start.y, row.end.x, row.end.y)
    return [str(row.number), plain(row.title), row.cut, *(f"{mm / 10:.1f}" for mm in ends)]


def _buy(line: Buy, currency: str) -> dict[str, Any]:
    return {
        "name": plain(line.name.replace("_", " ")),
        "amount": amount(line),
        "price": "" if line.price is None else _money(line.price, currency),
        "remark": plain(line.remark),
        "steps": list(line.steps),
    }


def amount(line: Buy) -> str:
    """How much of a thing is bought, in words."""
    if line.unit != "mm":
        return f"{line.amount:g} {line.unit}"
    return f"{line.amount / 1000:.2f} m" if line.amount >= 1000 else f"{line.amount / 10:g} cm"  # noqa: PLR2004 - from a metre on, metres


def _total(shopping: ShoppingList) -> str:
    if not any(line.price is not None for line in shopping.lines):
        return ""
    words = _money(shopping.total, shopping.currency)
    return words if shopping.complete else f"{words}, without what has no price"


def _money(cost: float, currency: str) -> str:
    return f"{cost:.2f} {currency}".strip()


def _size(rest: Leftover) -> str:
    layers = "" if rest.layers == 1 else f", {rest.layers} layers"
    return f"{rest.length / 10:.0f} x {rest.width / 10:.0f} cm{layers}"


def _way(row: Row, taken: bool, currency: str) -> list[str]:  # noqa: FBT001 - whether this row is the one taken
    name = f"{row.way}{' (this lay)' if taken else ''}"
    if row.lay is None or row.to_buy is None or row.bounds is None:
        return [name, "does not go", "", "", ""]
    price = "" if row.price is None else _money(row.price, currency)
    return [name, f"{row.to_buy / 1000:.2f} m", f"{row.lay.share_used:.0%}", price, row.bounds.binding]


def _height(tables: dict[str, Any]) -> float:
    """About what the tables take below the drawing [mm]."""
    left = 2 + len(tables["chalk"])
    ways = len(tables["rows"]) + 2 if len(tables["rows"]) > 1 else 0
    remarks = sum(len(line["remark"]) // 40 + len(line["steps"]) * 1.6 for line in tables["shopping"])
    right = (
        4 + len(tables["shopping"]) + remarks + ways + len(tables["leftovers"]) / 2 + len(tables["fitting"])
    )
    cautions = sum(1 + len(words) // LINE for words in tables["cautions"])
    return ROW * (max(left, right) + cautions + 1)


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.lay").joinpath("lay.typ").read_text("utf-8")
