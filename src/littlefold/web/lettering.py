"""On which side of its point a letter stands on the screen: where most paper is bare."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from littlefold.geometry import Path, Point

SIDES: Final = {"ne": (1.0, 1.0), "nw": (-1.0, 1.0), "se": (1.0, -1.0), "sw": (-1.0, -1.0)}
"""The first is where a hand writes it by habit."""
REACH: Final = 0.035
"""From a point to the middle of its letter, as a part of the longer side of the drawing."""
FEELERS: Final = 10
"""Places looked at along a line."""
HABIT: Final = 1.25
"""Another side must be so much barer than the first before it is taken."""


def sides(points: Mapping[str, Point], lines: Iterable[Path], size: float) -> dict[str, str]:
    """The side for the letter of each point; letters that stand already are kept off too.

    Args:
        points: By name, in the order of drafting.
        lines: What is drawn.
        size: The longer side of the drawing [mm].
    """
    taken = [(at.x, at.y) for at in points.values()]
    for path in lines:
        length = path.length()
        along = (path.at_length(length * k / FEELERS) for k in range(FEELERS + 1))
        taken.extend((at.x, at.y) for at in along)
    found = {}
    for name, at in points.items():
        places = {side: (at.x + x * REACH * size, at.y + y * REACH * size) for side, (x, y) in SIDES.items()}
        bare = {
            side: _bareness(place, taken) * (HABIT if side == "ne" else 1.0) for side, place in places.items()
        }
        found[name] = max(bare, key=lambda side: bare[side])
        taken.append(places[found[name]])
    return found


def _bareness(place: tuple[float, float], taken: list[tuple[float, float]]) -> float:
    return min(hypot(place[0] - x, place[1] - y) for x, y in taken)
