"""On which side of its point a letter stands on the screen: where most paper is bare."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING, Final

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from littlefold.geometry import Path, Point

SIDES: Final = {"ne": (1.0, 1.0), "nw": (-1.0, 1.0), "se": (1.0, -1.0), "sw": (-1.0, -1.0)}
"""The first is where a hand writes it by habit."""
REACH: Final = 0.035
"""From a point to the middle of its letter, as a part of the longer side of the drawing."""
MOST_FEELERS: Final = 40
"""Places looked at along one part of a line."""
HABIT: Final = 1.25
"""Another side must be so much barer than the first before it is taken."""
FAVOUR: Final = np.array([HABIT**2 if side == "ne" else 1.0 for side in SIDES])
"""What the squared distances of each side count."""


def sides(points: Mapping[str, Point], lines: Iterable[Path], size: float) -> dict[str, str]:
    """The side for the letter of each point; letters that stand already are kept off too.

    Args:
        points: By name, in the order of drafting.
        lines: What is drawn.
        size: The longer side of the drawing [mm].
    """
    if not points:
        return {}
    own = [(at.x, at.y) for at in points.values()]
    lined = [place for path in lines for place in _along(path, REACH * size)]
    count = len(own) + len(lined)
    taken = np.empty((count + len(own), 2))
    taken[:count] = [*own, *lined]
    reach = np.array([*SIDES.values()]) * (REACH * size)
    found = {}
    for name, at in zip(points, own, strict=True):
        places = reach + at
        apart = ((places[:, None, :] - taken[:count]) ** 2).sum(axis=2).min(axis=1) * FAVOUR
        best = int(apart.argmax())
        found[name] = list(SIDES)[best]
        taken[count] = places[best]
        count += 1
    return found


def _along(path: Path, apart: float) -> Iterator[tuple[float, float]]:
    """Places along a line, about so far from each other."""
    for segment in path.segments:
        many = min(max(2, ceil(segment.start.distance(segment.end) / apart)), MOST_FEELERS)
        for k in range(many):
            at = segment.at(k / many)
            yield at.x, at.y
    yield path.end.x, path.end.y
