"""Which cloth was asked for: its width, how it is laid, nap, stripes, wash, what is in hand, as a link says it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from math import isfinite
from typing import TYPE_CHECKING, Final

from littlefold.body.tape import read_length, say_length
from littlefold.geometry import Point
from littlefold.lay.cloth import METRIC_STEP, SELVEDGE, TUBE_WIDTH, YARD, YARD_STEP, Cloth, Price, Repeat
from littlefold.lay.shrink import BY_FIBRE, NONE, Shrinkage, Treatment, from_test_square
from littlefold.lay.ways import Way
from littlefold.problem import Problem
from littlefold.web.pages.cloth_wished import WishedLay, read_pair, read_wished

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.web.preferences import Units

USUAL: Final = {"cm": 1400.0, "in": 44 * 25.4}
"""The width that stands in the field at first [mm]: as sold by the metre, or by the yard; from memory of the trade."""
NARROWEST, WIDEST = 150.0, 5000.0
LONGEST: Final = 50_000.0
"""More than this of one cloth is a mistyped length [mm]."""
COMPARED_WAYS: Final = tuple(way for way in Way if way not in (Way.SCRAPS, Way.TUBE))
WAYS: Final = (*COMPARED_WAYS, Way.TUBE, Way.SCRAPS)
DEAREST = 100_000.0
SQUARE: Final = "test square"
"""What the field of the wash says where a test square was washed."""
USUAL_SQUARE: Final = 200.0
"""The side of a test square [mm] (designandmake.net, glossary)."""
MOST_SCRAPS: Final = 12
WRITTEN: Final = 200
"""Letters that a field may have."""


@dataclass(frozen=True, slots=True)
class AskedCloth:
    """The cloth of a link.

    Attributes:
        cloth: The cloth.
        way: The way it is laid.
        scraps: The scraps it is laid on, where it is laid on scraps: outlines with the grain along x.
        wished: What is asked of single pieces and places.
        typed: What was written in each field.
        refused: What could not be understood, by field.
    """

    cloth: Cloth
    way: Way
    scraps: tuple[tuple[Point, ...], ...]
    wished: WishedLay
    typed: dict[str, str]
    refused: dict[str, str]


@dataclass(frozen=True, slots=True)
class _Slip:
    """The fields about a cloth, read one by one; complaints are gathered beside them."""

    typed: dict[str, str]
    units: Units
    refused: dict[str, str] = field(default_factory=dict)

    def word(self, name: str) -> str:
        return self.typed.get(f"cloth-{name}", "")

    def is_ticked(self, name: str) -> bool:
        return self.word(name) == "yes"

    def length(self, name: str, bounds: tuple[float, float], usual: float | None) -> float | None:
        """A length within bounds [mm]; the usual one where nothing was written or it is not understood."""
        text = self.word(name)
        if not text:
            return usual
        mm = read_length(text, self.units)
        if not isinstance(mm, Problem) and not bounds[0] <= mm <= bounds[1]:
            low, high = (say_length(bound, self.units) for bound in bounds)
            mm = Problem("cloth-length", f"“{text}”: it lies between {low} and {high}.")
        if isinstance(mm, Problem):
            self.refuse(name, mm.message)
            return usual
        return mm

    def refuse(self, name: str, sentence: str) -> None:
        self.refused[f"cloth-{name}"] = sentence


def read_cloth(fields: Mapping[str, str], name: str, units: Units) -> AskedCloth:
    """The cloth that a link asks for; what cannot be understood is told, and the usual is taken."""
    typed = {key: text.strip()[:WRITTEN] for key, text in fields.items() if key.startswith("cloth-")}
    slip = _Slip(typed, units)
    way = next((way for way in WAYS if way == slip.word("way")), Way.FOLDED)
    width = _width(slip, way)
    scraps = _scraps(slip) if way is Way.SCRAPS else ()
    cloth = Cloth(
        width,
        name=name,
        selvedge=0.0 if way is Way.TUBE else SELVEDGE,
        nap=slip.is_ticked("nap"),
        two_faced=slip.is_ticked("both"),
        tube=way is Way.TUBE,
        repeat=_repeat(slip),
        in_hand=slip.length("length", (100.0, LONGEST), None),
        price=_price(slip),
        shrinkage=_shrinkage(slip),
        treatment=Treatment.ENLARGE if slip.word("wash") == Treatment.ENLARGE else Treatment.WASH,
        step=YARD_STEP if units == "in" else METRIC_STEP,
    )
    typed.setdefault("cloth-width", say_length(width, units))
    wished = read_wished(typed, units)
    return AskedCloth(cloth, way, scraps, wished, typed, slip.refused | wished.refused)


def _width(slip: _Slip, way: Way) -> float:
    usual = TUBE_WIDTH if way is Way.TUBE else USUAL[slip.units]
    if (
        slip.word("width")
        and way is Way.TUBE
        and slip.word("width") == say_length(USUAL[slip.units], slip.units)
    ):
        return usual  # the width of flat cloth stood in the field when the tube was chosen
    return slip.length("width", (NARROWEST, WIDEST), usual) or usual


def _repeat(slip: _Slip) -> Repeat | None:
    along = slip.length("along", (1.0, 1000.0), 0.0) or 0.0
    across = slip.length("across", (1.0, 1000.0), 0.0) or 0.0
    return Repeat(along, across) if along or across else None


def _shrinkage(slip: _Slip) -> Shrinkage:
    if slip.word("fibre") != SQUARE:
        return BY_FIBRE.get(slip.word("fibre"), NONE)
    before = slip.length("square", (20.0, 2000.0), USUAL_SQUARE) or USUAL_SQUARE
    along, across = (slip.length(f"washed-{way}", (10.0, 3000.0), before) for way in ("along", "across"))
    found = from_test_square((before, before), (along or before, across or before))
    if isinstance(found, Problem):
        slip.refuse("square", found.message)
        return NONE
    return found


def _price(slip: _Slip) -> Price | None:
    text = slip.word("price")
    if not text:
        return None
    try:
        amount = float(text.replace(",", "."))
    except ValueError:
        amount = -1.0
    if not (isfinite(amount) and 0 <= amount <= DEAREST):
        slip.refuse("price", f"“{text}” is not a price. Write a number, such as 9.50.")
        return None
    return Price(amount, per=YARD if slip.units == "in" else 1000.0)


def _scraps(slip: _Slip) -> tuple[tuple[Point, ...], ...]:
    """The scraps as rectangles; none where one of them is not understood."""
    written = [part.strip() for part in re.split(r"[;\n]", slip.word("scraps")) if part.strip()]
    found = [_rectangle(part, slip.units) for part in written[:MOST_SCRAPS]]
    if not found or None in found:
        slip.refuse(
            "scraps", "Write each scrap as its length along the grain and its width: 60 x 40 cm; 30 x 35 cm"
        )
        return ()
    return tuple(scrap for scrap in found if scrap)


def _rectangle(text: str, units: Units) -> tuple[Point, ...] | None:
    """A scrap such as `60 x 40 cm`, its grain along x; the first length may leave its unit to the second."""
    pair = read_pair(text, units)
    if pair is None or not (0 < pair[0] <= LONGEST and 0 < pair[1] <= WIDEST):
        return None
    long, wide = pair
    return (Point(0.0, 0.0), Point(long, 0.0), Point(long, wide), Point(0.0, wide))
