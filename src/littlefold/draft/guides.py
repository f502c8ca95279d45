"""Guide points of a curve, so that a hand can plot it.

They give its depth from the straight line at a quarter, a half and three quarters of the way.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.draft.model import Guide
from littlefold.geometry.intersection import meet_line
from littlefold.geometry.tolerance import SAME_POINT

if TYPE_CHECKING:
    from littlefold.draft.model import DraftLine, LineKind
    from littlefold.geometry import Path

SHARES = (0.25, 0.5, 0.75)


def with_guides(line: DraftLine) -> DraftLine:
    """A drawn line with its guide points."""
    return replace(line, guides=guides(line.path, line.kind))


def guides(path: Path, kind: LineKind) -> tuple[Guide, ...]:
    """The guide points of a curve; none for a straight line, nor for a closed one, which the compass draws."""
    chord = path.end - path.start
    if kind == "line" or chord.length <= SAME_POINT:
        return ()
    across = chord.unit().turned_left()
    found = []
    for share in SHARES:
        foot = path.start + chord * share
        depths = [meeting.second_length for meeting in meet_line(path, foot, across)]
        if depths:
            found.append(Guide(share, min(depths, key=abs)))
    return tuple(found)
