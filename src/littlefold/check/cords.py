"""Cords and their kind on a garment, read from the list of notions.

A notion is a cord when its name or remark holds one of the words `cord`, `drawstring`, `string`, `tie`,
`tape`, `ribbon`, `sash`, `belt` and it is neither elastic nor binding (an elastic cord is no drawstring,
from memory).  What else is known of it is said by the recipe
(`at waist`, `fixed`, `free 14 cm`) or by words in its remark:

- where: `hood`, `neck`, `waist`, `hem`, `back` ...; a sash or belt is at the waist; without a word it is
  where the casing is, and at the neck if there is no telling, which is the place of greatest care;
- `loop`, `continuous` or `no free ends`: it has no free end, and its length is the girth of the loop;
- `free end 12 cm` (or `12 cm free`): how long each free end is when the garment is opened to its largest;
  without it a cord through a casing leaves half of what is longer than the casing, a pair leaves its whole
  length each;
- `knot`, `toggle`, `bead`, `pompon`, `tassel`: something on its free ends;
- `tacked`, `secured`, `fixed`: it is sewn down at the middle; `inside`: it runs wholly inside.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.problem import Place

from .notions import place_of, words
from .report import on_piece
from .roles import Role
from .worn import opening

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.draft.model import Notion
    from littlefold.pattern.model import Pattern

KINDS: Final = frozenset({"cord", "drawstring", "string", "tie", "tape", "ribbon", "sash", "belt", "lace"})
_NO_CORDS: Final = frozenset({"elastic", "bias", "binding", "measuring", "touch", "interfacing"})
_SASHES: Final = frozenset({"sash", "belt"})
_ENDLESS: Final = frozenset({"loop", "continuous", "endless"})
_KNOBS: Final = frozenset({"knot", "toggle", "bead", "pompon", "tassel", "bobble"})
_FIXED: Final = frozenset({"tacked", "bartacked", "secured", "fixed", "sewn"})
_LENGTH: Final = r"(\d+(?:\.\d+)?) ?(mm|cm|in)"
_FREE: Final = re.compile(rf"free ends? (?:of )?{_LENGTH}|{_LENGTH} free")
NOWHERE: Final = Place()
_PER_UNIT: Final[Mapping[str, float]] = {"mm": 1.0, "cm": 10.0, "in": 25.4}


@dataclass(frozen=True, slots=True)
class Cord:
    """A cord, drawstring, tie or sash on a garment.

    Attributes:
        name: As the list of notions calls it.
        place: `hood`, `neck`, `waist`, `hem`, `wrist`, `leg` or `back`.
        length: Of one of them [mm]; 0 where it is not said.
        free_end: Each free end with the garment opened to its largest [mm]; 0 where it has none.
        is_loop: Whether it has no free ends; then `length` is the girth of the loop.
        is_sash: Whether it is a tied belt.
        is_knobbed: Whether its free ends carry knots, toggles or the like.
        is_secured: Whether it is sewn down at the middle.
        is_inside: Whether it runs wholly inside the garment.
        at: The edge at which it is, as far as the garment shows it.
    """

    name: str
    place: str
    length: float
    free_end: float
    is_loop: bool = False
    is_sash: bool = False
    is_knobbed: bool = False
    is_secured: bool = False
    is_inside: bool = False
    at: Place = NOWHERE


def cords(pattern: Pattern) -> Iterator[Cord]:
    """The cords among the notions of a pattern."""
    for notion in pattern.draft.notions:
        said = frozenset(words(notion))
        if said & KINDS and not said & _NO_CORDS:
            yield _cord(pattern, notion, said)


def _cord(pattern: Pattern, notion: Notion, said: frozenset[str]) -> Cord:
    place = _place(pattern, notion, said | {notion.where})
    is_loop = bool(said & _ENDLESS) or "no free end" in notion.remark.lower()
    return Cord(
        name=notion.name.replace("_", " "),
        place=place,
        length=notion.length or 0.0,
        free_end=0.0 if is_loop else _free_end(pattern, notion, place),
        is_loop=is_loop,
        is_sash=bool(said & _SASHES),
        is_knobbed=bool(said & _KNOBS) and not is_loop,
        is_secured=notion.fixed or bool(said & _FIXED),
        is_inside="inside" in said,
        at=_edge_at(pattern, place),
    )


def _place(pattern: Pattern, notion: Notion, said: frozenset[str]) -> str:
    for place in ("hood", "neck", "back"):
        if place in said:
            return place
    if said & _SASHES:
        return Role.WAIST.value
    role = place_of(pattern, notion)
    return Role.NECK.value if role is None else role.value


def _edge_at(pattern: Pattern, place: str) -> Place:
    """The first edge at a place of the garment; nowhere where no edge shows it, as a hood."""
    around = opening(pattern, Role(place)) if place in set(Role) else None
    if around is None:
        return NOWHERE
    piece, edge = around.parts[0]
    return on_piece(piece, edge.name)


def _free_end(pattern: Pattern, notion: Notion, place: str) -> float:
    """What the recipe says, or what is longer than the channel, shared by two ends [mm]."""
    if notion.free_end is not None:
        return notion.free_end
    said = _FREE.search(f"{notion.name} {notion.remark}".lower().replace("_", " "))
    if said is not None:
        number, unit = (said[1], said[2]) if said[1] else (said[3], said[4])
        return float(number) * _PER_UNIT[unit]
    length = notion.length or 0.0
    if notion.count > 1:
        return length
    around = opening(pattern, Role(place)) if place in set(Role) else None
    channel = 0.0 if around is None else around.casings
    return max(0.0, length - channel) / 2
