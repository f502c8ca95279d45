"""The lay as a table for chalk and tape: where the two ends of each grain arrow come.

Two points fix a piece.  Measured are the distance from the cut end and from the lower edge of the spread, which is
the fold where there is one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.lay.one_way import may_be_turned_over
from littlefold.lay.ways import Way

if TYPE_CHECKING:
    from littlefold.geometry import Point
    from littlefold.lay.lay import Lay, Placement


@dataclass(frozen=True, slots=True)
class ChalkRow:
    """One cut: its number and title, how it is cut, and where the start and the end of its grain arrow come [mm].

    Each point is (from the cut end, from the lower edge).
    """

    number: int
    title: str
    cut: str
    start: Point
    end: Point


def chalk_table(lay: Lay) -> tuple[ChalkRow, ...]:
    """A row for each cut, in the order in which they come along the cloth."""
    rows = [_row(lay, placement) for placement in lay.placements]
    return tuple(sorted(rows, key=lambda row: (min(row.start.x, row.end.x), row.start.y)))


def lower_edge(lay: Lay) -> str:
    """What the distances across are measured from."""
    if not lay.spread.fold_low:
        return "the lower edge"
    return "the lower fold" if lay.spread.fold_high else "the fold"


def _row(lay: Lay, placement: Placement) -> ChalkRow:
    piece = lay.piece(placement.piece)
    start, end = (placement.affine.apply(point) for point in piece.arrow)
    return ChalkRow(piece.number, piece.title or piece.name, words_for(lay, placement), start, end)


def words_for(lay: Lay, placement: Placement) -> str:
    """How a cut is made, in words."""
    if placement.half:
        return "on the fold" if placement.layers == 2 else f"on the fold, {placement.layers} layers"  # noqa: PLR2004 - a fold has two layers
    mirrored = placement.sign.along * placement.sign.across < 0
    turned_over = (
        "turned over, " if mirrored and lay.spread.way in (Way.OPEN, Way.PARTLY, Way.TWO_PARTLY) else ""
    )
    if placement.layers > 1:
        return f"through {placement.layers} layers"
    deep = max(zone.layers for zone in lay.spread.zones if zone.low <= _middle(lay, placement) <= zone.high)
    return _one_of(lay, placement, mirrored=mirrored) if deep > 1 else f"{turned_over}single layer"


def _one_of(lay: Lay, placement: Placement, *, mirrored: bool) -> str:
    """Which of two layers is cut: right sides together, the lower one shows its face and gives the piece as drawn."""
    piece = lay.piece(placement.piece)
    if piece.bias or piece.crossgrain or may_be_turned_over(piece, lay.cloth):
        return "one layer only"
    return "upper layer only" if mirrored else "lower layer only"


def _middle(lay: Lay, placement: Placement) -> float:
    _, low, _, high = lay.shape(placement).bounds
    return float(low + high) / 2
