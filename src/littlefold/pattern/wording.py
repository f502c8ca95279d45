"""The words on a piece.  Another language is another value of `Wording`, read from `words/<language>.toml`."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files
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


TURNS: Mapping[str, str] = MappingProxyType(
    {
        "once": "fold",
        "first": "first fold",
        "second": "second fold",
        "casing_once": "casing turn",
        "casing_first": "first casing turn",
        "casing_second": "second casing turn",
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
    turns: Mapping[str, str] = field(default_factory=lambda: TURNS)
    stature: str = "stature {stature}"
    allowances: str = "Allowances included: {list}"
    no_allowances: str = "No allowances"
    none: str = "none"
    turned_twice: str = "{width}, turned twice: {depth} deep"
    drawn: str = "{date}, scale {scale}"
    decimal: str = "."
    inch: str = "in"
    cloths: Mapping[str, str] = field(default_factory=lambda: CLOTHS)
    insides: Mapping[InsideKind, str] = field(default_factory=lambda: INSIDES)


ENGLISH = Wording()


@lru_cache
def piece_wording(language: str) -> Wording:
    """The words of a language; English where there are none, since a piece without words helps nobody."""
    entry = files("littlefold.pattern").joinpath("words", f"{language}.toml")
    return Wording(**tomllib.loads(entry.read_text("utf-8"))) if entry.is_file() else ENGLISH
