"""What a link asks of single pieces and places on the cloth: damaged spots, kept places, a little tilt, chosen notches."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final, TypeVar

import shapely

from littlefold.body.tape import read_length
from littlefold.geometry import Point
from littlefold.lay.asked import MOST_TILT, Wished, pinned, read_chosen, tilted
from littlefold.lay.stripes import paired
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from littlefold.lay.asked import Chosen
    from littlefold.lay.cloth import Repeat
    from littlefold.lay.lay import Placement
    from littlefold.lay.meeting import Meeting
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.ways import Way
    from littlefold.web.preferences import Units

    T = TypeVar("T")

MOST: Final = 12
"""So many spots, kept places or notches are read from a field."""
SEPARATORS: Final = re.compile(r"[;\n]")
CROSS: Final = re.compile(r"\s*[x\u00d7]\s*")
EXAMPLES: Final = {
    "cloth-tilt": "Write how far a piece may end off its grain, 3 mm at most: 2 mm",
    "cloth-spots": "Write each spot as its place from the cut end and from the fold or lower edge, and its size: "
    "30 x 20 cm + 5 x 4 cm",
    "cloth-kept": "Write each piece with the place for the tail of its grain arrow: front = 12 x 30 cm",
    "cloth-notches": "Write each piece with the number of its notch, 0 for none, or with the edge in whose seam stripes are "
    "to meet first: front = 2; back = side",
}
"""How each field is written; said where it is not understood."""


@dataclass(frozen=True, slots=True)
class WishedLay:
    """What is asked beyond the cloth.

    Attributes:
        tilt: How far a piece may end off its grain [mm].
        spots: What cannot be used of the spread cloth.
        kept: Pieces that are held at a place.
        notches: By piece, the notch that meets the stripes, or the edge in whose seam they meet first.
        refused: What could not be understood, by field.
    """

    tilt: float = 0.0
    spots: tuple[shapely.Polygon, ...] = ()
    kept: tuple[Wished, ...] = ()
    notches: tuple[Chosen, ...] = ()
    refused: dict[str, str] = field(default_factory=dict)


def read_wished(typed: Mapping[str, str], units: Units) -> WishedLay:
    """What the fields of a link ask for; what is not understood is told, and left out."""
    spots = _all(typed.get("cloth-spots", ""), lambda text: _spot(text, units))
    kept = _all(typed.get("cloth-kept", ""), lambda text: _kept(text, units))
    notches = _all(typed.get("cloth-notches", ""), read_chosen)
    tilt = _tilt(typed.get("cloth-tilt", ""), units)
    found = {"cloth-tilt": tilt, "cloth-spots": spots, "cloth-kept": kept, "cloth-notches": notches}
    refused = {name: EXAMPLES[name] for name, one in found.items() if one is None}
    return WishedLay(tilt or 0.0, spots or (), kept or (), notches or (), refused)


def as_wished(
    pieces: tuple[LayPiece, ...], wished: WishedLay, seams: tuple[Meeting, ...], repeat: Repeat | None
) -> tuple[tuple[LayPiece, ...], tuple[Problem, ...]]:
    """The pieces with their tilt and the points that meet the stripes; a notch that is not there is told, and left out."""
    told = paired(pieces, seams, repeat, wished.notches)
    unchosen = paired(pieces, seams, repeat) if isinstance(told, Problem) else told
    by_notch = pieces if isinstance(unchosen, Problem) else unchosen
    turned = tilted(by_notch, wished.tilt) if wished.tilt else by_notch
    problems = tuple(one for one in (told, turned) if isinstance(one, Problem))
    return by_notch if isinstance(turned, Problem) else turned, problems


def held(
    pieces: tuple[LayPiece, ...], way: Way, wished: WishedLay
) -> tuple[tuple[Placement, ...], tuple[Problem, ...]]:
    """The kept places in one way of laying; a piece that is not there is told, and left out."""
    here = {piece.name for piece in pieces}
    wrong = pinned(pieces, way, wished.kept)
    found = pinned(pieces, way, [one for one in wished.kept if one.piece in here])
    assert not isinstance(found, Problem)  # noqa: S101 - only pieces that are there
    return found, (wrong,) if isinstance(wrong, Problem) else ()


def read_pair(text: str, units: Units) -> tuple[float, float] | None:
    """Two lengths such as `60 x 40 cm` [mm], of which the first may leave its unit to the second."""
    parts = CROSS.split(text.strip())
    if len(parts) != 2:  # noqa: PLR2004 - along the cloth and across it
        return None
    unit = re.sub(r"[\d\s.,/]", "", parts[1])
    bare = not re.search(r"[a-z\"]", parts[0])
    first, second = read_length(parts[0] + (unit if bare else ""), units), read_length(parts[1], units)
    return None if isinstance(first, Problem) or isinstance(second, Problem) else (first, second)


def _all(text: str, read: Callable[[str], T | None]) -> tuple[T, ...] | None:
    """What the parts of a field say; None where one of them is not understood."""
    parts = [part.strip() for part in SEPARATORS.split(text) if part.strip()]
    found = [read(part) for part in parts[:MOST]]
    known = tuple(one for one in found if one is not None)
    return known if len(known) == len(parts) else None


def _tilt(text: str, units: Units) -> float | None:
    if not text:
        return 0.0
    mm = read_length(text, units)
    return None if isinstance(mm, Problem) or not 0 <= mm <= MOST_TILT else mm


def _spot(text: str, units: Units) -> shapely.Polygon | None:
    where, _, size = text.partition("+")
    at, sides = read_pair(where, units), read_pair(size, units)
    if at is None or sides is None or min(sides) <= 0:
        return None
    return shapely.box(at[0], at[1], at[0] + sides[0], at[1] + sides[1])


def _kept(text: str, units: Units) -> Wished | None:
    name, _, where = text.partition("=")
    at = read_pair(where, units)
    return None if at is None else Wished(_piece(name), Point(*at))


def _piece(name: str) -> str:
    """The name of a piece, which may be written with spaces."""
    return name.strip().lower().replace(" ", "_")
