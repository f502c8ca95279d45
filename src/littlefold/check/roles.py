"""Which part of the body an edge goes round, read from the words in its name and in the name of its piece.

A recipe names its edges in trade words (`neckline`, `front_armhole`, `hem`).  The words are parted at
underlines and looked up here; an edge whose name holds none has no role, and the checks of fit pass it by.
"""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from .once import once

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece


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

# Pieces that are sewn on to an opening follow its length; the opening is measured on the garment itself.
_SEWN_ON: Final = frozenset(
    {"facing", "lining", "collar", "band", "waistband", "neckband", "cuff", "binding", "frill", "ruffle",
     "bias", "strip", "pocket", "tape", "tie", "strap", "stand", "interfacing"}
)  # fmt: skip
_MADE_ON: Final = frozenset({"bias", "band", "facing"})
_TWO_LEGGED: Final = frozenset({"trousers", "bloomers", "drawers", "pyjamas", "shorts"})


@lru_cache(maxsize=1024)
def words_of(name: str) -> tuple[str, ...]:
    """The words of a name, in small letters."""
    return tuple(word.rstrip("0123456789") for word in name.lower().replace("-", "_").split("_"))


def words_by_role() -> dict[Role, tuple[str, ...]]:
    """The words in the names of edges that give them each role."""
    return {role: tuple(word for word, said in _WORDS.items() if said is role) for role in Role}


def is_sewn_on(pattern: Pattern, piece: Piece) -> bool:
    """Whether a piece only follows another: a facing, band, collar, cuff, frill or lining."""
    made_on = made_as(pattern, piece) in _MADE_ON
    named_on = not _SEWN_ON.isdisjoint(words_of(piece.name))
    return made_on or named_on or piece.cloth in {"lining", "interfacing"}


def made_as(pattern: Pattern, piece: Piece) -> str:
    """How the recipe makes a piece: `traced`, `rectangle`, `bias`, `band` or `facing`."""
    return next((one.made_as for one in pattern.draft.pieces if one.name == piece.name), "traced")


def is_collar(piece: Piece) -> bool:
    """Whether a piece is a collar or one of its layers."""
    return "collar" in words_of(piece.name)


def is_sleeve(piece: Piece) -> bool:
    """Whether a piece covers an arm: it says so, or it has a sleeve cap."""
    return "sleeve" in words_of(piece.name) or any(_said(edge.name) is Role.CAP for edge in piece.edges)


def is_leg(piece: Piece) -> bool:
    """Whether a piece covers a leg: it has a crotch seam, or belongs to a garment with legs by name."""
    return any(_said(edge.name) is Role.CROTCH for edge in piece.edges)


def role_of(piece: Piece, edge: DraftEdge) -> Role | None:
    """The role of an edge; the lower edge of a sleeve is a wrist and that of a trouser piece a leg."""
    role = _said(edge.name)
    if role is Role.HEM and is_sleeve(piece):
        return Role.WRIST
    if role is Role.HEM and is_leg(piece):
        return Role.LEG
    return role


def edges_with(pattern: Pattern, role: Role) -> tuple[tuple[Piece, DraftEdge], ...]:
    """The edges of a role on the pieces that make the garment, those sewn on to them left out."""
    return _edges_by_role(pattern).get(role, ())


@once
def _edges_by_role(pattern: Pattern) -> Mapping[Role, tuple[tuple[Piece, DraftEdge], ...]]:
    found: dict[Role, tuple[tuple[Piece, DraftEdge], ...]] = {}
    for piece in (piece for piece in pattern.pieces if not is_sewn_on(pattern, piece)):
        for edge in piece.edges:
            role = role_of(piece, edge)
            if role is not None:
                found[role] = (*found.get(role, ()), (piece, edge))
    return found


@once
def has_legs(pattern: Pattern) -> bool:
    """Whether the garment goes round each leg by itself."""
    named = pattern.draft.garment in _TWO_LEGGED
    return named or any(is_leg(piece) for piece in pattern.pieces)


@lru_cache(maxsize=1024)
def _said(name: str) -> Role | None:
    return next((_WORDS[word] for word in words_of(name) if word in _WORDS), None)
