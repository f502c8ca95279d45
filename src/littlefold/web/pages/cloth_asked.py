"""Which cloth was asked for: its width, how it is folded, nap, wash and price, as a link says it."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite
from typing import TYPE_CHECKING, Final

from littlefold.body.tape import read_length, say_length
from littlefold.lay.cloth import METRIC_STEP, YARD, YARD_STEP, Cloth, Price
from littlefold.lay.shrink import BY_FIBRE, NONE, Treatment
from littlefold.lay.ways import Way
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.web.preferences import Units

USUAL: Final = {"cm": 1400.0, "in": 44 * 25.4}
"""The width that stands in the field at first [mm]: as sold by the metre, or by the yard; from memory of the trade."""
NARROWEST, WIDEST = 150.0, 5000.0
WAYS: Final = tuple(way for way in Way if way not in (Way.SCRAPS, Way.TUBE))
DEAREST = 100_000.0


@dataclass(frozen=True, slots=True)
class AskedCloth:
    """The cloth of a link, the way it is laid, and what could not be understood of it, by field."""

    cloth: Cloth
    way: Way
    typed: dict[str, str]
    refused: dict[str, str]


def read_cloth(fields: Mapping[str, str], name: str, units: Units) -> AskedCloth:
    """The cloth that a link asks for; what cannot be understood is told, and the usual is taken."""
    refused: dict[str, str] = {}
    typed = {key: text.strip()[:60] for key, text in fields.items() if key.startswith("cloth-")}
    width = _width(typed.get("cloth-width", ""), units, refused)
    amount = _amount(typed.get("cloth-price", ""), refused)
    cloth = Cloth(
        width,
        name=name,
        nap=typed.get("cloth-nap") == "yes",
        price=None if amount is None else Price(amount, per=YARD if units == "in" else 1000.0),
        shrinkage=BY_FIBRE.get(typed.get("cloth-fibre", ""), NONE),
        treatment=Treatment.ENLARGE if typed.get("cloth-wash") == Treatment.ENLARGE else Treatment.WASH,
        step=YARD_STEP if units == "in" else METRIC_STEP,
    )
    typed.setdefault("cloth-width", say_length(width, units))
    return AskedCloth(cloth, _way(typed.get("cloth-way", "")), typed, refused)


def _width(text: str, units: Units, refused: dict[str, str]) -> float:
    if not text:
        return USUAL[units]
    mm = read_length(text, units)
    if not isinstance(mm, Problem) and not NARROWEST <= mm <= WIDEST:
        mm = Problem("cloth-width", f"Cloth is {NARROWEST / 10:.0f} to {WIDEST / 10:.0f} cm wide.")
    if isinstance(mm, Problem):
        refused["cloth-width"] = mm.message
        return USUAL[units]
    return mm


def _amount(text: str, refused: dict[str, str]) -> float | None:
    if not text:
        return None
    try:
        amount = float(text.replace(",", "."))
    except ValueError:
        amount = -1.0
    if not (isfinite(amount) and 0 <= amount <= DEAREST):
        refused["cloth-price"] = f"“{text}” is not a price. Write a number, such as 9.50."
        return None
    return amount


def _way(text: str) -> Way:
    return next((way for way in WAYS if way == text), Way.FOLDED)
