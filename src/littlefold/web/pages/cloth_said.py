"""What the page of the cloth says: a lay drawn, what to buy, ways and widths beside each other."""

from __future__ import annotations

import re
from math import ceil, floor
from typing import TYPE_CHECKING, Any

from littlefold.body.tape import say_length
from littlefold.lay.cloth import YARD_STEP
from littlefold.lay.compare import best_of
from littlefold.lay.draw import cloth_end
from littlefold.lay.leftover import fitting, leftovers
from littlefold.lay.sheet import bought_name, lettered, with_leftovers
from littlefold.lay.short import enough
from littlefold.lay.spoken import tape
from littlefold.lay.ways import Way
from littlefold.sheet.svg import write_svg

if TYPE_CHECKING:
    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.lay.leftover import Leftover
    from littlefold.lay.shopping import Buy, ShoppingList
    from littlefold.web.preferences import Units

Json = dict[str, Any]

WIDE, TALL = 260.0, 150.0
"""The room for the drawing [mm]: at this size its words, which keep theirs, are read on a screen."""
NARROW = 72.0
"""The same on the screen of a telephone, where the whole lay is to be seen without moving the page sideways."""
LARGEST = 0.2
_STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)


def lay_words(lay: Lay, units: Units) -> Json:
    """A lay as it is told and drawn, with what is left of the cloth."""
    cloth, rests = lay.cloth, leftovers(lay)
    in_hand = cloth.length_to_lay()
    return {
        "from_scraps": lay.spread.way is Way.SCRAPS,
        "to_buy": bought(lay.to_buy, units),
        "in_hand": "" if cloth.in_hand is None else say_length(cloth.in_hand, units),
        "spare": "" if in_hand is None else say_length(max(floor(in_hand - lay.cloth_length), 0), units),
        "short": [one.message for one in enough(lay)],
        "length": tape(lay.cloth_length, units),
        "used": f"{lay.share_used:.0%}",
        "price": _money(lay.price, cloth.price.currency if cloth.price else ""),
        "drawing": _drawn(lay, rests, WIDE, units),
        "small_drawing": _drawn(lay, rests, NARROW, units),
        "rests": [f"{letter}: {_sides(rest, units)}" for letter, rest in lettered(rests)],
        "fitting": [f"{count} x {name}" for name, count in fitting(rests) if count],
    }


def _drawn(lay: Lay, rests: tuple[Leftover, ...], wide: float, units: Units) -> str:
    """The lay as a picture so wide [mm]; words for which that leaves no room are not in it."""
    scale = min(wide / cloth_end(lay), TALL / lay.spread.height, LARGEST)
    return _STYLE.sub("", write_svg(with_leftovers(lay, rests, 1 / scale, units), scale), count=1)


def _sides(rest: Leftover, units: Units) -> str:
    sides = " by ".join(say_length(floor(side), units) for side in (rest.length, rest.width))
    return f"{sides}, {rest.layers} layers" if rest.layers > 1 else sides


def bought(mm: float, units: Units) -> str:
    """A length as it is asked for in the shop: tenths of a metre, or eighths of a yard."""
    if units == "cm":
        return f"{mm / 1000:.1f} m"
    whole, over = divmod(round(mm / YARD_STEP), 8)
    under = 8
    while over and over % 2 == 0:
        over, under = over // 2, under // 2
    return (
        " ".join(filter(None, (str(whole) if whole or not over else "", f"{over}/{under}" if over else "")))
        + " yd"
    )


def _money(amount: float | None, currency: str = "") -> str:
    return "" if amount is None else f"{amount:.2f} {currency}".strip()


def list_words(found: ShoppingList, units: Units) -> Json:
    """What to buy for the garment."""
    return {
        "lines": [_line(one, units) for one in found.lines],
        "total": _money(found.total, found.currency)
        if any(one.price is not None for one in found.lines)
        else "",
        "complete": found.complete,
        "unpriced": any(one.price is None and not one.is_cloth for one in found.lines),
    }


def _line(one: Buy, units: Units) -> Json:
    if one.is_cloth:
        amount = bought(one.amount, units)
    elif one.unit == "mm":
        amount = say_length(ceil(one.amount), units)
    else:
        amount = f"{one.amount:g} {one.unit.rstrip('s') if one.amount == 1 else one.unit}"
    return {
        "name": bought_name(one),
        "amount": amount,
        "price": _money(one.price),
        "remark": one.remark,
        "caution": one.caution,
        "steps": one.steps,
    }


def cloth_title(name: str) -> str:
    """What a cloth of the garment is called: `main cloth`, `lining`."""
    return "main cloth" if name == "main" else name.replace("_", " ")


def ways_words(rows: tuple[Row, ...], units: Units) -> Json:
    """Ways below each other, widths beside each other; the one that buys least is marked."""
    best = best_of(rows)
    widths = list(dict.fromkeys(row.width for row in rows))
    ways = dict.fromkeys(str(row.way) for row in rows)
    told = {(str(row.way), row.width): _cell(row, units, least=row is best) for row in rows}
    impossible = {problem.message: None for row in rows if row.lay is None for problem in row.problems[:1]}
    return {
        "widths": [say_length(width, units) for width in widths],
        "rows": [(way, [told.get((way, width)) for width in widths]) for way in ways],
        "why": tuple(impossible),
    }


def _cell(row: Row, units: Units, *, least: bool) -> Json:
    if row.lay is None or row.to_buy is None:
        return {"to_buy": "", "least": False}
    return {
        "to_buy": bought(row.to_buy, units),
        "used": f"{row.lay.share_used:.0%}",
        "price": _money(row.price),
        "least": least,
    }
