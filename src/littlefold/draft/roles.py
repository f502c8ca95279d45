"""What an edge goes round, read from the words in its name and in that of its piece.

A recipe names its edges in trade words (`neckline`, `front_armhole`, `hem`).  The words are parted at
underlines and looked up here; an edge whose name holds none has no role.
"""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache
from typing import TYPE_CHECKING, Final, Protocol

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import DraftEdge


class Named(Protocol):
    """A piece, as drafted or as traced: its name and its edges."""

    @property
    def name(self) -> str:
        """The name in the recipe."""

    @property
    def edges(self) -> tuple[DraftEdge, ...]:
        """In order round it."""


class Role(StrEnum):
    """What an edge goes round, or where it lies."""

    NECK = "neck"
    ARMHOLE = "armhole"
    CAP = "cap"
    WRIST = "wrist"
    WAIST = "waist"
    LEG = "leg"
    HEM = "hem"
    CROTCH = "crotch"


LIMBS: Final = frozenset({Role.ARMHOLE, Role.CAP, Role.WRIST, Role.LEG})
"""The roles of which a garment has two, one on each side."""

ONCE: Final = frozenset({Role.NECK, Role.WAIST, Role.HEM})
"""The roles of edges that go round the body once."""

_WORDS: Final[Mapping[str, Role]] = {
    "neck": Role.NECK,
    "neckline": Role.NECK,
    "armhole": Role.ARMHOLE,
    "armhold": Role.ARMHOLE,
    "scye": Role.ARMHOLE,
    "cap": Role.CAP,
    "crown": Role.CAP,
    "wrist": Role.WRIST,
    "cuff": Role.WRIST,
    "waist": Role.WAIST,
    "waistline": Role.WAIST,
    "leg": Role.LEG,
    "ankle": Role.LEG,
    "thigh": Role.LEG,
    "hem": Role.HEM,
    "hemline": Role.HEM,
    "bottom": Role.HEM,
    "crotch": Role.CROTCH,
    "seat": Role.CROTCH,
    "fork": Role.CROTCH,
}


@lru_cache(maxsize=1024)
def words_of(name: str) -> tuple[str, ...]:
    """The words of a name, in small letters."""
    return tuple(word.rstrip("0123456789") for word in name.lower().replace("-", "_").split("_"))


def words_by_role() -> dict[Role, tuple[str, ...]]:
    """The words in the names of edges that give them each role."""
    return {role: tuple(word for word, said in _WORDS.items() if said is role) for role in Role}


def is_sleeve(piece: Named) -> bool:
    """Whether a piece covers an arm: it says so, or it has a sleeve cap."""
    return "sleeve" in words_of(piece.name) or any(_said(edge.name) is Role.CAP for edge in piece.edges)


def is_leg(piece: Named) -> bool:
    """Whether a piece covers a leg: it has a crotch seam, or belongs to a garment with legs by name."""
    return any(_said(edge.name) is Role.CROTCH for edge in piece.edges)


def role_of(piece: Named, edge: DraftEdge) -> Role | None:
    """The role of an edge; the lower edge of a sleeve is a wrist and that of a trouser piece a leg."""
    role = _said(edge.name)
    if role is Role.HEM and is_sleeve(piece):
        return Role.WRIST
    if role is Role.HEM and is_leg(piece):
        return Role.LEG
    return role


@lru_cache(maxsize=1024)
def _said(name: str) -> Role | None:
    return next((_WORDS[word] for word in words_of(name) if word in _WORDS), None)
