"""The shopping list: cloth, elastic, cord, buttons, bias, thread, with prices and their sum.

Beside what can hurt a child stands the caution, with the rule that it comes from.  Local codes decide.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from littlefold.lay import spoken
from littlefold.lay.bias import bias_square
from littlefold.lay.cloth import YARD, YARD_STEP, to_the_cent

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from littlefold.draft.model import Notion
    from littlefold.lay.cloth import Cloth, Price
    from littlefold.lay.lay import Lay
    from littlefold.lay.spoken import Units

REEL = 100_000.0
"""The thread on a small reel [mm]: 100 m, common practice, no source."""

LENGTH_STEP = 100.0
"""Elastic, cord and tape are sold by the tenth of a metre [mm], or by the eighth of a yard; common practice, no source."""

BIAS_WIDTH = 30.0
"""The width of strip for a bound edge where the recipe does not say [mm]; from memory, 1 1/4 in for double binding."""

CAUTIONS = {
    "cord": "Cords can strangle or be caught: no cords at hood or neck of young children. EN 14682 and 16 CFR 1120 "
    "set limits; ask what holds where you live.",
    "ribbon": "Ribbons at the neck count as cords: see EN 14682 and 16 CFR 1120, and what holds where you live.",
    "button": "A button that comes off can choke a child under three: sew each on by itself and pull at it. "
    "16 CFR 1501 has the test for small parts; ask what holds where you live.",
    "press stud": "A press stud that comes off can choke a child under three. Test each; see 16 CFR 1501.",
    "elastic": "Elastic that marks the skin is too tight: try it on the child before it is closed.",
}
"""By word in the name of a notion."""


@dataclass(frozen=True, slots=True)
class Buy:
    """One line of the list.

    `amount` is in mm for lengths and a count for pieces, after rounding to what is sold; `price` is None where it
    is not known; `is_cloth` tells cloth from what is sold by the length of tape.
    """

    name: str
    amount: float
    unit: str
    price: float | None = None
    remark: str = ""
    caution: str = ""
    steps: tuple[str, ...] = ()
    is_cloth: bool = False


@dataclass(frozen=True, slots=True)
class ShoppingList:
    """All lines, the sum of the known prices, and whether all were known."""

    lines: tuple[Buy, ...]
    total: float
    complete: bool
    currency: str = ""


def shopping_list(
    best: Sequence[Lay],
    notions: Sequence[Notion] = (),
    thread: float = 0.0,
    prices: Mapping[str, Price] | None = None,
    units: Units | None = None,
) -> ShoppingList:
    """What to buy for a garment: one lay for each cloth, the recipe's notions, and so much thread [mm].

    `prices` are by name of notion, and `thread`: for each `per` millimetres, or for each piece where `per` is 1.
    `units` are those of the maker; where they are not said, those in which the cloth is sold.
    """
    known = prices or {}
    units = units or ("in" if any(spoken.units_of(lay.cloth) == "in" for lay in best) else "cm")
    lines = [_cloth(lay) for lay in best if lay.to_buy] + [
        _notion(notion, known, units) for notion in notions
    ]
    if thread > 0:
        lines.append(_thread(thread, known.get("thread"), units))
    total = sum(line.price or 0.0 for line in lines)
    all_prices = [*known.values(), *(lay.cloth.price for lay in best if lay.cloth.price)]
    currency = next((price.currency for price in all_prices if price.currency), "")
    return ShoppingList(tuple(lines), total, all(line.price is not None for line in lines), currency)


def _cloth(lay: Lay) -> Buy:
    cloth = lay.cloth
    return Buy(
        cloth.name, lay.to_buy, "mm", lay.price, f"{wide(cloth)} wide, laid {lay.spread.way}", is_cloth=True
    )


def wide(cloth: Cloth) -> str:
    """How wide a cloth is, in inches where it is sold by the yard."""
    return spoken.width(cloth.width, spoken.units_of(cloth))


def _notion(notion: Notion, prices: Mapping[str, Price], units: Units) -> Buy:
    if "bias" in notion.name and notion.length is not None:
        return _bias(notion, prices.get(notion.name), units)
    price, remark = prices.get(notion.name), spoken.free_words(notion.remark, units)
    caution = next((words for word, words in CAUTIONS.items() if word in notion.name.lower()), "")
    if notion.length is None:
        cost = None if price is None else to_the_cent(price.amount * notion.count)
        return Buy(notion.name, notion.count, "pieces", cost, remark, caution)
    step = YARD_STEP if units == "in" else LENGTH_STEP
    length = _rounded(notion.length * notion.count, step)
    cost = None if price is None else price.of(length)
    return Buy(notion.name, length, "mm", cost, remark, caution)


def _bias(notion: Notion, price: Price | None, units: Units) -> Buy:
    """Bias is cut from cloth: the side of the square to buy, and how to cut it."""
    assert notion.length is not None, "only a length can be cut on the bias"  # noqa: S101 - our own mistake
    square = bias_square(notion.length * notion.count, BIAS_WIDTH)
    cost = None if price is None else price.of(square.side)
    strip = spoken.notion(round(square.strip_length, -1), units)
    remark = f"a square of cloth of this side, for {strip} of strip"
    return Buy(notion.name, square.side, "mm", cost, remark, steps=square.steps(units))


def _thread(length: float, price: Price | None, units: Units) -> Buy:
    reels = ceil(length / REEL)
    cost = None if price is None else price.of(reels * REEL)
    unit, word = (YARD, "yd") if units == "in" else (1000.0, "m")
    return Buy(
        "thread", reels, "reels", cost, f"{length / unit:.0f} {word}, reels of {REEL / unit:.0f} {word}"
    )


def _rounded(length: float, step: float) -> float:
    return ceil(length / step - 1e-9) * step
