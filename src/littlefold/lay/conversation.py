"""Putting a strip to the outside engine, and reading its answers.

The engine knows turns and nothing else.  So every member keeps the hand that it has in a layout of our own, and
members on a fold are joined to one rigid comb (`comb`).  The answer is a layout of the strip again, to be settled.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.lay.comb import Comb, comb_of
from littlefold.lay.convex import polygon_of
from littlefold.lay.engine import Item, Task
from littlefold.lay.strip import Spot

if TYPE_CHECKING:
    from littlefold.lay.convex import Points
    from littlefold.lay.engine import Answer, Placed
    from littlefold.lay.strip import Layout, Member, Stance, Strip

# The engine cannot find exact fits and stops with a panic on a shape as high as the strip, so it gets this much
# more height [share].  Settling pushes the pieces back inside.
ROOM = 1e-4

# A window within this of the whole height [mm] leaves a member free.
WHOLE = 1e-3

COMB = "comb"


@dataclass(frozen=True, slots=True)
class _Turn:
    """A stance that the engine may choose, as an angle by which its item is turned [degrees]."""

    stance: int
    degrees: float


@dataclass(frozen=True, slots=True)
class _Group:
    """Members that are one item to the engine, with their turns."""

    members: tuple[int, ...]
    turns: tuple[_Turn, ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """A task, and what is needed to read its answers."""

    strip: Strip
    task: Task
    groups: tuple[_Group, ...]
    comb: Comb | None
    margin: float

    def layout(self, answer: Answer) -> Layout:
        """The engine's answer as a layout of the strip; members may stick out of it by a hair."""
        spots: dict[int, Spot] = {}
        waiting = {str(k): list(group.members) for k, group in enumerate(self.groups)}
        for placed in answer.placed:
            if placed.name == COMB and self.comb is not None:
                spots |= self.comb.spots(placed.x)
                continue
            group = self.groups[int(placed.name)]
            spots[waiting[placed.name].pop()] = self._spot(group, placed)
        return tuple(spots[k] for k in range(len(self.strip.members)))

    def _spot(self, group: _Group, placed: Placed) -> Spot:
        turn = min(group.turns, key=lambda t: abs((t.degrees - placed.degrees + 180) % 360 - 180))
        stance = self.strip.members[group.members[0]].stances[turn.stance]
        shape = self.strip.shapes[stance.shape]
        return Spot(
            turn.stance,
            placed.x + stance.sign.along * shape.origin[0],
            placed.y + stance.sign.across * shape.origin[1] - self.margin,
        )


def put(strip: Strip, layout: Layout, margin: float, seconds: float, seed: int) -> Asked | None:
    """The strip as a task; None where the engine cannot express it.

    `margin` [mm] is how far the safe outlines at least reach beyond the true ones, which may touch the edge.
    """
    on_fold = [k for k, member in enumerate(strip.members) if _is_bound_low(member)]
    free = [k for k in range(len(strip.members)) if k not in on_fold]
    if not all(_is_free(strip, strip.members[k]) for k in free) or not free:
        return None
    comb = comb_of(strip, layout, on_fold, strip.height + margin) if on_fold else None
    height = strip.height * (1 + ROOM) + 2 * margin if comb is None else comb.strip_height
    groups = _groups(strip, layout, free)
    items = [_item(strip, str(k), group) for k, group in enumerate(groups)]
    if comb is not None:
        items.append(Item(COMB, comb.ring, 1, (0.0,)))
    if not all(_is_sound(item, height, is_comb=item.name == COMB) for item in items):
        return None
    below = margin if comb is None else comb.below
    return Asked(strip, Task(height, tuple(items), seconds, seed), groups, comb, below)


def _is_bound_low(member: Member) -> bool:
    return member.fixed_at is None and all(s.low == s.high == 0.0 for s in member.stances)


def _is_free(strip: Strip, member: Member) -> bool:
    return member.fixed_at is None and all(_is_window_whole(strip, stance) for stance in member.stances)


def _is_window_whole(strip: Strip, stance: Stance) -> bool:
    if stance.along_phase or stance.across_phase:
        return False
    _, low, _, high = strip.shapes[stance.shape].box
    return abs(stance.high - stance.low - (strip.height - (high - low))) <= WHOLE


def _groups(strip: Strip, layout: Layout, members: list[int]) -> tuple[_Group, ...]:
    """Members of the same outline, hand and turns together."""
    found: dict[tuple[object, ...], tuple[list[int], tuple[_Turn, ...]]] = {}
    for k in members:
        stances = strip.members[k].stances
        now = stances[layout[k].stance]
        turns = tuple(
            _Turn(n, _degrees(strip, stance))
            for n, stance in enumerate(stances)
            if _hand(stance) == _hand(now)
        )
        key = (stances, _hand(now))
        found.setdefault(key, ([], turns))[0].append(k)
    return tuple(_Group(tuple(numbers), turns) for numbers, turns in found.values())


def _hand(stance: Stance) -> int:
    return stance.sign.along * stance.sign.across


def _degrees(strip: Strip, stance: Stance) -> float:
    """The turn of an item, which is the outline as drawn or mirrored across, that gives the stance."""
    turned = strip.shapes[stance.shape].degrees * _hand(stance)
    return (turned + (180.0 if stance.sign.along < 0 else 0.0)) % 360.0


def _item(strip: Strip, name: str, group: _Group) -> Item:
    stance = strip.members[group.members[0]].stances[group.turns[0].stance]
    shape = strip.shapes[stance.shape]
    outline = _turned_back(shape.ring + np.array(shape.origin), shape.degrees)
    ring = outline * np.array((1.0, float(_hand(stance))))
    corners = tuple((float(x), float(y)) for x, y in ring)
    return Item(name, corners, len(group.members), tuple(sorted({turn.degrees for turn in group.turns})))


def _turned_back(ring: Points, degrees: float) -> Points:
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    return ring @ np.array(((c, -s), (s, c)))


def _is_sound(item: Item, height: float, *, is_comb: bool) -> bool:
    """Whether the engine takes the item: a simple outline, lower than the strip in one of its turns."""
    polygon = polygon_of(np.array(item.ring))
    if not shapely.is_valid(polygon) or polygon.area == 0:
        return False
    return is_comb or all(_extent_across(polygon, degrees) < height for degrees in item.degrees)


def _extent_across(polygon: shapely.Polygon, degrees: float) -> float:
    ring = _turned_back(shapely.get_coordinates(polygon), -degrees)
    return float(np.ptp(ring[:, 1]))
