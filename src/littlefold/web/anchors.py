"""Where a choice acts: what moves on the paper when it is changed a little.

Nobody writes it down; the recipe is drafted twice and the drafts are compared.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.pipeline import settings

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from littlefold.geometry import Point
    from littlefold.pipeline import Outcome, Wish

MOVED = 0.05
"""A point has moved when it lies this far from where it was [mm]."""
FULLY = 0.6
"""A choice acts first where a point moves by this part of the longest way that any point goes."""


@dataclass(frozen=True, slots=True)
class Anchor:
    """The place a choice acts on most: a point of a sheet, by its name where it has one (else `point` is empty)."""

    sheet: str
    at: Point
    point: str = ""


def anchors(
    wish: Wish, others: Mapping[str, float | str], fulfil: Callable[[Wish], Outcome]
) -> dict[str, dict[str, Anchor]]:
    """For each choice and each sheet, the place it acts on most; without an entry where nothing moves.

    Args:
        wish: What is drafted now.
        others: Another value for each choice.
        fulfil: The pipeline.
    """
    now = fulfil(wish)
    found = {}
    for name, value in others.items():
        changed = dict(wish.choices) | {name: value}
        found[name] = dict(_acts(now, fulfil(replace(wish, choices=settings(changed)))))
    return found


def _acts(before: Outcome, after: Outcome) -> Iterator[tuple[str, Anchor]]:
    for sheet in before.draft.sheets:
        place = _first_moved(before, after, sheet.name) or _widened(before, after, sheet.name)
        if place is not None:
            yield sheet.name, place


def _first_moved(before: Outcome, after: Outcome, sheet: str) -> Anchor | None:
    """The first point, in the order of drafting, that moves about as far as any."""
    names = [name for name in before.draft.points if name.startswith(f"{sheet}.")]
    ways = {name: moved_by(before, after, name) for name in names}
    most = max(ways.values(), default=0.0)
    if most <= MOVED:
        return None
    first = next(name for name in names if ways[name] >= FULLY * most)
    return Anchor(sheet, before.draft.points[first].at, first)


def moved_by(before: Outcome, after: Outcome, name: str) -> float:
    """How far a point of the first draft lies from where it is in the second [mm]; 0 where one lacks it."""
    first, second = before.draft.points.get(name), after.draft.points.get(name)
    return 0.0 if first is None or second is None else first.at.distance(second.at)


def _widened(before: Outcome, after: Outcome, sheet: str) -> Anchor | None:
    """The middle of the first edge whose allowance differs."""
    for old, new in zip(before.draft.pieces, after.draft.pieces, strict=False):
        if old.sheet != sheet:
            continue
        for first, second in zip(old.edges, new.edges, strict=False):
            if abs(first.allowance - second.allowance) > MOVED:
                return Anchor(sheet, first.path.at_length(first.path.length() / 2))
    return None
