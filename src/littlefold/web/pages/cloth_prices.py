"""What notions and thread cost, and the stitches: `price-elastic=1.20`, `cloth-sewn=301+504` in a link."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from littlefold.lay.cloth import YARD
from littlefold.lay.price import read_price
from littlefold.lay.sewn import USUAL, Stitching, read_stitching
from littlefold.lay.shopping import REEL
from littlefold.problem import Problem
from littlefold.web.pages.cloth_asked import WRITTEN, not_a_price

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import Notion
    from littlefold.lay.cloth import Price
    from littlefold.pipeline import Outcome
    from littlefold.web.preferences import Units

THREAD: Final = "thread"
SEWN: Final = "cloth-sewn"
WAYS_TO_SEW: Final = {
    "": "lockstitch, edges zigzag",
    "301": "lockstitch, edges left",
    "304+304": "zigzag, edges zigzag",
    "301+503": "lockstitch, 2-thread overedge",
    "301+504": "lockstitch, 3-thread overedge",
    "504": "3-thread overedge alone",
    "516": "safety stitch",
    "401+504": "chain, 3-thread overedge",
}
"""What the page offers, by ISO 4915 class; a link may say any other."""


@dataclass(frozen=True, slots=True)
class PriceField:
    """A price that can be given.

    Attributes:
        name: Of what is bought.
        each: What it is the price of: a metre, a yard, one piece, a reel.
        per: The same in millimetres, or 1 for a piece.
    """

    name: str
    each: str
    per: float

    @property
    def key(self) -> str:
        """The word of a link."""
        return f"price-{self.name}"

    @property
    def title(self) -> str:
        """The name as it is read."""
        return self.name.replace("_", " ")


@dataclass(frozen=True, slots=True)
class Prices:
    """The prices of a link.

    Attributes:
        fields: What may have a price.
        known: By name, what was understood.
        typed: What was written in each field.
        refused: What could not be understood, by field.
        stitching: How the garment is sewn.
    """

    fields: tuple[PriceField, ...]
    known: dict[str, Price]
    typed: dict[str, str]
    refused: dict[str, str] = field(default_factory=dict)
    stitching: Stitching = USUAL


def read_prices(fields: Mapping[str, str], outcome: Outcome, units: Units) -> Prices:
    """What a link says of the prices of this garment's notions and thread."""
    asked = price_fields(outcome, units)
    typed = {one.key: text for one in asked if (text := fields.get(one.key, "").strip()[:WRITTEN])}
    read = {one: read_price(typed[one.key], one.per) for one in asked if one.key in typed}
    known = {one.name: price for one, price in read.items() if price is not None}
    refused = {one.key: not_a_price(typed[one.key]) for one, price in read.items() if price is None}
    if sewn := fields.get(SEWN, "").strip()[:WRITTEN]:
        typed[SEWN] = sewn
    stitching = read_stitching(sewn) if sewn else USUAL
    if isinstance(stitching, Problem):
        refused[SEWN], stitching = stitching.message, USUAL
    return Prices(asked, known, typed, refused, stitching)


def price_fields(outcome: Outcome, units: Units) -> tuple[PriceField, ...]:
    """A field for each kind of notion, and for thread."""
    notions = {notion.name: _field(notion, units) for notion in outcome.draft.notions}
    return (*notions.values(), PriceField(THREAD, "a reel", REEL))


def _field(notion: Notion, units: Units) -> PriceField:
    if notion.length is None:
        return PriceField(notion.name, "each", 1.0)
    return (
        PriceField(notion.name, "a yard", YARD)
        if units == "in"
        else PriceField(notion.name, "a metre", 1000.0)
    )
