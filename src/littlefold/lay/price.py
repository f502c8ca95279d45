"""Prices as they are written: a number, perhaps with a currency, perhaps for a metre or a yard."""

from __future__ import annotations

import re
from typing import Final

from littlefold.lay.cloth import YARD, Price

DEAREST: Final = 100_000.0
"""A price above this is mistyped."""

_PRICE = re.compile(
    r"(?P<amount>\d+(?:[.,]\d+)?)\s*(?P<currency>[^\W\d_]{1,4}|[^\w\s/.,-])?\s*(?:/\s*(?P<per>m|yd))?"
)


def read_price(text: str, per: float = 1000.0) -> Price | None:
    """A price such as `8.50`, `8,50`, `8.50 EUR` or `6.90/yd`; a bare one is for `per` millimetres.

    None where it is not understood, or too large to be meant.
    """
    found = _PRICE.fullmatch(text.strip())
    if found is None:
        return None
    amount = float(found["amount"].replace(",", "."))
    said = {"m": 1000.0, "yd": YARD}.get(found["per"] or "", per)
    return None if amount > DEAREST else Price(amount, (found["currency"] or "").upper(), said)
