"""The register of measurements: what each short name means and how the tape is laid on a small child.

The words stand in `register.toml`, so that they can be read and translated without touching code.  Terms and
clause numbers are those of ISO 8559-1:2017 as secondary sources use them; the standard itself was not read.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Mapping


class Kind(StrEnum):
    """What the tape does: it goes round, follows the body, or measures upright from the floor."""

    GIRTH = "girth"
    LENGTH = "length"
    HEIGHT = "height"


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measurement of the body.

    Attributes:
        name: The short name that recipes and child files use.
        title: The name in plain words.
        kind: Girth, length or height.
        iso_term: The term of ISO 8559-1:2017, or the nearest one.
        clause: Its clause in ISO 8559-1:2017, where known.
        clause_note: How the clause, or else the term, is known; 'from memory' where it is so.
        how_standing: How to take it on a child that stands.
        how_lying: How to take it on a baby that lies.
    """

    name: str
    title: str
    kind: Kind
    iso_term: str
    clause: str | None
    clause_note: str
    how_standing: str
    how_lying: str

    @property
    def is_girth(self) -> bool:
        """Whether the tape goes round, so that half of it may be typed by mistake."""
        return self.kind is Kind.GIRTH


def _read_register() -> Mapping[str, Measurement]:
    entries = tomllib.loads(files(__package__).joinpath("register.toml").read_text("utf-8"))
    return MappingProxyType({name: _measurement(name, entry) for name, entry in entries.items()})


def _measurement(name: str, entry: Mapping[str, str]) -> Measurement:
    return Measurement(
        name=name,
        title=entry["title"],
        kind=Kind(entry["kind"]),
        iso_term=entry["iso_term"],
        clause=entry.get("clause"),
        clause_note=entry["known"],
        how_standing=entry["standing"],
        how_lying=entry["lying"],
    )


REGISTER: Final[Mapping[str, Measurement]] = _read_register()

NAMES: Final[tuple[str, ...]] = tuple(REGISTER)


@lru_cache
def register_in(language: str) -> Mapping[str, Measurement]:
    """The register in the words of a language, from `words/<language>.toml`; in English where it has none."""
    entry = files(__package__).joinpath("words", f"{language}.toml")
    if not entry.is_file():
        return REGISTER
    said = tomllib.loads(entry.read_text("utf-8"))
    return MappingProxyType({name: _in_words(one, said.get(name, {})) for name, one in REGISTER.items()})


def _in_words(one: Measurement, said: Mapping[str, str]) -> Measurement:
    return replace(
        one,
        title=said.get("title", one.title),
        how_standing=said.get("standing", one.how_standing),
        how_lying=said.get("lying", one.how_lying),
    )
