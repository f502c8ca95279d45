"""The words on a piece.  Another language is another value of `Wording`."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.model import InsideKind

CLOTHS: Mapping[str, str] = MappingProxyType(
    {"main": "main cloth", "lining": "lining", "interfacing": "interfacing"}
)

INSIDES: Mapping[InsideKind, str] = MappingProxyType(
    {
        "slit": "slit",
        "placket": "placket",
        "buttonhole": "buttonhole",
        "button": "button",
        "opening": "opening",
        "dart": "dart",
        "pleat": "pleat",
        "tuck": "tuck",
        "gather": "gather",
        "line": "",
    }
)


@dataclass(frozen=True, slots=True)
class Wording:
    """Sentences with {places} for numbers and names, and tables for words that stand for a kind."""

    cut: str = "Cut {count}"
    pair: str = "Cut {count}: a mirrored pair"
    pairs: str = "Cut {count}: {pairs} mirrored pairs"
    on_fold: str = "on the fold"
    side: Mapping[str, str] = field(
        default_factory=lambda: {"left": "for the wearer's left", "right": "for the wearer's right"}
    )
    fold: str = "place on the fold"
    grain: str = "straight grain"
    turn: str = "fold"
    stature: str = "stature {stature}"
    allowances: str = "Allowances included: {list}"
    no_allowances: str = "No allowances"
    none: str = "none"
    turned_twice: str = "{width}, turned twice: {depth} deep"
    drawn: str = "{date}, scale {scale}"
    cloths: Mapping[str, str] = field(default_factory=lambda: CLOTHS)
    insides: Mapping[InsideKind, str] = field(default_factory=lambda: INSIDES)


ENGLISH = Wording()
