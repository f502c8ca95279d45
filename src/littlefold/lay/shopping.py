"""The shopping list: cloth, elastic, cord, buttons, bias, thread, with prices and their sum.

Beside what can hurt a child stands the caution, with the rule that it comes from.  Local codes decide.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from littlefold.lay.bias import bias_square

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from littlefold.draft.model import Notion
    from littlefold.lay.cloth import Price
    from littlefold.lay.lay import Lay

REEL = 100_000.0
"""The thread on a small reel [mm]: 100 m, common practice, no source."""

LENGTH_STEP = 100.0
"""Elastic, cord and tape are sold by the tenth of a metre [mm]; common practice, no source."""

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
    is not known.
    """

    name: str
    amount: float
    unit: str
    price: float | None = None
    remark: str = ""
    caution: str = ""
    steps: tuple[str, ...] = ()


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
) -> ShoppingList:
    """What to buy for a garment: one lay for each cloth, the recipe's notions, and so much thread [mm].

    `prices` are by name of notion, and `thread`: for each `per` millimetres, or for each piece where `per` is 1.
    """
    known = prices or {}
    lines = [_cloth(lay) for lay in best] + [_notion(notion, known) for notion in notions]
    if thread > 0:
        lines.append(_thread(thread, known.get("thread")))
    total = sum(line.price or 0.0 for line in lines)
    all_prices = [*known.values(), *(lay.cloth.price for lay in best if lay.cloth.price)]
    currency = next((price.currency for price in all_prices if price.currency), "")
    return ShoppingList(tuple(lines), total, all(line.price is not None for line in lines), currency)


def _cloth(lay: Lay) -> Buy:
    cloth = lay.cloth
    width = f"{cloth.width / 10:g} cm wide, laid {lay.spread.way}"
    return Buy(cloth.name, cloth.length_to_buy(lay.cloth_length), "mm", cloth.cost(lay.cloth_length), width)


def _notion(notion: Notion, prices: Mapping[str, Price]) -> Buy:
    if "bias" in notion.name and notion.length is not None:
        return _bias(notion, prices.get(notion.name))
    price = prices.get(notion.name)
    caution = next((words for word, words in CAUTIONS.items() if word in notion.name.lower()), "")
    if notion.length is None:
        cost = None if price is None else price.amount * notion.count
        return Buy(notion.name, notion.count, "pieces", cost, notion.remark, caution)
    length = _rounded(notion.length * notion.count, LENGTH_STEP)
    cost = None if price is None else price.of(length)
    return Buy(notion.name, length, "mm", cost, notion.remark, caution)


def _bias(notion: Notion, price: Price | None) -> Buy:
    """Bias is cut from cloth: the side of the square to buy, and how to cut it."""
    assert notion.length is not None, "only a length can be cut on the bias"  # noqa: S101 - our own mistake
    square = bias_square(notion.length * notion.count, BIAS_WIDTH)
    cost = None if price is None else price.of(square.side)
    remark = f"a square of cloth of this side, for {square.strip_length / 10:.0f} cm of strip"
    return Buy(notion.name, square.side, "mm", cost, remark, steps=square.steps())


def _thread(length: float, price: Price | None) -> Buy:
    reels = ceil(length / REEL)
    cost = None if price is None else price.of(reels * REEL)
    return Buy("thread", reels, "reels", cost, f"{length / 1000:.0f} m, reels of {REEL / 1000:.0f} m")


def _rounded(length: float, step: float) -> float:
    return ceil(length / step - 1e-9) * step
