"""One garment, many ways: how the cloth is folded and how wide it is, with what must be bought."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.lay.place import GAP, Effort, Prepared, lays, prepare
from littlefold.lay.spoken import units_of
from littlefold.lay.ways import Way

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    import shapely

    from littlefold.lay.bounds import Bounds
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.lay import Lay, Placement
    from littlefold.lay.piece import LayPiece
    from littlefold.problem import Problem

ALL_WAYS = tuple(way for way in Way if way is not Way.SCRAPS)


@dataclass(frozen=True, slots=True)
class Row:
    """One way on one width: the best lay found, or the reasons why there is none."""

    way: Way
    width: float
    lay: Lay | None
    bounds: Bounds | None
    problems: tuple[Problem, ...] = ()

    @property
    def to_buy(self) -> float | None:
        """The length to buy [mm]."""
        return None if self.lay is None else self.lay.to_buy

    @property
    def price(self) -> float | None:
        """What it costs; None where there is no lay or no price."""
        return None if self.lay is None else self.lay.price


def compare(
    pieces: Sequence[LayPiece],
    cloth: Cloth,
    efforts: Effort,
    ways: Sequence[Way] = ALL_WAYS,
    widths: Sequence[float] = (),
) -> Iterator[Row]:
    """A row for each way and width, as each is done; ways that this cloth cannot be laid in are left out.

    The same effort goes into every row.
    """
    for width in widths or (cloth.width,):
        wide = replace(cloth, width=width)
        for way in ways:
            if (way is Way.TUBE) == cloth.tube:
                yield best_row(pieces, wide, way, efforts)


def best_row(
    pieces: Sequence[LayPiece],
    cloth: Cloth,
    way: Way,
    effort: Effort,
    gap: float = GAP,
    *,
    pins: Sequence[Placement] = (),
    holes: Sequence[shapely.Polygon] = (),
) -> Row:
    """The best lay in one way, with pieces that are held and spots that cannot be used as that way has them."""
    prepared = prepare(pieces, cloth, way, gap, pins=pins, holes=holes)
    if not isinstance(prepared, Prepared):
        return Row(way, cloth.width, None, None, prepared)
    best = None
    for lay in lays(prepared, effort):
        best = lay
    return Row(way, cloth.width, best, prepared.bounds, prepared.bounds.advice(units_of(prepared.cloth)))


def best_of(rows: Sequence[Row]) -> Row | None:
    """The row that buys least cloth: the cheapest, or by area where no price is known; None where all fail."""
    done = [row for row in rows if row.lay is not None]
    return min(done, key=_worth, default=None)


def _worth(row: Row) -> tuple[float, float]:
    assert row.lay is not None, "only rows with a lay are weighed"  # noqa: S101 - our own mistake
    area = row.lay.cloth_length * row.width
    return (row.price if row.price is not None else area), area
