"""What the list of notions says, read from the words in the name and the remark of each.

The vocabulary is small and agreed with the recipes:

- what it is: `elastic`, `cord`, `drawstring`, `tie`, `tape`, `button`, `stud`, `snap`, `bias`, `binding` ...;
- where it belongs, where the recipe does not say it with `at`: `neck`, `hood`, `waist`, `hem`, `wrist`, `leg`,
  `back` (as in `neck_elastic`); an elastic that does not say belongs to any casing;
- how wide it is: a length followed by `wide`, as in `1 cm wide`.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from littlefold.draft.model import EdgeKind

from .roles import LIMBS, Role, role_of, words_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.draft.model import DraftEdge, Notion
    from littlefold.pattern.model import Pattern, Piece

_PER_UNIT: Final[Mapping[str, float]] = {"mm": 1.0, "cm": 10.0, "in": 25.4}
_WIDE: Final = re.compile(r"(\d+(?:\.\d+)?|\d+/\d+) ?(mm|cm|in) wide")
_PLACES: Final[Mapping[str, Role]] = {
    "neck": Role.NECK,
    "neckline": Role.NECK,
    "waist": Role.WAIST,
    "wrist": Role.WRIST,
    "sleeve": Role.WRIST,
    "cuff": Role.WRIST,
    "leg": Role.LEG,
    "thigh": Role.LEG,
    "ankle": Role.LEG,
    "hem": Role.HEM,
}


def words(notion: Notion) -> tuple[str, ...]:
    """All words of a notion's name and remark, in small letters, without the plural's s."""
    return _words(f"{notion.name} {notion.remark}")


@lru_cache(maxsize=1024)
def _words(spoken: str) -> tuple[str, ...]:
    return tuple(_singular(word) for word in re.findall(r"[a-z]+", spoken.lower()))


def _singular(word: str) -> str:
    return word[:-1] if word.endswith("s") and not word.endswith(("ss", "us", "as")) else word


def has_word(notion: Notion, wanted: frozenset[str]) -> bool:
    """Whether a notion is one of the things wanted."""
    return not wanted.isdisjoint(words(notion))


def left_without(pattern: Pattern, kind: EdgeKind, wanted: frozenset[str]) -> list[tuple[Piece, DraftEdge]]:
    """The edges of a kind when none of the things that they want is among the notions; else nothing."""
    if any(has_word(notion, wanted) for notion in pattern.draft.notions):
        return []
    return [(piece, edge) for piece in pattern.pieces for edge in piece.edges if edge.kind is kind]


def elastics(pattern: Pattern) -> Iterator[Notion]:
    """The elastics that are bought by length."""
    return (n for n in pattern.draft.notions if n.length is not None and "elastic" in words_of(n.name))


def place_said(notion: Notion) -> Role | None:
    """Where a notion says that it belongs: by its own `at`, or in its name or remark."""
    return next((_PLACES[word] for word in (notion.where, *words(notion)) if word in _PLACES), None)


def place_of(pattern: Pattern, notion: Notion) -> Role | None:
    """Where a notion belongs: where it says, or at the only kind of opening that is a casing."""
    said = place_said(notion)
    if said is not None:
        return said
    roles = {role_of(p, e) for p in pattern.pieces for e in p.edges if e.kind is EdgeKind.CASING}
    return roles.pop() if len(roles) == 1 else None


def belongs_at(notion: Notion, role: Role | None) -> bool:
    """Whether a notion belongs to an edge of a role: it says so, or says nothing."""
    said = place_said(notion)
    return said is None or said is role


def relaxed(notion: Notion, role: Role | None) -> float:
    """How long the elastic of one opening is, relaxed [mm]: at neck and waist all of them, on a limb one."""
    return (notion.length or 0.0) * (1 if role in LIMBS else notion.count)


def width_said(notion: Notion) -> float:
    """How wide a notion says that it is [mm]; 0 where it does not say."""
    found = _WIDE.search(f"{notion.name} {notion.remark}".lower().replace("_", " "))
    if found is None:
        return 0.0
    over, _, under = found[1].partition("/")
    return float(over) / float(under or 1) * _PER_UNIT[found[2]]
