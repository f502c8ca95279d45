"""How the room in the lengths of a garment is kept: in the hem, or in growth tucks that are let down one by one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.body.register import register_in
from littlefold.body.room import TUCKED, tucks
from littlefold.body.tape import say_length
from littlefold.booklet.wording import wording

if TYPE_CHECKING:
    from littlefold.body.room import Room
    from littlefold.draft.sentence import Speech

DEPTH: Final = {"cm": 10.0, "in": 25.4 / 2}
"""How deep a growth tuck is stitched, by the maker's units [mm]; it takes twice that."""


@dataclass(frozen=True, slots=True)
class GrowthTucks:
    """The tucks that hold the expected growth.

    Attributes:
        depth: Of each [mm].
        counts: How many, by the measurement whose room they hold; 0 where it grows by nothing.
    """

    depth: float
    counts: tuple[tuple[str, int], ...]


def growth_tucks(room: Room, units: str) -> GrowthTucks:
    """The tucks for each length that tucks hold, as deep as is usual in the units (`cm` or `in`)."""
    depth = DEPTH[units]
    return GrowthTucks(depth, tuple((name, tucks(room.gain(name).expected, depth)) for name in TUCKED))


def tucks_said(room: Room, speech: Speech) -> str:
    """The same in a sentence, in the maker's units and language."""
    found, words = growth_tucks(room, speech.units), wording(speech.language)["growth"]
    titles = register_in(speech.language)
    told = [f"{titles[name].title} {count}" for name, count in found.counts if count]
    if not told:
        return words["no_tucks"]
    depth = speech.spelled(say_length(found.depth, speech.units))
    return words["tucks"].format(depth=depth, counts=", ".join(told))
