"""The words about a cloth on the command line, made into a cloth and a way to lay it, or into problems."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.body.tape import read_length
from littlefold.lay.cloth import METRIC_STEP, SELVEDGE, YARD, YARD_STEP, Cloth, Price, Repeat
from littlefold.lay.place import GAP
from littlefold.lay.price import read_price as price_written
from littlefold.lay.shrink import BEYOND_BELIEF, BY_FIBRE, NONE, Shrinkage, Treatment, from_test_square
from littlefold.lay.ways import Way
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from shapely import Polygon

    from littlefold.lay.asked import Wished

WAYS: dict[str, Way] = {
    "open": Way.OPEN,
    "folded": Way.FOLDED,
    "partly": Way.PARTLY,
    "two-folds": Way.TWO_FOLDS,
    "two-partly": Way.TWO_PARTLY,
    "crosswise": Way.CROSSWISE,
    "four-layers": Way.FOUR_LAYERS,
    "tube": Way.TUBE,
}
"""How ways of laying are said on the command line."""

UNEVEN: dict[str | None, tuple[bool, bool]] = {
    None: (False, False),
    "along": (True, False),
    "across": (False, True),
    "both": (True, True),
}
"""How the repeat that is not its own mirror image is said: along the cloth, across it."""

SAID: dict[Way, str] = {way: word for word, way in WAYS.items()}

LONGEST_SEARCH = 3600.0
"""Seconds; whoever asks for more has mistyped."""

MOST_STEPS = 10_000_000

_PER_CENT = re.compile(r"(\d+(?:[.,]\d+)?)\s*%\s*[x\u00d7]\s*(\d+(?:[.,]\d+)?)\s*%")


@dataclass(frozen=True, slots=True)
class ClothWords:
    """What was said about the cloth and the search, as it was typed."""

    width: str = "112cm"
    lay: str | None = None
    nap: bool = False
    two_faced: bool = False
    tube: bool = False
    repeat: str | None = None
    uneven: str | None = None
    selvedge: str | None = None
    shrink: str | None = None
    enlarge: bool = False
    gap: str | None = None
    price: str | None = None
    length: str | None = None
    name: str = "main"
    by_yard: bool = False
    seconds: float = 10.0
    steps: int | None = None
    seed: int = 1


@dataclass(frozen=True, slots=True)
class Fabric:
    """A cloth to lay on, and how.

    Attributes:
        cloth: The cloth.
        way: The way it is laid; None where all that fit are to be compared.
        gap: The least distance between two cuts [mm].
        seconds: How long may be searched by the clock; 0 for the first lays only.
        steps: How many moves the planner may make in each way instead, without clock and outside engine; None where
            the clock counts.
        seed: For the searches.
        other_widths: Further widths of the same cloth to compare [mm].
        pins: Pieces that are held at a place.
        holes: Spots of the spread that cannot be used.
    """

    cloth: Cloth
    way: Way | None
    gap: float
    seconds: float
    steps: int | None
    seed: int
    other_widths: tuple[float, ...] = ()
    pins: tuple[Wished, ...] = ()
    holes: tuple[Polygon, ...] = ()

    @property
    def cloths(self) -> tuple[Cloth, ...]:
        """The cloth in each of its widths."""
        return (self.cloth, *(replace(self.cloth, width=width) for width in self.other_widths))


def read_fabric(words: ClothWords) -> Fabric | tuple[Problem, ...]:
    """The cloth that was meant, or everything that could not be understood."""
    widths = [_length("--width", text.strip()) for text in words.width.split(",")]
    narrow = [one for one in widths if isinstance(one, Problem)]
    width = widths[0]
    gap = GAP if words.gap is None else _length("--gap", words.gap, may_be_nothing=True)
    edge = _edge(words)
    in_hand = None if words.length is None else _length("--length", words.length)
    price = None if words.price is None else read_price(words.price, per=_sold_by(words))
    shrinkage = NONE if words.shrink is None else read_shrinkage(words.shrink)
    repeat = None if words.repeat is None else _repeat(words.repeat, words.uneven)
    read = (*narrow, gap, edge, in_hand, price, shrinkage, repeat)
    problems = (*(one for one in read if isinstance(one, Problem)), *_search_faults(words))
    if (
        problems
        or isinstance(width, Problem)
        or isinstance(gap, Problem)
        or isinstance(edge, Problem)
        or isinstance(in_hand, Problem)
        or isinstance(price, Problem)
        or isinstance(shrinkage, Problem)
        or isinstance(repeat, Problem)
    ):
        return problems
    cloth = Cloth(
        width,
        words.name,
        edge,
        nap=words.nap,
        two_faced=words.two_faced,
        tube=_is_tube(words),
        repeat=repeat,
        in_hand=in_hand,
        price=price,
        shrinkage=shrinkage,
        treatment=Treatment.ENLARGE if words.enlarge else Treatment.WASH,
        step=YARD_STEP if words.by_yard else METRIC_STEP,
    )
    way = Way.TUBE if cloth.tube else None if words.lay is None else WAYS[words.lay]
    others = tuple(one for one in widths[1:] if not isinstance(one, Problem))
    return Fabric(cloth, way, gap, words.seconds, words.steps, words.seed, others)


def read_price(text: str, per: float = 1000.0) -> Price | Problem:
    """A price such as `8.50`, `8.50 EUR` or `6.90/yd`; a bare one is for `per` millimetres."""
    found = price_written(text, per)
    if found is None:
        return not_understood(f"--price {text}: write 8.50, 8.50 EUR, 8.50/m or 6.90/yd.")
    return found


def read_shrinkage(text: str) -> Shrinkage | Problem:
    """What the wash takes: `3%x1%` along and across, a fibre, or a test square `20x20cm=19.4x19.8cm`."""
    plain = text.strip().lower()
    shares = _PER_CENT.fullmatch(plain)
    if shares is not None:
        return _of_shares(text, *(float(share.replace(",", ".")) / 100 for share in shares.groups()))
    if plain in BY_FIBRE:
        return BY_FIBRE[plain]
    sides = [read_pair(side) for side in plain.split("=")]
    before, after = sides if len(sides) == 2 else (None, None)  # noqa: PLR2004 - before and after the wash
    if before is not None and after is not None:
        return from_test_square(before, after)
    known = ", ".join(BY_FIBRE)
    return not_understood(
        f"--shrink {text}: write 3%x1% (along x across), a test square before and after the wash such as "
        f"20x20cm=19.4x19.8cm, or one of {known}."
    )


def _of_shares(text: str, along: float, across: float) -> Shrinkage | Problem:
    if max(along, across) > BEYOND_BELIEF:
        return not_understood(f"--shrink {text}: more than {BEYOND_BELIEF:.0%} is a slip; measure again.")
    return Shrinkage(along, across, "as said")


def read_pair(text: str) -> tuple[float, float] | None:
    """Two lengths with a cross between them [mm]; the first may leave its unit to the second."""
    parts = [part.strip() for part in re.split("[x\u00d7]", text)]
    if len(parts) != 2:  # noqa: PLR2004 - along and across
        return None
    unit = re.sub(r"[\d\s.,/]", "", parts[1])
    along, across = (
        read_length(parts[0] if parts[0].endswith(unit) else parts[0] + unit),
        read_length(parts[1]),
    )
    return None if isinstance(along, Problem) or isinstance(across, Problem) else (along, across)


def _repeat(text: str, uneven: str | None) -> Repeat | Problem:
    pair = read_pair(text)
    if pair is None or max(pair) == 0.0:
        return not_understood(
            f"--repeat {text}: write it as 4x5cm, along the cloth first; 0 where there is none, as in 0x3cm."
        )
    repeat = Repeat(*pair, *UNEVEN.get(uneven, (False, False)))
    if (repeat.uneven_along and not repeat.along) or (repeat.uneven_across and not repeat.across):
        return not_understood(f"--uneven {uneven}: --repeat {text} has no stripes that way.")
    return repeat


def _length(option: str, text: str, *, may_be_nothing: bool = False) -> float | Problem:
    found = read_length(text)
    if isinstance(found, Problem):
        return not_understood(f"{option}: {found.message}")
    if found < 0 or (found == 0 and not may_be_nothing):
        return not_understood(f"{option} {text}: it must be larger than 0.")
    return found


def _edge(words: ClothWords) -> float | Problem:
    """What is not used at each selvedge [mm]; a tube has none."""
    if words.selvedge is None:
        return 0.0 if _is_tube(words) else SELVEDGE
    return _length("--selvedge", words.selvedge, may_be_nothing=True)


def _is_tube(words: ClothWords) -> bool:
    return words.tube or words.lay == "tube"


def _sold_by(words: ClothWords) -> float:
    return YARD if words.by_yard else 1000.0


_FAULTS: Sequence[tuple[Callable[[ClothWords], bool], Callable[[ClothWords], str]]] = (
    (
        lambda w: w.lay is not None and w.lay not in WAYS,
        lambda w: f"--lay {w.lay}: it is one of {', '.join(WAYS)}; without it all ways are compared.",
    ),
    (
        lambda w: w.tube and w.lay not in (None, "tube"),
        lambda w: f"--lay {w.lay}: a tube can only be laid as a tube.",
    ),
    (
        lambda w: w.uneven not in UNEVEN,
        lambda w: (
            f"--uneven {w.uneven}: it is one of {', '.join(filter(None, UNEVEN))}; without it stripes are taken to be even."
        ),
    ),
    (
        lambda w: w.uneven in UNEVEN and w.uneven is not None and w.repeat is None,
        lambda w: f"--uneven {w.uneven}: say with --repeat how far it is from stripe to stripe.",
    ),
    (
        lambda w: w.enlarge and w.shrink is None,
        lambda _: "--enlarge: say with --shrink how much the cloth shrinks.",
    ),
    (
        lambda w: not 0 <= w.seconds <= LONGEST_SEARCH,
        lambda w: f"--seconds {w.seconds:g}: it lies between 0 and {LONGEST_SEARCH:g}.",
    ),
    (
        lambda w: w.steps is not None and not 0 <= w.steps <= MOST_STEPS,
        lambda w: f"--steps {w.steps}: it lies between 0 and {MOST_STEPS}.",
    ),
    (lambda w: not 0 <= w.seed < 2**31, lambda w: f"--seed {w.seed}: it lies between 0 and {2**31 - 1}."),
)
"""When something was said that cannot be meant, and what to answer."""


def _search_faults(words: ClothWords) -> tuple[Problem, ...]:
    return tuple(not_understood(answer(words)) for is_fault, answer in _FAULTS if is_fault(words))


def not_understood(message: str) -> Problem:
    """An option that cannot be meant."""
    return Problem("option-not-understood", message)
