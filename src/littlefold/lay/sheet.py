"""The lay on one page, to follow with the scissors: drawing to scale, chalk table, shopping list, left-overs, cautions."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from littlefold.drawing import Drawing, Label, Meaning, Stroke, plain
from littlefold.geometry import Affine, Bounds, Path, Point
from littlefold.lay import spoken
from littlefold.lay.chalk import chalk_table, lower_edge
from littlefold.lay.draw import cloth_end, lay_drawing
from littlefold.lay.full_size import marker_drawing
from littlefold.lay.leftover import fitting, leftovers
from littlefold.lay.shrink import advice
from littlefold.lay.stripes_told import told
from littlefold.sheet.page import Page
from littlefold.sheet.paper import LONGEST
from littlefold.sheet.pdf import typeset, write_pdf
from littlefold.sheet.reduced import DIVISORS, scale_bar, shrunk
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date

    from littlefold.drawing import Mark
    from littlefold.lay.chalk import ChalkRow
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.leftover import Leftover
    from littlefold.lay.shopping import Buy, ShoppingList
    from littlefold.lay.spoken import Units
    from littlefold.lay.stripes import Met
    from littlefold.sheet.paper import Paper

MARGIN = 12.0
"""Bare paper at each side of the page [mm]."""

A4 = (210.0, 297.0)

LEAST_DRAWING = 60.0
"""A drawing that must be lower than this [mm] cannot be followed; the tables go on the next page instead."""

MOST_SENTENCES = 20
"""No caution has more; a recipe file from elsewhere might."""

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
        units: What tape and shop count in.
        stripes: Of each seam, whether stripes meet in it; nothing where the cloth has none.
    """

    title: str
    lay: Lay
    rows: tuple[Row, ...]
    shopping: ShoppingList
    cautions: tuple[str, ...] = ()
    units: Units = "cm"
    stripes: tuple[Met, ...] = ()


def lay_sheet(plan: LayPlan, paper: Paper, made: date) -> bytes:
    """The page as a PDF on a sheet of paper; a roll is taken as A4.

    Where a lay has so many cuts that the tables do not fit below a drawing that can be followed, they go on a
    second page.
    """
    return typeset(_template(), sheet_values(plan, paper, made), made)


def sheet_values(plan: LayPlan, paper: Paper, made: date) -> dict[str, Any]:
    """What the page says, as data for its template."""
    lay, units = plan.lay, plan.units
    width, height = (paper.width, paper.height) if paper.height is not None else A4
    rests = leftovers(lay)
    tables = {
        "chalk": [_chalk(row, units) for row in chalk_table(lay)],
        "edge": lower_edge(lay),
        "shopping": [_buy(line, plan) for line in plan.shopping.lines],
        "total": _total(plan.shopping),
        "leftovers": [f"{letter} {_size(rest, units)}" for letter, rest in lettered(rests)],
        "fitting": [f"{count} x {name}" for name, count in fitting(rests) if count],
        "rows": [_way(row, plan) for row in _worth_showing(plan.rows)],
        "cautions": [_in_full(words) for words in cautions_of(plan)],
    }
    return {
        "looks": looks_as_data(),
        "page": {"width": width, "height": height, "margin": MARGIN},
        "title": plain(plan.title),
        "made": spoken_date(made),
        "figures": _figures(plan),
        "wash": _wash(lay),
        "stripes": [_in_full(words) for words in told(lay, plan.stripes)],
        "units": "Inches" if units == "in" else "Centimetres",
        "drawings": [drawing_as_data(drawing) for drawing in _drawings(plan, rests, width - 2 * MARGIN)],
        **tables,
    }


def marker(lay: Lay, made: date, units: Units = "cm") -> bytes | None:
    """The lay at full size as a PDF of one page for a copy shop; None where no page is that long."""
    drawing = marker_drawing(lay, units)
    box = (drawing.bounds() or Bounds(0.0, 0.0, 1.0, 1.0)).grown(BORDER)
    if max(box.width, box.height) > LONGEST:
        return None
    corner = Point(box.left, box.bottom)
    home = Affine.translation(Point(0.0, 0.0) - corner)
    page = Page(box.width, box.height, drawing.transformed(home), name="marker", corner=corner)
    return write_pdf((page,), drawing.title, made)


def cautions_of(plan: LayPlan) -> tuple[str, ...]:
    """The cautions of the garment, of what is bought, and of scissors, each once."""
    bought = (line.caution for line in plan.shopping.lines if line.caution)
    return tuple(dict.fromkeys((*plan.cautions, *bought, SHARP)))


SHARP = (
    "Scissors and pins are for grown hands: count the pins before and after, and keep both from the children."
)


def _drawings(plan: LayPlan, rests: tuple[Leftover, ...], width: float) -> Iterator[Drawing]:
    """The drawing at each usual scale at which it is no wider than the page, down to the least that can be followed.

    The typesetter takes the largest for which its tables leave room.
    """
    for divisor in DIVISORS:
        small = shrunk(with_leftovers(plan.lay, rests, divisor, plan.units), divisor)
        small = small.with_marks(scale_bar(small, divisor, plan.units))
        box = small.bounds()
        assert box is not None, "a cloth has edges"  # noqa: S101 - our own mistake
        if box.width <= width:
            yield small
            if box.height <= LEAST_DRAWING:
                return


