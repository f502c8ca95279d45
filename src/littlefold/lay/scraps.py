"""Cutting from scraps: given shapes of cloth, laid side by side as one strip whose outside cannot be used."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.lay.convex import convex_parts
from littlefold.lay.piece import points_of
from littlefold.lay.place import GAP, Prepared, lays, prepare
from littlefold.lay.ways import Way
from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.geometry import Point
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.lay import Lay
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.place import Effort

# Scraps stand this far apart in the strip [mm], so that no piece reaches from one into the next unseen.
APART = 10.0


@dataclass(frozen=True, slots=True)
class FromScraps:
    """A lay on scraps; the pieces named in `left_out` found no place on them and lie beyond `length`."""

    lay: Lay
    length: float
    left_out: tuple[str, ...]

    @property
    def problems(self) -> tuple[Problem, ...]:
        """A problem where not all pieces fit."""
        if not self.left_out:
            return ()
        names = ", ".join(f'"{name}"' for name in self.left_out)
        number = Number("left out", len(self.left_out), "count")
        return (Problem("scraps-too-small", f"These do not fit on the scraps: {names}.", numbers=(number,)),)


def lay_on_scraps(
    pieces: Sequence[LayPiece],
    cloth: Cloth,
    scraps: Sequence[tuple[Point, ...]],
    effort: Effort,
    gap: float = GAP,
) -> FromScraps | tuple[Problem, ...]:
    """Pieces on scraps whose grain runs along x, each scrap face up; the best lay found with the effort."""
    outlines = _in_a_row(scraps)
    height = max(outline.bounds[3] for outline in outlines)
    length = outlines[-1].bounds[2]
    holes = _outside(outlines, shapely.box(0.0, 0.0, length, height))
    flat = replace(cloth, width=height, selvedge=0.0, end_loss=0.0, tube=False)
    prepared = prepare(pieces, flat, Way.SCRAPS, gap, holes=holes)
    if not isinstance(prepared, Prepared):
        return prepared
    best = None
    for lay in lays(prepared, effort):
        best = lay
        if lay.length <= length:
            break
    assert best is not None, "the first lay always holds"  # noqa: S101 - our own mistake
    left = tuple(sorted({p.piece for p in best.placements if best.shape(p).bounds[2] > length}))
    return FromScraps(best, length, left)


def _in_a_row(scraps: Sequence[tuple[Point, ...]]) -> list[shapely.Polygon]:
    outlines, x = [], 0.0
    for scrap in scraps:
        polygon = shapely.Polygon(points_of(scrap))
        left, low, right, _ = polygon.bounds
        outlines.append(shapely.transform(polygon, lambda xy, by=(x - left, -low): xy + np.array(by)))
        x += right - left + APART
    return outlines


def _outside(outlines: Sequence[shapely.Polygon], whole: shapely.Polygon) -> tuple[shapely.Polygon, ...]:
    """What of the strip is not scrap, as convex polygons."""
    rest = shapely.difference(whole, shapely.union_all(outlines))
    parts = [part for part in shapely.get_parts(rest) if isinstance(part, shapely.Polygon) and part.area > 0]
    return tuple(shapely.Polygon(ring) for part in parts for ring in convex_parts(part))
