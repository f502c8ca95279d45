"""Finished measurements: what a tape would find on the garment when it is sewn."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.check.chest import chest_as_worn
from littlefold.check.roles import Role
from littlefold.check.worn import is_sewn, opening

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.worn import Opening
    from littlefold.draft.sentence import Speech
    from littlefold.pattern.model import Pattern

Json = dict[str, Any]

ROUND = {
    Role.NECK: "Round the neck",
    Role.ARMHOLE: "Round one armhole",
    Role.WRIST: "Round one wrist",
    Role.WAIST: "Round the waist",
    Role.LEG: "Round one leg",
    Role.HEM: "Round the hem",
}
SHOWN = 0.5
"""Of two lengths that differ by less only one is said [mm]."""


def finished(pattern: Pattern, speech: Speech) -> list[Json]:
    """Girths and openings of the garment: title, value, and a remark where an opening gives way."""
    return [*_chest(pattern, speech), *_openings(pattern, speech)]


def _chest(pattern: Pattern, speech: Speech) -> Iterator[Json]:
    worn = chest_as_worn(pattern)
    if worn is not None:
        remark = "before it is gathered" if worn.is_gathered else ""
        yield {"title": "Round the chest", "value": speech.length(worn.length), "remark": remark}


def _openings(pattern: Pattern, speech: Speech) -> Iterator[Json]:
    for role, title in ROUND.items():
        found = opening(pattern, role)
        if (
            found is not None
            and found.closed > SHOWN
            and not (role is Role.WAIST and _is_joined(pattern, found))
        ):
            yield {"title": title, "value": speech.length(found.closed), "remark": _remark(found, speech)}


def _is_joined(pattern: Pattern, found: Opening) -> bool:
    """Whether it is a seam inside the garment: a bodice and its skirt both have a waist."""
    return any(is_sewn(pattern, piece, edge) for piece, edge in found.parts)


def _remark(found: Opening, speech: Speech) -> str:
    parts = []
    if found.casings > SHOWN:
        parts.append("flat, before it is drawn in")
    if found.slits > SHOWN:
        parts.append(f"{speech.length(found.opened)} with everything undone")
    return "; ".join(parts)
