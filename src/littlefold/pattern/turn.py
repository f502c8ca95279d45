"""The lines on which hems, casings and button edges are folded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from littlefold.geometry.tolerance import FLATNESS, SAME_POINT
from littlefold.pattern.allowance import fold_distances, is_folded, width
from littlefold.pattern.carried import Carried
from littlefold.pattern.margin import outside
from littlefold.pattern.simple import stretch_inside

if TYPE_CHECKING:
    from collections.abc import Sequence

    from shapely import Polygon

    from littlefold.draft.model import DraftEdge, EdgeKind
    from littlefold.geometry import Path, Point
    from littlefold.pattern.model import Outline


@dataclass(frozen=True, slots=True)
class Turn:
    """A line on which an edge is turned over, from cut edge to cut edge.

    An edge turned twice is folded `first` near its raw edge, and then (`second`) on the line of the finished edge.
    """

    path: Path
    kind: EdgeKind
    order: Literal["once", "first", "second"]


def turn_lines(edges: Sequence[DraftEdge], cut: Outline) -> tuple[Turn, ...]:
    """Every fold of every edge that is folded over, from cut edge to cut edge; the line of the edge itself comes first."""
    folded = [edge for edge in edges if is_folded(edge)]
    if not folded:
        return ()
    reach = 4 * max(width(edge) for edge in edges)
    shape = cut.around
    turns = [
        Turn(path, edge.kind, _order(edge, away))
        for edge in folded
        for away in fold_distances(edge)
        if (path := _fold(edge, away, shape, reach)) is not None
    ]
    return tuple(turns)


def _order(edge: DraftEdge, away: float) -> Literal["once", "first", "second"]:
    """The narrow turn near the raw edge is folded first."""
    if len(fold_distances(edge)) == 1:
        return "once"
    return "first" if away > 0 else "second"


def _fold(edge: DraftEdge, away: float, cut: Polygon, reach: float) -> Path | None:
    path = outside(edge.path, away) if away > 0 else edge.path
    if path is None:
        return None
    line = Carried(path)
    whole = line.part(-reach, line.length + reach)
    ends = stretch_inside(whole, cut, line.at(line.length / 2))
    if ends is None:
        return None
    start, end = sorted(_place(line, point) for point in ends)
    return line.part(start, end) if end - start > SAME_POINT else None


def _place(line: Carried, point: Point) -> float:
    """The place of a point that lies on a line, nearly always where it is carried on beyond an end."""
    before = (point - line.path.start).dot(line.path.start_tangent)
    after = (point - line.path.end).dot(line.path.end_tangent) + line.length
    for place in (before, after):
        if not 0 < place < line.length and line.at(place).distance(point) < FLATNESS:
            return place
    return line.foot(point)
