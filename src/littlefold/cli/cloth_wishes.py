"""What was asked beyond the cloth itself, on the command line: prices, stitches, other cloths, pins, spots, scraps, stripes."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar

import shapely

from littlefold.body.tape import read_length
from littlefold.cli.fabric import not_understood, read_pair, read_price
from littlefold.geometry import Point
from littlefold.lay.asked import Wished, read_chosen
from littlefold.lay.cloth import YARD
from littlefold.lay.sewn import USUAL, Stitching, read_stitching
from littlefold.lay.shopping import REEL
from littlefold.lay.unfolded import joined
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from littlefold.draft.model import Notion
    from littlefold.lay.asked import Chosen
    from littlefold.lay.cloth import Price

THREE_CORNERS = 3

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class WishWords:
    """The words, as they were typed."""

    prices: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    pins: tuple[str, ...] = ()
    damaged: tuple[str, ...] = ()
    scraps: tuple[str, ...] = ()
    match: tuple[str, ...] = ()
    tilt: str | None = None
    together: bool = False
    by_yard: bool = False
    sewn: str | None = None


@dataclass(frozen=True, slots=True)
class Also:
    """A further cloth of the garment: its name in the recipe, its width [mm], what it costs."""

    name: str
    width: float
    price: Price | None


@dataclass(frozen=True, slots=True)
class Wishes:
    """The same, understood.

    Attributes:
        prices: Of notions, and of thread by the reel, by name.
        also: Further cloths to be laid in the same run.
        pins: Pieces that are held at a place.
        holes: Spots of the spread that cannot be used.
        scraps: Shapes of cloth to cut from instead of a length of it, grain along x.
        match: By piece, the notch that is to meet the stripes, or the edge in whose seam they are to meet first.
        tilt: How far a piece may end off its grain [mm].
        together: Whether front and back are cut at once where they differ only at the neck.
        stitching: How the garment is sewn, for the thread.
    """

    prices: Mapping[str, Price] = field(default_factory=dict)
    also: tuple[Also, ...] = ()
    pins: tuple[Wished, ...] = ()
    holes: tuple[shapely.Polygon, ...] = ()
    scraps: tuple[tuple[Point, ...], ...] = ()
    match: tuple[Chosen, ...] = ()
    tilt: float = 0.0
    together: bool = False
    stitching: Stitching = USUAL


def read_wishes(words: WishWords) -> Wishes | tuple[Problem, ...]:
    """What was meant, or everything that could not be understood."""
    faults: list[Problem] = []
    tilt = 0.0 if words.tilt is None else read_length(words.tilt)
    if isinstance(tilt, Problem):
        faults.append(not_understood(f"--tilt {words.tilt}: {tilt.message}"))
        tilt = 0.0
    stitching = USUAL if words.sewn is None else read_stitching(words.sewn)
    if isinstance(stitching, Problem):
        faults.append(not_understood(f"--sewn {words.sewn}: {stitching.message}"))
        stitching = USUAL

    wishes = Wishes(
        dict(_all(words.prices, lambda text: _priced(text, by_yard=words.by_yard), faults)),
        _all(words.also, lambda text: _also(text, by_yard=words.by_yard), faults),
        _all(words.pins, _pin, faults),
        joined(_all(words.damaged, _hole, faults)),
        _all(words.scraps, _scrap, faults),
        _all(words.match, _match, faults),
        tilt,
        words.together,
        stitching,
    )
    return tuple(faults) or wishes


def _all(texts: tuple[str, ...], read: Callable[[str], T | Problem], faults: list[Problem]) -> tuple[T, ...]:
    """What could be read of some texts; what could not is added to the faults."""
    found = [read(text) for text in texts]
    faults.extend(one for one in found if isinstance(one, Problem))
    return tuple(one for one in found if not isinstance(one, Problem))


def _priced(text: str, *, by_yard: bool) -> tuple[str, Price] | Problem:
    """A price by name: of a length of elastic, of a button, of a reel of thread."""
    name, _, said = text.partition("=")
    price = read_price(said, per=REEL if name == "thread" else YARD if by_yard else 1000.0)
    return price if isinstance(price, Problem) else (name.strip().replace(" ", "_"), price)


def priced_for_nothing(prices: Mapping[str, Price], notions: Sequence[Notion]) -> Iterator[Problem]:
    """A problem for each price of something that the garment does not need."""
    there = (*dict.fromkeys(notion.name for notion in notions), "thread")
    for name in prices:
        if name not in there:
            yield not_understood(
                f"--price {name}=…: this garment needs none. What can be priced by name: {', '.join(there)}. The price "
                "of the cloth is said without a name."
            )


def _also(text: str, *, by_yard: bool) -> Also | Problem:
    name, _, said = text.partition("=")
    width_said, _, price_said = said.partition("@")
    width = read_length(width_said)
    price = read_price(price_said, per=YARD if by_yard else 1000.0) if price_said else None
    if isinstance(width, Problem) or width <= 0 or isinstance(price, Problem):
        return not_understood(f"--also {text}: write it as lining=140cm or lining=140cm@6.50.")
    return Also(name.strip(), width, price)


def _pin(text: str) -> Wished | Problem:
    name, _, said = text.partition("=")
    pair = read_pair(said)
    if pair is None:
        return not_understood(
            f"--pin {text}: write it as front=12x30cm, the tail of the grain arrow from the cut end and from the "
            "fold or lower edge."
        )
    return Wished(name.strip(), Point(*pair))


def _hole(text: str) -> shapely.Polygon | Problem:
    where, _, size = text.partition("+")
    at, sides = read_pair(where), read_pair(size)
    if at is None or sides is None or min(sides) <= 0:
        return not_understood(
            f"--damaged {text}: write it as 30x20cm+5x4cm: 30 cm from the cut end and 20 cm from the fold or lower "
            "edge, 5 cm long and 4 cm across."
        )
    return shapely.box(at[0], at[1], at[0] + sides[0], at[1] + sides[1])


def _scrap(text: str) -> tuple[Point, ...] | Problem:
    """A rectangle `60x40cm`, or corners one after the other, `0x0 60x0 40x50cm`."""
    said = text.split()
    unit = re.sub(r"[\d.,x\u00d7/-]", "", said[-1]) if said else ""
    pairs = [read_pair(part if part.endswith(unit) else part + unit) for part in said]
    corners = tuple(Point(*pair) for pair in pairs if pair is not None)
    if len(pairs) == 1 and corners:
        along, across = corners[0].x, corners[0].y
        corners = (Point(0, 0), Point(along, 0), Point(along, across), Point(0, across))
    sound = len(corners) >= THREE_CORNERS and shapely.Polygon([(p.x, p.y) for p in corners]).is_valid
    if not sound or None in pairs or shapely.Polygon([(p.x, p.y) for p in corners]).area <= 0:
        return not_understood(
            f'--scrap {text}: write a rectangle, 60x40cm (along the grain first), or its corners, "0x0 60x0 40x50cm".'
        )
    return corners


def _match(text: str) -> Chosen | Problem:
    return read_chosen(text) or not_understood(
        f"--match {text}: write it as front=2, the second notch, front=0 for no notch, or front=side, the edge in whose "
        "seam stripes are to meet."
    )