def with_leftovers(
    lay: Lay, rests: tuple[Leftover, ...], divisor: float = 1.0, units: Units = "cm"
) -> Drawing:
    """The lay drawing with the end of what is bought and the map of what is left, each rectangle with its letter."""
    return lay_drawing(lay, divisor, units).with_marks((*_end(lay), *_map(rests)))


def _end(lay: Lay) -> Iterator[Mark]:
    """The end of the cloth that is bought or in hand, where it is longer than the lay."""
    x = cloth_end(lay)
    if x > lay.length:
        end = Path.line_through(Point(x, 0.0), Point(x, lay.spread.height))
        yield Stroke(end, Meaning.INSIDE, "end of the cloth")


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
    lay, cloth, units = plan.lay, plan.lay.cloth, plan.units
    across = f"{spoken.width(cloth.width, units)}, {spoken.tape(cloth.usable_width, units)} of it used"
    return [
        ["Cloth", f"{cloth.name}, {across}{_way_up(cloth)}"],
        ["Laid", f"{lay.spread.way}, {spoken.tape(lay.cloth_length, units)} long, {lay.share_used:.0%} used"],
        ["Buy", _buying(plan)],
    ]


def _way_up(cloth: Cloth) -> str:
    """Why all arrows point the same way, where they must."""
    if cloth.nap:
        return ", with nap: all arrows one way"
    is_uneven = cloth.repeat is not None and cloth.repeat.uneven_along
    return ", with uneven stripes: all arrows one way" if is_uneven else ""


def _buying(plan: LayPlan) -> str:
    lay = plan.lay
    if not lay.to_buy:
        return "nothing, it is cut from scraps"
    length = spoken.cloth(lay.to_buy, plan.units)
    return length if lay.price is None else f"{length}, {_money(lay.price, plan.shopping.currency)}"


def _wash(lay: Lay) -> str:
    return " ".join(one.message for one in advice(lay.cloth.shrinkage, lay.cloth.treatment))


def _chalk(row: ChalkRow, units: Units) -> list[str]:
    ends = (row.start.x, row.start.y, row.end.x, row.end.y)
    return [str(row.number), plain(row.title), row.cut, *(spoken.figure(mm, units) for mm in ends)]


def _buy(line: Buy, plan: LayPlan) -> dict[str, Any]:
    return {
        "name": plain(bought_name(line)),
        "amount": amount(line, plan.units),
        "price": "" if line.price is None else _money(line.price, plan.shopping.currency),
        "remark": plain(line.remark),
        "steps": list(line.steps),
    }


def bought_name(line: Buy) -> str:
    """What is bought, in words: `main cloth`, `lining`, `bias binding`."""
    return "main cloth" if line.is_cloth and line.name == "main" else line.name.replace("_", " ")


def amount(line: Buy, units: Units = "cm") -> str:
    """How much of a thing is bought, in words; of cloth, as the shop sells it."""
    if line.unit == "mm":
        return spoken.cloth(line.amount, units) if line.is_cloth else spoken.notion(line.amount, units)
    return f"{line.amount:g} {line.unit.removesuffix('s') if line.amount == 1 else line.unit}"


def _total(shopping: ShoppingList) -> list[str]:
    if not any(line.price is not None for line in shopping.lines):
        return []
    words = "together" if shopping.complete else "together, without what has no price"
    return [words, _money(shopping.total, shopping.currency)]


def _money(cost: float, currency: str) -> str:
    return f"{cost:.2f} {currency}".strip()


def _size(rest: Leftover, units: Units) -> str:
    layers = "" if rest.layers == 1 else f", {rest.layers} layers"
    return f"{spoken.size(rest.length, rest.width, units)}{layers}"


def _in_full(words: str) -> str:
    """A caution to its last word: `plain` would cut a long one short, so it is taken sentence by sentence."""
    return " ".join(plain(part) for part in re.split(r"(?<=[.!?]) ", words)[:MOST_SENTENCES])


def _worth_showing(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """All rows of one width; of several widths those that can be laid."""
    return (
        rows if len({row.width for row in rows}) <= 1 else tuple(row for row in rows if row.lay is not None)
    )


def _way(row: Row, plan: LayPlan) -> list[str]:
    wide = f" {spoken.width(row.width, plan.units)}" if len({one.width for one in plan.rows}) > 1 else ""
    name = f"{row.way}{wide}{' (this lay)' if row.lay is plan.lay else ''}"
    if row.lay is None or row.to_buy is None or row.bounds is None:
        return [name, "does not go"]
    price = "" if row.price is None else _money(row.price, plan.shopping.currency)
    bought = spoken.cloth(row.to_buy, plan.units)
    return [name, bought, f"{row.lay.share_used:.0%}", price, row.bounds.binding]


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.lay").joinpath("lay.typ").read_text("utf-8")
