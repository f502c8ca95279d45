"""Which cloth was asked for: its width, how it is laid, nap, stripes, wash, what is in hand, as a link says it.

A garment of several cloths has a slip for each.  The words of the first are plain, `cloth-width`; those of a further
one end with its name, `cloth-width.lining`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

import shapely

from littlefold.body.tape import read_length, say_length
from littlefold.geometry import Point
from littlefold.lay.cloth import METRIC_STEP, SELVEDGE, TUBE_WIDTH, YARD, YARD_STEP, Cloth, Price, Repeat
from littlefold.lay.place import GAP
from littlefold.lay.price import read_price
from littlefold.lay.shrink import BEYOND_BELIEF, BY_FIBRE, NONE, Shrinkage, Treatment, from_test_square
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
AT_ONCE: Final = "four layers at once"
"""What the field of the way says where front and back are cut together from four layers."""
SQUARE: Final = "test square"
"""What the field of the wash says where a test square was washed."""
USUAL_SQUARE: Final = 200.0
"""The side of a test square [mm] (designandmake.net, glossary)."""
WIDEST_SELVEDGE, WIDEST_GAP = 100.0, 50.0
"""More than this is mistyped [mm]."""
LEAST_LENGTH = 100.0
MOST_SCRAPS: Final = 12
THREE_CORNERS: Final = 3
YARDS: Final = re.compile(r"(.*\d)\s*(?:yd|yds|yards?)\.?")
CORNERS: Final = re.compile(r"([\d.,]+)\s*[x\u00d7]\s*([\d.,]+)\s*(mm|cm|m|in|\")?")
WRITTEN: Final = 200
"""Letters that a field may have."""


@dataclass(frozen=True, slots=True)
class AskedCloth:
    """The cloth of a link.

    Attributes:
        cloth: The cloth.
        way: The way it is laid.
        at_once: Whether front and back are cut together where they differ only at the neck.
        gap: The least distance between two cuts [mm].
        scraps: The scraps it is laid on, where it is laid on scraps: outlines with the grain along x.
        wished: What is asked of single pieces and places.
        typed: What was written in each field.
        refused: What could not be understood, by field.
    """

    cloth: Cloth
    way: Way
    at_once: bool
    gap: float
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
        mm = _read(text, self.units)
        if not isinstance(mm, Problem) and not bounds[0] <= mm <= bounds[1]:
            low, high = (say_length(bound, self.units) for bound in bounds)
            mm = Problem("cloth-length", f"“{text}”: it lies between {low} and {high}.")
        if isinstance(mm, Problem):
            self.refuse(name, mm.message)
            return usual
        return mm

    def refuse(self, name: str, sentence: str) -> None:
        self.refused[f"cloth-{name}"] = sentence


def words_of(fields: Mapping[str, str], name: str) -> dict[str, str]:
    """What a link says of one cloth, with plain words; the name is empty for the first."""
    ending = f".{name}" if name else ""
    said = {key: text.strip()[:WRITTEN] for key, text in fields.items() if key.startswith("cloth-")}
    if not name:
        return {key: text for key, text in said.items() if "." not in key}
    return {key.removesuffix(ending): text for key, text in said.items() if key.endswith(ending)}


def read_cloth(fields: Mapping[str, str], name: str, units: Units) -> AskedCloth:
    """The cloth that plain words ask for; what cannot be understood is told, and the usual is taken."""
    typed = dict(fields)
    slip = _Slip(typed, units)
    at_once = slip.word("way") == AT_ONCE
    way = Way.FOUR_LAYERS if at_once else next((way for way in WAYS if way == slip.word("way")), Way.FOLDED)
    width = _width(slip, way)
    scraps = _scraps(slip) if way is Way.SCRAPS else ()
    edge = slip.length("selvedge", (0.0, WIDEST_SELVEDGE), SELVEDGE)
    gap = slip.length("gap", (0.0, WIDEST_GAP), GAP)
    assert edge is not None and gap is not None  # noqa: S101, PT018 - both have a usual length
    cloth = Cloth(
        width,
        name=name,
        selvedge=0.0 if way is Way.TUBE else edge,
        nap=slip.is_ticked("nap"),
        two_faced=slip.is_ticked("both"),
        tube=way is Way.TUBE,
        repeat=_repeat(slip),
        in_hand=slip.length("length", (LEAST_LENGTH, LONGEST), None),
        price=_price(slip),
        shrinkage=_shrinkage(slip),
        treatment=Treatment.ENLARGE if slip.word("wash") == Treatment.ENLARGE else Treatment.WASH,
        step=YARD_STEP if units == "in" else METRIC_STEP,
    )
    typed["cloth-width"] = typed.get("cloth-width") or say_length(width, units)
    wished = read_wished(typed, units)
    return AskedCloth(cloth, way, at_once, gap, scraps, wished, typed, slip.refused | wished.refused)


def _read(text: str, units: Units) -> float | Problem:
    """A length; cloth may be said in yards too [mm]."""
    yards = YARDS.fullmatch(text)
    if yards is None:
        return read_length(text, units)
    inches = read_length(f"{yards[1]} in")
    return inches if isinstance(inches, Problem) else inches * 36


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
    uneven = [_uneven(slip, way, mm) for way, mm in (("along", along), ("across", across))]
    return Repeat(along, across, *uneven) if along or across else None


def _uneven(slip: _Slip, way: str, repeat: float) -> bool:
    """Whether a repeat was ticked as uneven; told where there is none that could be."""
    is_ticked = slip.is_ticked(f"uneven-{way}")
    if is_ticked and not repeat and not slip.word(way):
        slip.refuse(way, f"Write the repeat {way} the cloth, or do not tick it as uneven.")
    return is_ticked and repeat > 0


def _shrinkage(slip: _Slip) -> Shrinkage:
    if slip.word("fibre") != SQUARE:
        return BY_FIBRE.get(slip.word("fibre"), NONE)
    before = slip.length("square", (20.0, 2000.0), USUAL_SQUARE) or USUAL_SQUARE
    along, across = (_washed(slip, f"washed-{way}", before) for way in ("along", "across"))
    found = from_test_square((before, before), (along, across))
    if isinstance(found, Problem):
        slip.refuse("square", found.message)
        return NONE
    return found


def _washed(slip: _Slip, name: str, before: float) -> float:
    """The side of the square after the wash [mm]; a label says what is lost of it, such as 3 %."""
    text = slip.word(name)
    if not text.endswith("%"):
        return slip.length(name, (10.0, 3000.0), before) or before
    share = text.removesuffix("%").strip().replace(",", ".")
    lost = float(share) / 100 if re.fullmatch(r"\d{1,3}(\.\d+)?", share, re.ASCII) else 1.0
    if lost > BEYOND_BELIEF:
        slip.refuse(name, f"“{text}”: write the side after the wash, or what was lost of it: 3 %.")
        return before
    return before * (1 - lost)


def _price(slip: _Slip) -> Price | None:
    text = slip.word("price")
    found = read_price(text, per=YARD if slip.units == "in" else 1000.0) if text else None
    if text and found is None:
        slip.refuse("price", not_a_price(text))
    return found


def not_a_price(text: str) -> str:
    """What is said of a price that is not understood."""
    return f"“{text}” is not a price. Write a number, such as 9.50."


def _scraps(slip: _Slip) -> tuple[tuple[Point, ...], ...]:
    """The scraps; none where one of them is not understood."""
    written = [part.strip() for part in re.split(r"[;\n]", slip.word("scraps")) if part.strip()]
    found = [_rectangle(part, slip.units) or _corners(part, slip.units) for part in written[:MOST_SCRAPS]]
    if not found or None in found:
        slip.refuse(
            "scraps",
            "Write each scrap as its length along the grain and its width, 60 x 40 cm; 30 x 35 cm; or as its corners, "
            "0x0 60x0 40x50 cm",
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


def _corners(text: str, units: Units) -> tuple[Point, ...] | None:
    """A scrap by its corners one after the other; the unit of the last is that of all."""
    written = CORNERS.findall(text)
    if len(written) < THREE_CORNERS or CORNERS.sub("", text).strip():
        return None
    unit = written[-1][2] or units
    read = [read_pair(f"{along}x{across}{unit}", units) for along, across, _ in written]
    corners = tuple(Point(*pair) for pair in read if pair is not None)
    shape = shapely.Polygon([(corner.x, corner.y) for corner in corners])
    is_sound = len(corners) == len(read) and shape.is_valid and 0 < shape.area <= LONGEST * WIDEST
    return corners if is_sound else None
