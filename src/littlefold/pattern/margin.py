"""An edge with the line that bounds its allowance, both carried on beyond their ends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry import Line, Path, offset
from littlefold.pattern.allowance import width
from littlefold.pattern.carried import Carried
from littlefold.pattern.simple import parallel

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge
    from littlefold.geometry import Vector


# How far a path is carried on to find the line beside a hollow at its end, in distances of that line.
LEAD = 4.0


@dataclass(frozen=True, slots=True)
class Margin:
    """An edge travelled in one direction, the piece on its left (`inside` 1) or right (`inside` -1).

    `cut` runs beside `stitch` at the distance `width`; a place beyond an end of one lies square across from
    the place equally far beyond the end of the other.
    """

    edge: DraftEdge
    width: float
    stitch: Carried
    cut: Carried
    inside: int

    @classmethod
    def of(cls, edge: DraftEdge) -> Margin | None:
        """The margin of an edge that goes counter-clockwise round its piece.

        None where the edge bends so tightly outwards that nothing lies at its width beside it.
        """
        wide = width(edge)
        stitch = Carried(edge.path)
        if wide == 0:
            return cls(edge, wide, stitch, stitch, 1)
        line = outside(edge.path, wide)
        return None if line is None else cls(edge, wide, stitch, Carried(line), 1)

    def reversed(self) -> Margin:
        """The same travelled the other way."""
        stitch = self.stitch.reversed()
        cut = stitch if self.cut is self.stitch else self.cut.reversed()
        return Margin(self.edge, self.width, stitch, cut, -self.inside)

    def outward(self, place: float) -> Vector:
        """The direction out of the piece, square to the stitch line at a place, of length 1."""
        return self.stitch.tangent(place).turned_right() * self.inside


def outside(path: Path, away: float) -> Path | None:
    """The line at a distance on the right of a path; None where the path bends too tightly for one.

    A hollow that is narrowest at an end of the path has no such line by itself, but has one as soon as the path
    is carried on: the line then begins where that of the straight piece crosses it.  Where the hollow is too
    narrow by so little that the crossing is lost in rounding, the line is made of straight pieces.
    """
    line = offset(path, -away)
    if line is not None:
        return line
    lead = LEAD * away
    carried = path.extended_start(lead).extended_end(lead)
    line = offset(carried, -away)
    return parallel(carried, -away) if line is None else _without_leads(line)


def _without_leads(line: Path) -> Path | None:
    """A line without the straight pieces at its ends that lie beside what was carried on."""
    low = 1 if isinstance(line.segments[0], Line) else 0
    high = -1 if isinstance(line.segments[-1], Line) else None
    kept = line.segments[low:high]
    return Path(kept) if kept else None
