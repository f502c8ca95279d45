"""Guide points of a curve, so that a hand can plot it.

They give its depth from the straight line at a quarter, a half and three quarters of the way.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry.intersection import meet_line
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from littlefold.geometry import Path

SHARES = (0.25, 0.5, 0.75)


@dataclass(frozen=True, slots=True)
class Guide:
    """A point that helps a hand to draw a curve.

    At the fraction `at` of the straight line from end to end, the curve lies `depth` [mm] from that straight line;
    positive is to the left of the way from the start to the end.
    """

    at: float
    depth: float


def guides(path: Path) -> tuple[Guide, ...]:
    """The guide points of a curve; none for a closed one, which the compass draws."""
    chord = path.end - path.start
    if chord.length <= SAME_POINT:
        return ()
    across = chord.unit().turned_left()
    found = []
    for share in SHARES:
        foot = path.start + chord * share
        depths = [meeting.second_length for meeting in meet_line(path, foot, across)]
        if depths:
            found.append(Guide(share, min(depths, key=abs)))
    return tuple(found)
