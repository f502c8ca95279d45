"""What an edge of a garment is, by the words in its name (`draft/roles.py`) and by the piece it is on.

Checks of fit pass by an edge that has no role.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.draft.roles import LIMBS, Role, is_leg, is_sleeve, role_of, words_by_role, words_of

from .once import once

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece

__all__ = [
    "LIMBS",
    "Role",
    "edges_with",
    "has_legs",
    "is_collar",
    "is_leg",
    "is_sewn_on",
    "is_sleeve",
    "made_as",
    "role_of",
    "words_by_role",
    "words_of",
]

# Pieces that are sewn on to an opening follow its length; the opening is measured on the garment itself.
_SEWN_ON: Final = frozenset(
    {"facing", "lining", "collar", "band", "waistband", "neckband", "cuff", "binding", "frill", "ruffle",
     "bias", "strip", "pocket", "tape", "tie", "strap", "stand", "interfacing"}
)  # fmt: skip
_MADE_ON: Final = frozenset({"bias", "band", "facing"})
_TWO_LEGGED: Final = frozenset({"trousers", "bloomers", "drawers", "pyjamas", "shorts"})


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
