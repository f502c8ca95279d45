"""The cutting line of a piece, edge by edge and corner by corner."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry import Path
from littlefold.geometry.segment import is_within
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.pattern.corners import corner

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.draft.model import DraftEdge
    from littlefold.geometry import Point, Segment
    from littlefold.pattern.corner import Corner
    from littlefold.pattern.margin import Margin


# The ends of a line that goes once round a piece may be this far apart through rounding [mm].
ROUNDING = 1e-4


@dataclass(frozen=True, slots=True)
class Strip:
    """The cutting line along one edge, and the lines that make the corner after it.

    `along` is None where the corners leave nothing of the edge: they overlap by `overlap` [mm].
    """

    edge: DraftEdge
    along: Path | None
    after: tuple[Path, ...]
    overlap: float


def strips(margins: Sequence[Margin]) -> tuple[tuple[Strip, ...], tuple[Corner, ...]]:
    """The cutting line of each edge, and the corner after each edge, in the same order."""
    following = [*margins[1:], margins[0]]
    corners = tuple(corner(m.reversed(), after) for m, after in zip(margins, following, strict=True))
    before = (corners[-1], *corners[:-1])
    return tuple(map(_strip, margins, before, corners)), corners


def _strip(margin: Margin, before: Corner, after: Corner) -> Strip:
    start, rest = before.second, after.first
    if start <= 0 and rest <= 0:
        return Strip(margin.edge, margin.cut.carried_on(-start, -rest), after.between, 0.0)
    end = margin.cut.length - rest
    along = margin.cut.part(start, end) if end - start > SAME_POINT else None
    return Strip(margin.edge, along, after.between, start - end)


def lines(chain: tuple[Strip, ...]) -> list[Path]:
    """All lines of some strips, in order."""
    return [path for strip in chain for path in (strip.along, *strip.after) if path is not None]


def closed(chain: tuple[Strip, ...]) -> Path | None:
    """The strips as one closed line; None where corners overlap."""
    if any(strip.along is None for strip in chain):
        return None
    return closed_up(Path.joined(*lines(chain)))


def closed_up(path: Path) -> Path:
    """A path that comes back to its start but for rounding, with that rounding taken out.

    Lines shorter than the rounding have no direction and are left out; their neighbours meet instead.
    """
    assert path.end.distance(path.start) < ROUNDING, "the line does not come back"  # noqa: S101 - our own mistake
    kept = [segment for segment in path.segments if not is_within(segment, ROUNDING)]
    starts = [segment.end for segment in (kept[-1], *kept[:-1])]
    ends = [*starts[1:], starts[0]]
    return Path(tuple(map(_from_to, kept, starts, ends)))


def _from_to(segment: Segment, start: Point, end: Point) -> Segment:
    """A segment with other ends, or itself where it has them."""
    return segment if segment.start is start and segment.end is end else segment.ending(start, end)
