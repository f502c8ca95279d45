from __future__ import annotations

import pytest

from littlefold.lay.cloth import YARD, Price
from littlefold.lay.price import read_price


@pytest.mark.parametrize(
    ("text", "price"),
    [
        ("8.50", Price(8.5)),
        ("8,50", Price(8.5)),
        ("8.50 eur", Price(8.5, "EUR")),
        ("8.50 €", Price(8.5, "€")),
        ("6.90/yd", Price(6.9, per=YARD)),
        ("0", Price(0.0)),
        *((text, None) for text in ("", "dear", "-1", "nan", "1e9", "1.000.000", "200000", "8.50 a metre")),
    ],
)
def test_prices_are_read_as_shops_write_them(text: str, price: Price | None) -> None:
    assert read_price(text) == price


def test_a_bare_price_is_for_what_is_asked() -> None:
    assert read_price("3", per=1.0) == Price(3.0, per=1.0)
