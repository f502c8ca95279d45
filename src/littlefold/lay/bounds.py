"""Lengths under which no lay can be, and which of them binds.

The area: all cuts side by side without a gap.  The fold: the pieces that lie on it, one after the other in the best order
(`fold_row`); of two folds only the edges are counted, since the bodies of flared pieces may interlock.  The longest
piece.  Wide pieces: those that are too deep to lie side by side, one after the other (`profile`).  Beside the fold: a half
on the fold and a piece too deep to lie beside it, such as a bias strip (`beside_fold`).  When the row on the
fold is longer than a usual density makes the whole lay, the fold is the bottleneck, and another way of folding is
wanted.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from littlefold.lay.beside_fold import ALL_BESIDE, Beside, least_beside
from littlefold.lay.fold_row import least_row
from littlefold.lay.piece import rotated
from littlefold.lay.profile import side_by_side
from littlefold.lay.spoken import tape
from littlefold.problem import Number, Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Sequence

    import shapely

    from littlefold.lay.deal import Cut
    from littlefold.lay.spoken import Units
    from littlefold.lay.ways import Spread

# A good lay of one garment uses about this share; 80-85 % counts as very good (Vilumsone-Nemes, p. 19).
GOOD_DENSITY = 0.85


Binding = Literal["area", "fold", "longest piece", "wide pieces", "beside the fold"]


@dataclass(frozen=True, slots=True)
class Bounds:
    """Lower bounds for the length of the spread [mm]."""

    area: float
    fold_row: float
    longest: float
    in_a_row: float = 0.0
    beside: Beside = ALL_BESIDE

    @property
    def beside_fold(self) -> float:
        """What a half on the fold and a piece that does not lie beside it ask for [mm]; 0 where all lie beside."""
        return self.beside.length

    @property
    def most(self) -> float:
        """The bound that binds [mm]."""
        return max(self.area, self.fold_row, self.longest, self.in_a_row, self.beside_fold)

    @property
    def binding(self) -> Binding:
        """Which one binds, against the length that the area takes in a good lay."""
        others: dict[Binding, float] = {
            "fold": self.fold_row,
            "longest piece": self.longest,
            "wide pieces": self.in_a_row,
            "beside the fold": self.beside_fold,
        }
        largest = max(others, key=lambda name: others[name])
        return largest if others[largest] > self.area / GOOD_DENSITY else "area"

    def advice(self, units: Units = "cm") -> tuple[Problem, ...]:
        """A warning where the fold decides the length: the row on it, or a piece that does not lie beside a half."""
        match self.binding:
            case "fold":
                return (self._row_binds(units),)
            case "beside the fold":
                return (self._beside_binds(units),)
            case _:
                return ()

    def _row_binds(self, units: Units) -> Problem:
        return Problem(
            "fold-row-binds",
            f"The pieces on the fold alone need {tape(self.fold_row, units)} in a row; by area "
            f"{tape(self.area, units)} would do. Fold the cloth another way.",
            Severity.WARNING,
            numbers=(Number("row on the fold", self.fold_row), Number("by area", self.area)),
        )

    def _beside_binds(self, units: Units) -> Problem:
        """What the other bounds leave is all that another way of laying is known to need."""
        left = replace(self, beside=ALL_BESIDE).most
        return Problem(
            "beside-fold-binds",
            f'"{self.beside.other}" is too deep to lie beside the half of "{self.beside.half}" on the fold: the two '
            f"alone need {tape(self.beside_fold, units)}; without the fold {tape(left, units)} may do. "
            "Lay the cloth open or fold it another way.",
            Severity.WARNING,
            numbers=(Number("beside the fold", self.beside_fold), Number("without the fold", left)),
        )


def lower_bounds(cuts: Sequence[Cut], spread: Spread, gap: float, *, nap: bool = False) -> Bounds:
    """The bounds for some cuts on a spread; the gap [mm] parts pieces that follow each other on a fold."""
    area = sum(cut.area() for cut in cuts) / spread.height
    edges = sorted((cut.piece.fold_length for cut in cuts if cut.half), reverse=True)
    row = (sum(edges) + gap * max(0, len(edges) - spread.folds)) / max(1, spread.folds)
    if edges:
        row = max(row, edges[0])
    if spread.folds == 1:
        row = max(row, least_row([cut.piece for cut in cuts if cut.half], gap, may_turn=not nap))
    longest = max((_extent(cut) for cut in cuts), default=0.0)
    found = Bounds(area, row, longest, side_by_side(cuts, spread.height))
    if spread.folds != 1 or len(spread.zones) > 1:
        return found
    return replace(found, beside=least_beside(cuts, spread.height, gap, found.most))


def _extent(cut: Cut) -> float:
    """The least length that a cut takes along the cloth [mm]."""
    shape = cut.piece.polygon if cut.half else cut.piece.whole
    return min(_width(rotated(shape, degrees)) for degrees in cut.angles)


def _width(polygon: shapely.Polygon) -> float:
    left, _, right, _ = polygon.bounds
    return float(right - left)
